import type { PieceKind } from '@/lib/catalogue/rules';

/** What is known about food on a glaze. */
export type FoodUse = 'not_proven' | 'decorative_only' | 'proven';

const holdsFood: readonly PieceKind[] = ['platter', 'bowl', 'planter'];

/** Whether a kind of piece looks as if food could be served in it. */
export function mayHoldFood(kind: PieceKind): boolean {
  return holdsFood.includes(kind);
}

/**
 * What stands on ware that looks fit for food and is not proven to be. The rule gives these words;
 * its letters are at least {@link foodLetterPt} high, so it is set in capitals.
 *
 * The label is half of what the rule asks for: the same must stand on the base for good, or a hole
 * goes through the surface that food would touch.
 *
 * @source 21 CFR 109.16(b), words and height of letters from memory; summary in FR Doc. 94-706 of 12 January 1994
 */
export const foodStatement = 'NOT FOR FOOD USE. MAY POISON FOOD.';

/** The least height of the statement's letters in points: 3.2 mm. */
export const foodLetterPt = (3.2 * 72) / 25.4;

/**
 * What goes with a lamp.
 *
 * @source common practice
 */
export const lampCaution =
  'Mind the electricity: wired from listed parts by a qualified person. No stronger bulb than the ' +
  'socket says. Keep it dry.';

/**
 * What a piece may be used for, as a shelf label says it.
 *
 * @example forUseWords({ kind: 'bowl', foodUse: 'not_proven' }) // 'decorative only'
 */
export function forUseWords({ kind, foodUse }: { kind: PieceKind; foodUse: FoodUse }): string {
  if (mayHoldFood(kind)) return foodUse === 'proven' ? 'food use: tested' : 'decorative only';
  if (kind === 'lamp') return 'indoors, dry';
  return kind === 'relief_tile' ? 'wall or backsplash' : 'wall';
}
