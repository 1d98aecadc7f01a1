import { clayWeightG } from '@/lib/clay/rules';
import { formatLength, formatWeight, type LengthSystem } from '@/lib/units/rules';

/** The mean depth that a relief is reckoned with before it is drawn: 25 mm, in micrometres. */
export const meanDepthUm = 25_000;
const densityGPerCm3 = '2.2';

/** The sides that were wished for, in micrometres; null is "not known yet". */
export type SidesWished = { readonly widthUm: number | null; readonly heightUm: number | null };

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
export function weightEstimate(facts: SidesWished, system: LengthSystem): WeightEstimate | null {
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
