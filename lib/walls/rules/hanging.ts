import { ok, refuse, type Result } from '@/lib/platform/result';
import { umPerInch } from '@/lib/units/rules';

/** The middle of a piece above the floor where nothing else is agreed: 57 inches. */
export const eyeHeightUm = 57 * umPerInch;
/** The gap that is left above furniture where nothing else is agreed: 8 inches. */
export const furnitureGapUm = 8 * umPerInch;

/** A piece with the fixing on its back; whole micrometres. */
export type Hung = { readonly heightUm: number; readonly cleatFromTopUm: number };

/** By what the height is told: the middle at eye height, or the lower edge above furniture. */
export type HeightBy =
  | { readonly by: 'eye'; readonly eyeUm: number }
  | { readonly by: 'furniture'; readonly topUm: number; readonly gapUm: number };

/** Where a piece and its fixing are above the floor; whole micrometres. */
export type HangingHeight = {
  readonly cleatUm: number;
  readonly topUm: number;
  readonly bottomUm: number;
};

/** Why there is no height. */
export type HeightRefusal =
  | { code: 'piece_has_no_height' }
  | { code: 'fixing_off_the_piece' }
  | { code: 'lower_edge_below_the_floor'; missingUm: number };

/**
 * How high a piece hangs, and how high its fixing is.
 *
 * @returns whole micrometres above the floor; refuses, in this order: a piece without height, a
 *   fixing that is not on the piece, a lower edge below the floor
 * @source common practice: the middle at 57 to 60 inches, 6 to 10 inches above the back of a sofa;
 *   a group counts as one piece
 * @example 20 in tall, fixing 2 in below the top, eye height 57 in // the fixing at 65 in
 */
export function hangingHeight(piece: Hung, by: HeightBy): Result<HangingHeight, HeightRefusal> {
  const { heightUm, cleatFromTopUm } = piece;
  if (!(heightUm > 0)) return refuse({ code: 'piece_has_no_height' });
  if (!(cleatFromTopUm >= 0 && cleatFromTopUm < heightUm)) {
    return refuse({ code: 'fixing_off_the_piece' });
  }
  const bottomUm =
    by.by === 'eye' ? Math.round(by.eyeUm - heightUm / 2) : Math.round(by.topUm + by.gapUm);
  if (bottomUm < 0) return refuse({ code: 'lower_edge_below_the_floor', missingUm: -bottomUm });
  const topUm = bottomUm + heightUm;
  return ok({ cleatUm: topUm - cleatFromTopUm, topUm, bottomUm });
}
