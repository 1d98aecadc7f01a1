/** The number of a paper from its address; null when it is none. */
export function readNumber(text: string): number | null {
  return /^[1-9]\d{0,8}$/.test(text) ? Number(text) : null;
}
