import { clayWeightG } from '@/lib/clay/rules';
import { splitCents } from '@/lib/money/rules';
import type { Shape } from '@/lib/studio/rules/parts/outline';
import { partSize } from '@/lib/studio/rules/parts/sizes';
import type { PieceToGo } from './typed/pieces';

/** How deep a piece is taken to be while nobody measured it: an inch. Common practice. */
export const usualDepthUm = 25_400;
/** Fired stoneware, in g to the cubic centimetre. Common practice. */
const firedDensity = '1.9';

/** The sides of a piece as it hangs, in whole micrometres. */
export type HangingSides = Pick<PieceToGo, 'widthUm' | 'heightUm' | 'depthUm'>;

/**
 * About what a piece weighs while nobody put it on a scale: as if it were as thick everywhere.
 *
 * @source volume times density of fired stoneware, common practice
 */
export function aboutWeightG({ widthUm, heightUm, depthUm }: HangingSides): number {
  const sides = { lengthUm: widthUm, widthUm: heightUm, thicknessUm: depthUm };
  const weight = clayWeightG({ ...sides, densityGPerCm3: firedDensity });
  return weight.ok ? Math.max(1, weight.value) : 1;
}

/**
 * The numbered parts of a relief as they are to go: each with the sides of its outline, the depth of
 * the whole, and its share of the weight by its area.
 *
 * @returns weights that add up to the whole, in the order of the numbers
 */
export function partsToGo(
  shapes: readonly Shape[],
  relief: HangingSides & { weightG: number },
): PieceToGo[] {
  const sizes = shapes.map(({ outline }) => partSize(outline, relief, null));
  const areas = sizes.map(({ areaMm2 }) => BigInt(Math.max(1, areaMm2)));
  const shares = splitCents(BigInt(relief.weightG), areas);
  return shapes.map(({ number, area }, at) => ({
    ...{ pieces: 1, partNumber: number },
    words: area === '' ? `Part ${number}` : `Part ${number}, ${area.replaceAll(';', ',')}`,
    ...{ widthUm: sizes[at]?.widthUm ?? 1, heightUm: sizes[at]?.heightUm ?? 1 },
    ...{ depthUm: relief.depthUm, weightG: Math.max(1, Number(shares[at] ?? 1n)) },
  }));
}
