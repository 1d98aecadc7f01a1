import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** Pieces that are to leave a place for a line of a sale. */
export type Taking = {
  skuId: string;
  placeId: string;
  /** At least one. */
  quantity: number;
  saleLineId: string;
  unitCostCents: bigint | null;
  /** The numbers of an edition that leave, as many as pieces; none for anything else. */
  numbers?: readonly number[];
  /** When and by whom, where that is not the doer of the whole command: many sales at once. */
  at?: Date;
  staffId?: string;
};

/** What stands at a place, and how much of it is kept back: one line for each SKU and place. */
export type Shelf = { skuId: string; placeId: string; onHand: number; held?: number };

/** Why pieces could not be taken: fewer are there, and free, than were wanted in all. */
export type StockRefusal = {
  code: 'not_enough';
  skuId: string;
  placeId: string;
  wanted: number;
  onHand: number;
  /** How many of them are kept back for somebody. */
  held: number;
};

/**
 * Takes pieces off the shelves, on paper. Takings of the same SKU at the same place count together.
 *
 * @param shelves what stands where; a SKU and place that are not named have none
 * @returns true; refuses `not_enough` for the first taking whose pieces are not all there
 * @example decideTakings([], [aTaking({ quantity: 1 })]) // refused: none are there
 */
export function decideTakings(
  shelves: readonly Shelf[],
  takings: readonly Taking[],
): Result<true, StockRefusal> {
  const wantedOf = new Map<string, number>();
  for (const taking of takings) {
    invariant(
      Number.isInteger(taking.quantity) && taking.quantity > 0,
      'A taking has at least one piece.',
    );
    const key = shelfKey(taking);
    wantedOf.set(key, (wantedOf.get(key) ?? 0) + taking.quantity);
  }
  const shelfOf = new Map(shelves.map((shelf) => [shelfKey(shelf), shelf]));
  for (const { skuId, placeId } of takings) {
    const key = shelfKey({ skuId, placeId });
    const wanted = wantedOf.get(key) ?? 0;
    const { onHand, held = 0 } = shelfOf.get(key) ?? { onHand: 0 };
    if (wanted > onHand - held) {
      return refuse({ code: 'not_enough', skuId, placeId, wanted, onHand, held });
    }
  }
  return ok(true);
}

/** One word for a SKU at a place, to look it up by. */
export function shelfKey(shelf: { skuId: string; placeId: string }): string {
  return `${shelf.skuId} ${shelf.placeId}`;
}
