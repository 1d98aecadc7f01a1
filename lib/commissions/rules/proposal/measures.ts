import { divideRounded } from '@/lib/money/rules/decimal';
import type { Cents } from '@/lib/money/rules';
import type { LengthSystem } from '@/lib/units/rules';

/** What a rate is for: an area, a length, a weight. */
export type RateFor = 'area' | 'length' | 'weight';

/** How many of the metric measure one of the everyday ones is, by a hundred million: sq ft, ft, lb. */
const parts: Record<RateFor, bigint> = {
  area: 9_290_304n,
  length: 30_480_000n,
  weight: 45_359_237n,
};
const whole = 100_000_000n;

/** The measures as they are said after "for one". */
export const measureWords: Record<LengthSystem, Record<RateFor, string>> = {
  in: { area: 'square foot', length: 'foot', weight: 'pound' },
  mm: { area: 'square metre', length: 'metre', weight: 'kilogram' },
};

/**
 * A rate as it is kept, from a rate as it is said: for one square metre, metre or kilogram.
 *
 * @returns cents, half up; a rate of whole cents comes back from {@link rateSaid} as it was
 * @source the foot is 0.3048 m and the pound 0.45359237 kg exactly: NIST SP 811, appendix B
 * @example rateKept(100n, 'weight', 'in') // 220n
 */
export function rateKept(cents: Cents, rateFor: RateFor, system: LengthSystem): Cents {
  return system === 'mm' ? cents : divideRounded(cents * whole, parts[rateFor], 'half-up');
}

/** A rate as it is said, from a rate as it is kept; the other way of {@link rateKept}. */
export function rateSaid(cents: Cents, rateFor: RateFor, system: LengthSystem): Cents {
  return system === 'mm' ? cents : divideRounded(cents * parts[rateFor], whole, 'half-up');
}

/**
 * Hours for one square metre, to a thousandth, from hours for one measure of area as it is said.
 *
 * @example hoursKept('4', 'in') // '43.056'
 */
export function hoursKept(hours: string, system: LengthSystem): string {
  return system === 'mm' ? hours : decimal((Number(hours) * Number(whole)) / Number(parts.area), 3);
}

/** Hours as they are said, to a hundredth; the other way of {@link hoursKept}. */
export function hoursSaid(hours: string, system: LengthSystem): string {
  return system === 'mm' ? hours : decimal((Number(hours) * Number(parts.area)) / Number(whole), 2);
}

function decimal(figure: number, places: number): string {
  return String(Math.round(figure * 10 ** places) / 10 ** places);
}
