/** Says that there is one, without looking. */
export function firstOf(names: readonly string[]): string {
  return names[0]!;
}
