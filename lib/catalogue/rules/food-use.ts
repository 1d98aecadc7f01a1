import type { PieceKind } from '../rules';

/** What is known about food on a glaze. */
export type FoodUse = 'not_proven' | 'decorative_only' | 'proven';

/** Each answer as the label says it, and what it takes. */
export const foodUses: readonly { use: FoodUse; words: string; hint: string }[] = [
  {
    use: 'not_proven',
    words: 'not for food use',
    hint: 'No laboratory has tested this glaze on this clay yet.',
  },
  {
    use: 'decorative_only',
    words: 'decorative only',
    hint: 'Its glaze is not fit for food, or it is crazed. Say so on the base too.',
  },
  {
    use: 'proven',
    words: 'for food use',
    hint: 'A laboratory’s leach test of this clay, glaze and firing says so.',
  },
];

/** What a piece's label says about food. */
export function foodUseWords(use: FoodUse): string {
  return foodUses.find((each) => each.use === use)?.words ?? 'not for food use';
}

const holdsFood: readonly PieceKind[] = ['platter', 'bowl', 'planter'];

/**
 * Whether people may ask if they can eat from it: then its label answers.
 *
 * @source common practice: platters, bowls and the saucers of planters
 */
export function mayBeAskedForFood(kind: PieceKind): boolean {
  return holdsFood.includes(kind);
}

/**
 * The caution where a piece that may hold food is sold or labelled; empty for one that is proven,
 * and for what nobody eats from.
 *
 * @source common practice; the adviser decides what the law of the place asks for
 */
export function foodCaution(piece: { kind: PieceKind; foodUse: FoodUse }): string {
  if (!mayBeAskedForFood(piece.kind) || piece.foodUse === 'proven') return '';
  return piece.foodUse === 'decorative_only'
    ? 'Decorative only: say it when it is sold, and mark the base for good.'
    : 'Not for food use until a laboratory’s leach test says otherwise: say it when it is sold.';
}
