import type { Spot } from '@/lib/commissions/rules/content';

/** Nine places in a picture, for whoever cannot or will not point: as one says them. */
export const places = {
  upper_left: { words: 'upper left', xPermille: 167, yPermille: 167 },
  upper_middle: { words: 'upper middle', xPermille: 500, yPermille: 167 },
  upper_right: { words: 'upper right', xPermille: 833, yPermille: 167 },
  left: { words: 'left', xPermille: 167, yPermille: 500 },
  middle: { words: 'in the middle', xPermille: 500, yPermille: 500 },
  right: { words: 'right', xPermille: 833, yPermille: 500 },
  lower_left: { words: 'lower left', xPermille: 167, yPermille: 833 },
  lower_middle: { words: 'lower middle', xPermille: 500, yPermille: 833 },
  lower_right: { words: 'lower right', xPermille: 833, yPermille: 833 },
} as const satisfies Record<string, Spot & { words: string }>;

/** One of the nine places. */
export type Place = keyof typeof places;

/** The names of the nine places. */
export const placeNames = Object.keys(places) as [Place, ...Place[]];

/**
 * Where a spot is, in words, for those who do not see it.
 *
 * @example placeWords({ xPermille: 100, yPermille: 900 }) // 'lower left'
 */
export function placeWords({ xPermille, yPermille }: Spot): string {
  const across = xPermille < 334 ? 'left' : xPermille > 666 ? 'right' : 'middle';
  const down = yPermille < 334 ? 'upper' : yPermille > 666 ? 'lower' : '';
  if (down === '') return across === 'middle' ? 'in the middle' : across;
  return `${down} ${across}`;
}
