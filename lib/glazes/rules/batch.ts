import { apportion } from '@/lib/money/rules/split';
import { alignDecimals, formatDecimal, parseDecimal } from '@/lib/money/rules/decimal';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { RecipeMaterial } from './recipe';

/** What is weighed of one material. */
export type WeighedMaterial = RecipeMaterial & {
  /** Grams, a decimal string. */
  readonly grams: string;
  /** What is in the bowl when it has been added, for a scale that is not set back; the same unit. */
  readonly sumG: string;
};

/** A bucket as it is weighed out dry. */
export type WeighedBatch = {
  readonly dryG: number;
  /** To what it is weighed: 0.01, 0.1 or 1 gram, as a decimal string. */
  readonly stepG: string;
  readonly materials: readonly WeighedMaterial[];
  /** Materials that come to less than one step, so that the scale cannot show them. */
  readonly tooLittle: readonly string[];
};

/** The largest bucket that is weighed out, in grams dry. */
export const batchMostG = 200_000;

/** Why a bucket was not weighed out. */
export type BatchRefusal = { code: 'weight_out_of_range'; mostG: number } | { code: 'no_recipe' };

/** Says in a full sentence why a bucket was not weighed out. */
export function batchRefusalMessage(refusal: BatchRefusal): string {
  return refusal.code === 'no_recipe'
    ? 'Write the recipe down first.'
    : `Write the dry weight in whole grams, from 10 to ${refusal.mostG / 1_000} kg.`;
}

/** How finely a bucket is weighed, by what it weighs dry: places after the point of a gram. */
function placesFor(dryG: number): number {
  if (dryG < 500) return 2;
  return dryG < 10_000 ? 1 : 0;
}

/**
 * What to weigh out of each material for a bucket of that dry weight, additions included.
 *
 * The weights add up to the dry weight exactly: each is cut to the step of the scale, and what is
 * then missing goes to the largest rests. Up to half a kilo the step is a hundredth of a gram, up
 * to ten kilos a tenth.
 *
 * @param dryG whole grams of everything in the bucket before the water
 * @returns refuses a recipe of nothing, then a weight out of range
 * @source proportion; largest remainder (OpenStax, Contemporary Mathematics, section 11.4)
 * @example 60 and 40 with 5 on top, in 2_100 g // 1200, 800 and 100
 */
export function batchWeights(
  materials: readonly RecipeMaterial[],
  dryG: number,
): Result<WeighedBatch, BatchRefusal> {
  const percents = materials.flatMap(({ percent }) => parseDecimal(percent) ?? []);
  const { units } = alignDecimals(percents);
  const whole = units.reduce((sum, each) => sum + each, 0n);
  if (whole <= 0n || units.length < materials.length) return refuse({ code: 'no_recipe' });
  if (!(Number.isInteger(dryG) && dryG >= 10 && dryG <= batchMostG)) {
    return refuse({ code: 'weight_out_of_range', mostG: batchMostG });
  }
  const scale = placesFor(dryG);
  const total = BigInt(dryG) * 10n ** BigInt(scale);
  const { parts } = apportion(
    total,
    units.map((each) => each * total),
    whole,
  );
  const inGrams = (steps: bigint) => formatDecimal({ units: steps, scale });
  let sum = 0n;
  const weighed = materials.map((each, at) => {
    const steps = parts[at] ?? 0n;
    sum += steps;
    return { ...each, grams: inGrams(steps), sumG: inGrams(sum) };
  });
  return ok({
    dryG,
    stepG: inGrams(1n),
    materials: weighed,
    tooLittle: weighed.filter(({ grams }) => grams === '0').map(({ material }) => material),
  });
}
