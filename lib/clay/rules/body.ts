import {
  alignDecimals,
  divideRounded,
  formatDecimal,
  parseDecimal,
} from '@/lib/money/rules/decimal';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { ClayRefusal } from '../rules';

/**
 * The whole shrinkage of a clay from its two parts: while it dries, and while it is fired.
 *
 * The second part is measured on the dry length, so the two do not add up.
 *
 * @param dryingPercent of the wet length, a decimal string from '0' to below '50'
 * @param firingPercent of the dry length, the same
 * @returns percent of the wet length, with two places, half up; refuses a part out of range, or a
 *   whole that is
 * @source ASTM C326 for the whole; the two parts multiply (common practice)
 * @example totalShrinkagePercent('6', '6.38') // '12.00', and not 12.38
 */
export function totalShrinkagePercent(
  dryingPercent: string,
  firingPercent: string,
): Result<string, ClayRefusal> {
  const parts = [dryingPercent, firingPercent].map((percent) => ({
    percent,
    left: lengthLeft(percent),
  }));
  const wrong = parts.find((part) => part.left === null);
  if (wrong) return refuse({ code: 'shrinkage_out_of_range', percent: wrong.percent });
  let over = 1n;
  let under = 1n;
  for (const { left } of parts) {
    over *= left?.over ?? 1n;
    under *= left?.under ?? 1n;
  }
  const lost = divideRounded((under - over) * 10_000n, under, 'half-up');
  const percent = twoPlaces(lost);
  return lost < 5_000n ? ok(percent) : refuse({ code: 'shrinkage_out_of_range', percent });
}

function lengthLeft(percent: string): { over: bigint; under: bigint } | null {
  const lost = parseDecimal(percent);
  if (!lost || lost.units < 0n) return null;
  const whole = 100n * 10n ** BigInt(lost.scale);
  return lost.units * 2n < whole ? { over: whole - lost.units, under: whole } : null;
}

/** A fired test piece on the scale, in grams as decimal strings: dry, soaked, and hung in water. */
export type WeighedTest = {
  readonly dryG: string;
  readonly soakedG: string;
  readonly hungInWaterG: string;
};

/** What a weighed test piece says of its clay; decimal strings with two places. */
export type TestedBody = {
  /** Water taken up, in percent of the dry weight. */
  readonly absorptionPercent: string;
  /** Open pores, in percent of the volume. */
  readonly openPoresPercent: string;
  /** Grams in each cubic centimetre of the piece as it is, pores and all. */
  readonly densityGPerCm3: string;
};

/**
 * What a fired test piece says of its clay.
 *
 * @returns refuses weights that do not fit: hung in water it weighs less than dry, soaked no less
 * @source ASTM C373, from memory: dry D, soaked M, hung in water S; (M − D) ÷ D, (M − D) ÷ (M − S),
 *   D ÷ (M − S); a cubic centimetre of water is taken as a gram
 * @example testedBody({ dryG: '100', soakedG: '105', hungInWaterG: '60' })
 *   // absorbs '5.00', open pores '11.11', density '2.22'
 */
export function testedBody(weighed: WeighedTest): Result<TestedBody, ClayRefusal> {
  const read = [weighed.dryG, weighed.soakedG, weighed.hungInWaterG]
    .map((text) => parseDecimal(text))
    .filter((each) => each !== null);
  const [dry = 0n, soaked = 0n, hung = 0n] = read.length === 3 ? alignDecimals(read).units : [];
  if (!(hung > 0n && hung < dry && dry <= soaked)) return refuse({ code: 'weights_do_not_fit' });
  const volume = soaked - hung;
  const hundredths = (over: bigint, under: bigint, times: bigint) =>
    twoPlaces(divideRounded(over * times, under, 'half-up'));
  return ok({
    absorptionPercent: hundredths(soaked - dry, dry, 10_000n),
    openPoresPercent: hundredths(soaked - dry, volume, 10_000n),
    densityGPerCm3: hundredths(dry, volume, 100n),
  });
}

function twoPlaces(hundredths: bigint): string {
  const [whole = '', fraction = ''] = formatDecimal({ units: hundredths, scale: 2 }).split('.');
  return `${whole}.${fraction.padEnd(2, '0')}`;
}
