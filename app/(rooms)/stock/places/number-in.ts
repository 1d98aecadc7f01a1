/** The number of a paper as its address has it; null when it is none. */
export function numberIn(text: string): number | null {
  return /^[1-9]\d{0,8}$/.test(text) ? Number(text) : null;
}
