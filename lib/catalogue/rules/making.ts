/** How pieces come to be, and how that is said. */
export const makings = [
  { making: 'open_stock', words: 'open stock' },
  { making: 'one_off', words: 'one-off' },
  { making: 'edition', words: 'edition' },
] as const;

/** How a piece is made: again and again, once, or as a numbered run. */
export type Making = (typeof makings)[number]['making'];

/** The making in words. */
export function makingWords(making: Making): string {
  return makings.find((each) => each.making === making)?.words ?? making;
}
