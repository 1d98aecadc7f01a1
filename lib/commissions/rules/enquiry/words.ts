/** How much sun a wall gets. */
export const sunKinds = ['none', 'some', 'full'] as const;

/** One of the {@link sunKinds}. */
export type SunKind = (typeof sunKinds)[number];

/** The sun as it is said. */
export const sunWords: Record<SunKind, string> = {
  none: 'none',
  some: 'some hours',
  full: 'full sun',
};

/**
 * Yes, no, or null for what nobody knows yet.
 *
 * @example yesNoWords(null) // null: a page says "not known yet", never a guess
 */
export function yesNoWords(answer: boolean | null): 'yes' | 'no' | null {
  if (answer === null) return null;
  return answer ? 'yes' : 'no';
}
