import { invariant } from '@/lib/platform/invariant';
import type { ThreeDays } from './pert';

const known = [
  { thicknessUm: 12_700, shortestDays: 7, likelyDays: 10, longestDays: 14 },
  { thicknessUm: 25_400, shortestDays: 21, likelyDays: 24, longestDays: 28 },
  { thicknessUm: 50_800, shortestDays: 35, likelyDays: 42, longestDays: 56 },
] as const;

/**
 * How many days a piece dries in a dry month, by its thickest place. Between the known ones it is
 * read off the straight line; up to half an inch it is a thin tile.
 *
 * @param thicknessUm in micrometres, as it stands wet
 * @source common practice: a thin tile 1 to 2 weeks, one inch 3 to 4, two inches 5 to 8
 * @example dryingDays(25_400) // { shortestDays: 21, likelyDays: 24, longestDays: 28 }
 */
export function dryingDays(thicknessUm: number): ThreeDays {
  invariant(thicknessUm > 0, 'A piece has a thickness.');
  const [thin, inch, thick] = known;
  const [from, to] = thicknessUm <= inch.thicknessUm ? [thin, inch] : [inch, thick];
  const way = Math.max(0, thicknessUm - from.thicknessUm) / (to.thicknessUm - from.thicknessUm);
  const between = (days: (row: (typeof known)[number]) => number): number =>
    Math.round(days(from) + way * (days(to) - days(from)));
  return {
    shortestDays: between((row) => row.shortestDays),
    likelyDays: between((row) => row.likelyDays),
    longestDays: between((row) => row.longestDays),
  };
}

/**
 * How much longer clay dries by the month in which it begins, from January, in percent of a dry
 * month: on a rainy coast half as long again from November to March.
 *
 * @source common practice: a humid month adds half; a studio replaces these by its own
 */
export const rainyCoastPercents: readonly number[] = [
  150, 150, 150, 125, 100, 100, 100, 100, 100, 125, 150, 150,
];
