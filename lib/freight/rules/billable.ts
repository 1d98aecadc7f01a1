import { divideRounded } from '@/lib/money/rules/decimal';
import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { umPerInch } from '@/lib/units/rules';
import { soundBox, type MeasureRefusal, type Sides, type Weighed } from './measures';

/** What a carrier makes of the sides of a box: as they are, to the nearest inch, up to the next. */
export type SidesRounding = 'as_measured' | 'nearest' | 'up';

/** How a carrier weighs a box by its size. */
export type SizeTerms = {
  /** Cubic inches that count as a pound; null where only the scale counts. */
  readonly divisorIn3: number | null;
  readonly sides: SidesRounding;
  /** Only boxes of more than so many cubic inches count by size. */
  readonly overIn3: number;
};

/** What a box is charged as, in whole pounds. */
export type Billable = {
  readonly billableLb: number;
  readonly byScaleLb: number;
  /** Null where its size does not count. */
  readonly bySizeLb: number | null;
  /** The sides in inches as the carrier takes them, and what they come to. */
  readonly sidesIn: readonly [number, number, number];
  readonly volumeIn3: number;
};

const gramsPerLb = { over: 45_359_237n, under: 100_000n } as const;
const inch = BigInt(umPerInch);

/**
 * Whole pounds on a scale, any part of one counting as one.
 *
 * A weight is kept in whole grams; up to half a gram over a pound is taken for rounding.
 *
 * @source the international pound of 1959; rounding up is common practice of carriers
 * @example wholePounds(454) // 1, and wholePounds(455) is 2
 */
export function wholePounds(grams: number): number {
  const halves = BigInt(grams) * 2n - 1n;
  return Number(divideRounded(halves * gramsPerLb.under, 2n * gramsPerLb.over, 'up'));
}

/**
 * What a carrier charges a box as: the scale or the size, whichever is more.
 *
 * @returns whole pounds; refuses what {@link soundBox} refuses
 * @source sides rounded up and divided by 139: published terms of two parcel carriers from 18 Aug
 *   2025; 166, to the nearest inch and above 1,728 in³: USPS Domestic Mail Manual, 604.7 and 283
 * @example 11.1 × 8.5 × 6.2 in and a pound, by 139 rounded up // 12 × 9 × 7 is 756 in³, 6 lb
 */
export function billableWeight(box: Weighed, terms: SizeTerms): Result<Billable, MeasureRefusal> {
  const sound = soundBox(box);
  if (!sound.ok) return refuse(sound.refusal);
  const { divisorIn3, overIn3 } = terms;
  invariant(divisorIn3 === null || divisorIn3 > 0, 'A divisor is above zero.');

  const [length, width, height] = sidesTaken(box, terms.sides);
  const volume = length * width * height;
  const counts = divisorIn3 !== null && volume > BigInt(overIn3) * inch ** 3n;
  const bySizeLb = counts
    ? Number(divideRounded(volume, BigInt(divisorIn3) * inch ** 3n, 'up'))
    : null;
  const byScaleLb = wholePounds(box.weightG);
  return ok({
    ...{ billableLb: Math.max(byScaleLb, bySizeLb ?? 0), byScaleLb, bySizeLb },
    sidesIn: [inInches(length), inInches(width), inInches(height)],
    volumeIn3: Number(divideRounded(volume * 100n, inch ** 3n, 'half-up')) / 100,
  });
}

/** The sides in micrometres, rounded to whole inches as the carrier does. */
function sidesTaken(sides: Sides, rounding: SidesRounding): [bigint, bigint, bigint] {
  const taken = (um: number): bigint => {
    if (rounding === 'as_measured') return BigInt(um);
    const inches = divideRounded(BigInt(um), inch, rounding === 'up' ? 'up' : 'half-up');
    return (inches > 0n ? inches : 1n) * inch;
  };
  return [taken(sides.lengthUm), taken(sides.widthUm), taken(sides.heightUm)];
}

function inInches(um: bigint): number {
  return Number(divideRounded(um * 10_000n, inch, 'half-up')) / 10_000;
}

/** Terms that were published, by their divisor. */
export const publishedTerms: readonly (SizeTerms & { readonly divisorIn3: number })[] = [
  { divisorIn3: 139, sides: 'up', overIn3: 0 },
  { divisorIn3: 166, sides: 'nearest', overIn3: 1_728 },
];
