import { divideRounded, parseDecimal, type Decimal } from '@/lib/money/rules/decimal';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** Why a sum about clay was not worked out. */
export type ClayRefusal =
  | { code: 'side_not_above_zero'; side: 'size' | 'length' | 'width' | 'thickness' }
  | { code: 'weight_not_above_zero' }
  | { code: 'shrinkage_out_of_range'; percent: string }
  | { code: 'density_out_of_range'; density: string }
  | { code: 'share_out_of_range'; percent: string }
  | { code: 'weights_do_not_fit' }
  | { code: 'filled_out_of_range'; percent: string }
  | { code: 'nothing_to_pour' }
  | { code: 'slip_density_out_of_range'; density: string };

/** Says in a full sentence why a sum about clay was not worked out. */
export function clayRefusalMessage(refusal: ClayRefusal): string {
  switch (refusal.code) {
    case 'side_not_above_zero':
      return `The ${refusal.side} of a piece has to be more than zero.`;
    case 'weight_not_above_zero':
      return 'The weight of a piece has to be more than zero.';
    case 'shrinkage_out_of_range':
      return 'Clay shrinks by 0 to less than 50 percent: write it as 8 or 8.5.';
    case 'density_out_of_range':
      return 'Clay weighs from 0.5 to 5 grams in each cubic centimetre: write it as 1.9.';
    case 'share_out_of_range':
      return 'Write a percentage from 0 to less than 100, such as 27.';
    case 'weights_do_not_fit':
      return 'A test piece weighs least when it hangs in water, and soaked no less than dry. Weigh it again.';
    case 'filled_out_of_range':
      return 'A piece fills more than 0 and at most 100 in a hundred of its box, such as 60.';
    case 'nothing_to_pour':
      return 'Write how many millilitres the mould holds and how many are cast, both at least 1.';
    case 'slip_density_out_of_range':
      return 'A millilitre of slip weighs more than 1 and at most 2.5 grams: write it as 1.75.';
  }
}

/**
 * How large to make a piece wet so that it is the wanted size when fired.
 *
 * Shrinkage is measured on the wet length, so the fired size is divided by what is left of it;
 * adding the percentage to the fired size makes the piece too small.
 *
 * @param firedUm the wanted size, in whole micrometres
 * @param shrinkagePercent total, wet to fired, as a decimal string from '0' to below '50'
 * @returns whole micrometres, half up; refuses a size of zero or less, then a shrinkage out of
 *   range
 * @source ASTM C326, total linear shrinkage on the plastic length
 * @example wetUm(250_000, '12') // 284_091, and not 280_000
 */
export function wetUm(firedUm: number, shrinkagePercent: string): Result<number, ClayRefusal> {
  return scaled(firedUm, shrinkagePercent, (left, whole) => [whole, left]);
}

/**
 * How large a wet piece will be when it is fired: the other way round from {@link wetUm}.
 *
 * @returns whole micrometres, half up; refuses as {@link wetUm} does
 * @example firedUm(152_400, '11.5') // 134_874: 6 inches of wet clay come out at 5.31
 */
export function firedUm(wet: number, shrinkagePercent: string): Result<number, ClayRefusal> {
  return scaled(wet, shrinkagePercent, (left, whole) => [left, whole]);
}

function scaled(
  um: number,
  percent: string,
  ratio: (left: bigint, whole: bigint) => [bigint, bigint],
): Result<number, ClayRefusal> {
  if (!(um > 0)) return refuse({ code: 'side_not_above_zero', side: 'size' });
  const left = leftOf(percent, 50n);
  if (!left) return refuse({ code: 'shrinkage_out_of_range', percent });
  const [over, under] = ratio(left.units, left.whole);
  return ok(Number(divideRounded(BigInt(um) * over, under, 'half-up')));
}

/**
 * The shrinkage a test bar shows, as a decimal string with two places.
 *
 * @param barWetUm the bar's length when it was marked, wet
 * @param barFiredUm the same length fired; not longer than wet, more than half of it
 * @source ASTM C326, total linear shrinkage on the plastic length
 * @example measuredShrinkagePercent(100_000, 88_000) // '12.00'
 */
export function measuredShrinkagePercent(
  barWetUm: number,
  barFiredUm: number,
): Result<string, ClayRefusal> {
  if (!(barWetUm > 0 && barFiredUm > 0)) {
    return refuse({ code: 'side_not_above_zero', side: 'length' });
  }
  const lost = BigInt(barWetUm - barFiredUm);
  const hundredths = divideRounded(lost * 10_000n, BigInt(barWetUm), 'half-up');
  const sign = hundredths < 0n ? '-' : '';
  const digits = (hundredths < 0n ? -hundredths : hundredths).toString().padStart(3, '0');
  const percent = `${sign}${digits.slice(0, -2)}.${digits.slice(-2)}`;
  if (hundredths < 0n || hundredths >= 5_000n) {
    return refuse({ code: 'shrinkage_out_of_range', percent });
  }
  return ok(percent);
}

/** A flat piece: its sides in whole micrometres, its density as a decimal string. */
export type ClaySlab = {
  readonly lengthUm: number;
  readonly widthUm: number;
  readonly thicknessUm: number;
  readonly densityGPerCm3: string;
};

/**
 * What a fired piece weighs, from its sides and its average thickness.
 *
 * @returns whole grams, half up; refuses a side of zero or less, then a density out of range
 * @source volume times density; densities of fired clay are common practice
 * @example a slab of 400 × 400 × 25 mm at 1.9 g in each cm³ weighs 7_600 g
 */
export function clayWeightG(slab: ClaySlab): Result<number, ClayRefusal> {
  const sides = [
    ['length', slab.lengthUm],
    ['width', slab.widthUm],
    ['thickness', slab.thicknessUm],
  ] as const;
  for (const [side, um] of sides) {
    if (!(um > 0)) return refuse({ code: 'side_not_above_zero', side });
  }
  const density = parseDecimal(slab.densityGPerCm3);
  if (!density || !isDensityOfClay(density)) {
    return refuse({ code: 'density_out_of_range', density: slab.densityGPerCm3 });
  }
  const volume = sides.reduce((cubicUm, [, um]) => cubicUm * BigInt(um), 1n);
  const cubicUmPerCm3 = 10n ** 12n;
  const grams = divideRounded(
    volume * density.units,
    cubicUmPerCm3 * 10n ** BigInt(density.scale),
    'half-up',
  );
  return ok(Number(grams));
}

/**
 * The wet clay to have ready for a piece of a fired weight, with what is cut off and thrown back.
 *
 * @param lossPercent what water and firing take off the wet weight; '27' is common
 * @param scrapPercent what is added for scrap; '15' to '20' is common
 * @returns whole grams, rounded up so that it is never short; refuses a weight of zero or less,
 *   then a percentage out of range
 * @source common practice: fired weight over 0.73, and 15 to 20 percent of scrap
 * @example wetClayG(1_000, '27', '18') // 1_617
 */
export function wetClayG(
  firedG: number,
  lossPercent: string,
  scrapPercent: string,
): Result<number, ClayRefusal> {
  if (!(firedG > 0)) return refuse({ code: 'weight_not_above_zero' });
  const left = leftOf(lossPercent, 100n);
  if (!left) return refuse({ code: 'share_out_of_range', percent: lossPercent });
  const scrap = leftOf(scrapPercent, 100n);
  if (!scrap) return refuse({ code: 'share_out_of_range', percent: scrapPercent });
  const withScrap = 2n * scrap.whole - scrap.units;
  const over = BigInt(firedG) * left.whole * withScrap;
  return ok(Number(divideRounded(over, left.units * scrap.whole, 'up')));
}

function leftOf(percent: string, below: bigint): { units: bigint; whole: bigint } | null {
  const taken = parseDecimal(percent);
  if (!taken) return null;
  const one = 10n ** BigInt(taken.scale);
  if (taken.units < 0n || taken.units >= below * one) return null;
  return { units: 100n * one - taken.units, whole: 100n * one };
}

function isDensityOfClay({ units, scale }: Decimal): boolean {
  const one = 10n ** BigInt(scale);
  return units * 2n >= one && units <= 5n * one;
}
