import { divideRounded, parseDecimal, type Decimal } from '@/lib/money/rules/decimal';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { ClayRefusal } from '../rules';
import { wetSides } from './weights';

/** A piece that comes from a mould: the box it fits into when fired, and how much of it it fills. */
export type MouldedPiece = {
  readonly lengthUm: number;
  readonly widthUm: number;
  /** Its depth, from the back to the highest point. */
  readonly depthUm: number;
  readonly shrinkagePercent: string;
  /** How much of that box the piece takes up, a decimal string above '0' and at most '100'. */
  readonly filledPercent: string;
};

const cubicUmPerMl = 10n ** 12n;

/**
 * What a mould holds when it is filled for a piece of that fired size.
 *
 * A mould is as large as the wet piece. Pouring it full of water and weighing that is surer: a gram
 * of water is a millilitre.
 *
 * @returns whole millilitres, rounded up so that it is never short; refuses, in this order: a side
 *   of zero or less or a shrinkage out of range, a filled share out of range
 * @source ASTM C326 for the sides; length times width times depth
 * @example 150 × 150 × 20 mm at 12 percent, all of it filled // 661
 */
export function mouldHoldsMl(piece: MouldedPiece): Result<number, ClayRefusal> {
  const { lengthUm, widthUm, depthUm, shrinkagePercent, filledPercent } = piece;
  const wet = wetSides({ lengthUm, widthUm, thicknessUm: depthUm }, shrinkagePercent);
  if (!wet.ok) return wet;
  const filled = parseDecimal(filledPercent);
  if (!filled || filled.units <= 0n || isAbove(filled, 100n)) {
    return refuse({ code: 'filled_out_of_range', percent: filledPercent });
  }
  const box = [wet.value.lengthUm, wet.value.widthUm, wet.value.thicknessUm].reduce(
    (cubicUm, side) => cubicUm * BigInt(side),
    1n,
  );
  const whole = 100n * 10n ** BigInt(filled.scale);
  return ok(Number(divideRounded(box * filled.units, whole * cubicUmPerMl, 'up')));
}

/** How much slip to mix. */
export type SlipToMix = { readonly ml: number; readonly g: number };

/**
 * How much slip to have ready to pour.
 *
 * What is poured back out of a hollow mould can be poured again, and is not taken off here.
 *
 * @param asked `holdsMl` whole millilitres of one mould, `casts` poured at once from 1 on,
 *   `sparePercent` for what is topped up, spilt and left in the bucket, '0' to below '100',
 *   `densityGPerMl` what a millilitre of the slip weighs, above '1' and at most '2.5'
 * @returns whole millilitres and grams, both rounded up; refuses, in this order: nothing to pour, a
 *   spare share out of range, a density out of range
 * @source volume times density; casting slip of 1.7 to 1.8 g in a millilitre is common practice
 * @example 661 ml, 6 casts, '15' spare, '1.75' // 4_561 ml, 7_982 g
 */
export function slipToMix(asked: {
  holdsMl: number;
  casts: number;
  sparePercent: string;
  densityGPerMl: string;
}): Result<SlipToMix, ClayRefusal> {
  const { holdsMl, casts, sparePercent, densityGPerMl } = asked;
  const isSome = [holdsMl, casts].every((count) => Number.isInteger(count) && count > 0);
  if (!isSome) return refuse({ code: 'nothing_to_pour' });
  const spare = parseDecimal(sparePercent);
  const hundred = spare && 100n * 10n ** BigInt(spare.scale);
  if (!spare || !hundred || spare.units < 0n || spare.units >= hundred) {
    return refuse({ code: 'share_out_of_range', percent: sparePercent });
  }
  const density = parseDecimal(densityGPerMl);
  if (!density || !isAbove(density, 1n) || isAbove({ ...density, units: density.units * 2n }, 5n)) {
    return refuse({ code: 'slip_density_out_of_range', density: densityGPerMl });
  }
  const poured = BigInt(holdsMl) * BigInt(casts);
  const ml = divideRounded(poured * (hundred + spare.units), hundred, 'up');
  const g = divideRounded(ml * density.units, 10n ** BigInt(density.scale), 'up');
  return ok({ ml: Number(ml), g: Number(g) });
}

function isAbove({ units, scale }: Decimal, most: bigint): boolean {
  return units > most * 10n ** BigInt(scale);
}
