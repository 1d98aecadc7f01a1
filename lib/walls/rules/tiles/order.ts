import { parseDecimal } from '@/lib/money/rules/decimal';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** Why no spare could be reckoned. */
export type SpareRefusal = { code: 'spare_not_a_percent' };

/** The most that is ordered on top, in a hundred. */
export const sparePercentMost = 100;

/** What is commonly ordered on top of what is laid, in a hundred: straight, and of set tiles. */
export const usualSparePercent = '10';

/**
 * How many are ordered, with spare ones of the same firing.
 *
 * @param percent decimal text, 0 to 100
 * @returns whole tiles, rounded up; refuses what is no such percentage
 * @source common practice: five to fifteen in a hundred on top, up to a whole one
 * @example withSpare(71, '5') // 75
 */
export function withSpare(count: number, percent: string): Result<number, SpareRefusal> {
  const decimal = parseDecimal(percent);
  if (!decimal || decimal.units < 0n) return refuse({ code: 'spare_not_a_percent' });
  const whole = 100n * 10n ** BigInt(decimal.scale);
  const most = BigInt(sparePercentMost) * 10n ** BigInt(decimal.scale);
  if (decimal.units > most) return refuse({ code: 'spare_not_a_percent' });
  const scaled = BigInt(count) * (whole + decimal.units);
  return ok(Number((scaled + whole - 1n) / whole));
}

/** One sixteenth of an inch, the narrowest joint there is; and three of them, for hand-made tile. */
export const jointLeastUm = 1_588;
/** See {@link jointLeastUm}. */
export const handMadeJointUm = 4_763;

/**
 * The narrowest joint that takes up how much tiles differ.
 *
 * @param variationUm how much the widest tile of the firing is wider than the narrowest
 * @returns whole micrometres
 * @source ANSI A108.02-2017, section 4.3.8: three times the variation and never under 1/16 in; 3/16
 *   in for hand-made tile is common practice
 * @example tiles that differ by 1/16 in want joints of 3/16 in
 */
export function jointFloorUm(tile: { isHandMade: boolean; variationUm: number }): number {
  return Math.max(3 * tile.variationUm, jointLeastUm, tile.isHandMade ? handMadeJointUm : 0);
}
