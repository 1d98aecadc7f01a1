import { divideRounded, parseDecimal } from '@/lib/money/rules/decimal';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { clayWeightG, wetUm, type ClayRefusal } from '../rules';

/** A flat piece as it is to be when fired, and its clay; figures of the clay as decimal strings. */
export type FiredPiece = {
  readonly lengthUm: number;
  readonly widthUm: number;
  readonly thicknessUm: number;
  /** Wet to fired, in percent of the wet length. */
  readonly shrinkagePercent: string;
  readonly wetDensityGPerCm3: string;
  readonly firedDensityGPerCm3: string;
  /** Water that the fired clay takes up, in percent of its dry weight. */
  readonly absorptionPercent: string;
};

/** The sides of a piece while it is wet, in whole micrometres. */
export type WetSides = {
  readonly lengthUm: number;
  readonly widthUm: number;
  readonly thicknessUm: number;
};

/** What a piece weighs on its way, in whole grams. */
export type PieceWeights = {
  readonly wet: WetSides;
  readonly wetG: number;
  readonly firedG: number;
  /** Fired and full of water: what a wall outdoors has to hold after rain. */
  readonly soakedG: number;
};

/**
 * What a piece weighs wet, fired, and fired and soaked.
 *
 * All three sides shrink alike here; a wall dries from its faces, so a thick piece is measured.
 *
 * @returns whole micrometres and grams, half up; refuses, in this order: a side of zero or less, a
 *   shrinkage out of range, a density out of range, an absorption that is no share
 * @source ASTM C326 for the sides; volume times density; ASTM C373 for the water (from memory)
 * @example 400 × 400 × 25 mm at 1.9 g fired and 10 percent of water // 7_600 g, 8_360 g soaked
 */
export function pieceWeights(piece: FiredPiece): Result<PieceWeights, ClayRefusal> {
  const { lengthUm, widthUm, thicknessUm } = piece;
  const sides = { lengthUm, widthUm, thicknessUm };
  const fired = clayWeightG({ ...sides, densityGPerCm3: piece.firedDensityGPerCm3 });
  if (!fired.ok && fired.refusal.code === 'side_not_above_zero') return fired;
  const wet = wetSides(sides, piece.shrinkagePercent);
  if (!wet.ok) return wet;
  if (!fired.ok) return fired;
  const wetG = clayWeightG({ ...wet.value, densityGPerCm3: piece.wetDensityGPerCm3 });
  if (!wetG.ok) return wetG;
  const soakedG = soakedWeightG(fired.value, piece.absorptionPercent);
  if (!soakedG.ok) return soakedG;
  return ok({
    ...{ wet: wet.value, wetG: wetG.value },
    ...{ firedG: fired.value, soakedG: soakedG.value },
  });
}

/**
 * The sides to make a piece with, for those it is to have fired.
 *
 * @returns whole micrometres, half up; refuses as {@link wetUm} does
 * @source ASTM C326, total linear shrinkage on the plastic length
 */
export function wetSides(fired: WetSides, shrinkagePercent: string): Result<WetSides, ClayRefusal> {
  const lengthUm = wetUm(fired.lengthUm, shrinkagePercent);
  if (!lengthUm.ok) return lengthUm;
  const widthUm = wetUm(fired.widthUm, shrinkagePercent);
  if (!widthUm.ok) return widthUm;
  const thicknessUm = wetUm(fired.thicknessUm, shrinkagePercent);
  if (!thicknessUm.ok) return thicknessUm;
  return ok({
    lengthUm: lengthUm.value,
    widthUm: widthUm.value,
    thicknessUm: thicknessUm.value,
  });
}

/**
 * What a fired piece weighs when it is full of water.
 *
 * @param absorptionPercent decimal string from '0' to below '100', of the dry weight
 * @returns whole grams, half up; refuses a weight of zero or less, then a share out of range
 * @example soakedWeightG(10_000, '5') // 10_500
 */
export function soakedWeightG(
  firedG: number,
  absorptionPercent: string,
): Result<number, ClayRefusal> {
  if (!(firedG > 0)) return refuse({ code: 'weight_not_above_zero' });
  const taken = parseDecimal(absorptionPercent);
  const whole = taken && 100n * 10n ** BigInt(taken.scale);
  if (!taken || !whole || taken.units < 0n || taken.units >= whole) {
    return refuse({ code: 'share_out_of_range', percent: absorptionPercent });
  }
  return ok(Number(divideRounded(BigInt(firedG) * (whole + taken.units), whole, 'half-up')));
}
