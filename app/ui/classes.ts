/** Joins class names and leaves out those that do not apply. */
export function classes(...names: readonly (string | false | null | undefined)[]): string {
  return names.filter(Boolean).join(' ');
}
