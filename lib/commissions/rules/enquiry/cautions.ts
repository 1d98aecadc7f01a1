import { clayWeightG } from '@/lib/clay/rules';
import { formatLength, formatWeight, type LengthSystem } from '@/lib/units/rules';
import type { Exposure, WallKind } from '@/lib/commissions/rules/words';

/** The mean depth that a relief is reckoned with before it is drawn: 25 mm, in micrometres. */
export const meanDepthUm = 25_000;
const densityGPerCm3 = '2.2';
/** From here on two people carry: 50 lb, in grams. */
const twoPeopleG = 22_680;
/** From here on three people carry, or a lift: 100 lb, in grams. */
const threePeopleG = 45_359;

/** What is known of the piece and its wall; null is "not known yet". */
export type PlaceFacts = {
  readonly widthUm: number | null;
  readonly heightUm: number | null;
  readonly exposure: Exposure | null;
  readonly wall: WallKind | null;
};

/** A weight before anything is made, with how it was worked out. */
export type WeightEstimate = {
  readonly weightG: number;
  readonly steps: readonly string[];
  readonly formula: string;
  readonly source: string;
  readonly caution: string;
};

/**
 * What a piece of this size will weigh, about.
 *
 * @param system in which the working is told
 * @returns whole grams; null while a side is not known
 * @source volume times density; 25 mm of mean depth and 2.2 g in each cm³ are common practice
 * @example 36 × 60 in comes to about 169 lb
 */
export function weightEstimate(facts: PlaceFacts, system: LengthSystem): WeightEstimate | null {
  const { widthUm, heightUm } = facts;
  if (widthUm === null || heightUm === null) return null;
  const slab = { lengthUm: heightUm, widthUm, thicknessUm: meanDepthUm, densityGPerCm3 };
  const weight = clayWeightG(slab);
  if (!weight.ok) return null;
  const told = formatWeight(weight.value, system === 'in' ? 'lb' : 'kg');
  const sides = `${formatLength(heightUm, system)} × ${formatLength(widthUm, system)}`;
  return {
    weightG: weight.value,
    steps: [
      `The size wished for is ${sides}.`,
      `A relief is reckoned ${formatLength(meanDepthUm, system)} deep on average.`,
      `Fired clay weighs ${densityGPerCm3} g in each cm³: together about ${told}.`,
    ],
    formula: 'height × width × mean depth × density',
    source: 'common practice; the board and the frame are not in it',
    caution: 'Weigh the finished piece before a wall is drilled.',
  };
}

/**
 * What to mind about a piece and its wall, as far as it is known.
 *
 * @source common practice
 * @example a heavy piece on gypsum board without a stud is warned of; an unknown wall is asked for
 */
export function placeCautions(facts: PlaceFacts, system: LengthSystem): string[] {
  const cautions: string[] = [];
  const weightG = weightEstimate(facts, system)?.weightG ?? 0;
  const told = formatWeight(weightG, system === 'in' ? 'lb' : 'kg');
  if (facts.exposure === 'outdoors') {
    cautions.push(
      'Outdoors, an absorbent body spalls in frost: a frost-proof body, a drained back, rust-free fixings.',
    );
  }
  if (weightG >= twoPeopleG && facts.wall === 'gypsum_board') {
    cautions.push(
      `About ${told} must not hang on gypsum board alone: find the studs, or let a licensed contractor put backing in.`,
    );
  }
  if (weightG >= twoPeopleG && facts.wall === null) {
    cautions.push(`About ${told}: find out what the wall is made of before a day is booked.`);
  }
  if (weightG >= twoPeopleG) {
    const hands = weightG >= threePeopleG ? 'Three people or a lift' : 'Two people';
    cautions.push(`${hands} for about ${told}.`);
  }
  return cautions;
}
