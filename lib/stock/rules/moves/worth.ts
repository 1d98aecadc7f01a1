import { splitCents, sumCents, type Cents } from '@/lib/money/rules';
import { valueStock, type CostedMovement } from '../value';

/** The movements of a SKU with those of its seconds: one lot of clay, whatever its mark. */
export type LotMovement = {
  /** The SKU that moved. */
  skuId: string;
  placeId: string;
  quantity: number;
  reason: string;
  /** Cents; null when nobody reckoned it. */
  unitCostCents: Cents | null;
};

/** What some pieces are worth at cost, by both ways of reckoning, in cents. */
export type Worth = { units: number; fifoCents: Cents; averageCents: Cents };

/** A SKU at a place, with its share of what its lot is worth. */
export type ShelfWorth = Worth & { skuId: string; placeId: string; isKnown: boolean };

/**
 * What a lot is worth, shelf by shelf: the whole lot is valued by {@link valueStock}, and each
 * shelf has its share by its pieces, so that the shelves add up to the lot to the cent.
 *
 * Moves from place to place and firsts that became seconds change nothing in the whole. A lot into
 * which pieces came before any cost was known is told as not known, and has no worth here.
 *
 * @param movements of one lot, in the order in which they were written down
 * @source OpenStax, Principles of Accounting, volume 1, section 10.3 (perpetual); the shares by
 *   place are common practice
 */
export function shelvesOfLot(movements: readonly LotMovement[]): ShelfWorth[] {
  const standing = new Map<string, { skuId: string; placeId: string; units: number }>();
  for (const { skuId, placeId, quantity } of movements) {
    const key = `${skuId} ${placeId}`;
    const units = (standing.get(key)?.units ?? 0) + quantity;
    standing.set(key, { skuId, placeId, units });
  }
  const shelves = [...standing.values()].filter((shelf) => shelf.units > 0);
  if (shelves.length === 0) return [];
  const costed = wholeLot(movements);
  if (!isCostKnown(costed)) {
    return shelves.map((shelf) => ({ ...shelf, isKnown: false, fifoCents: 0n, averageCents: 0n }));
  }
  const { fifo, movingAverage } = valueStock(costed);
  const weights = shelves.map((shelf) => BigInt(shelf.units));
  const fifoParts = splitCents(fifo.endingCents, weights);
  const averageParts = splitCents(movingAverage.endingCents, weights);
  return shelves.map((shelf, place) => ({
    ...{ ...shelf, isKnown: true },
    fifoCents: fifoParts[place] ?? 0n,
    averageCents: averageParts[place] ?? 0n,
  }));
}

/**
 * What changes the lot as a whole: arrivals, and what left it for good. Firsts that became seconds
 * are left out when both sides are in the lot, as they are wherever a second knows its first.
 */
function wholeLot(movements: readonly LotMovement[]): CostedMovement[] {
  const seconds = movements.filter(({ reason }) => reason === 'second');
  const bothSides = seconds.reduce((sum, { quantity }) => sum + quantity, 0) === 0;
  return movements
    .filter(({ reason }) => reason !== 'moved' && !(bothSides && reason === 'second'))
    .map(({ quantity, unitCostCents }) => ({ quantity, unitCostCents }));
}

function isCostKnown(movements: readonly CostedMovement[]): boolean {
  const first = movements.find(({ quantity }) => quantity > 0);
  return first !== undefined && first.unitCostCents !== null;
}

/** Adds worths up. */
export function addWorth(parts: readonly Worth[]): Worth {
  return {
    units: parts.reduce((sum, part) => sum + part.units, 0),
    fifoCents: sumCents(parts.map((part) => part.fifoCents)),
    averageCents: sumCents(parts.map((part) => part.averageCents)),
  };
}

/** A SKU that stands somewhere, with what it is worth at cost and at retail. */
export type SkuWorth = Worth & {
  skuId: string;
  sku: string;
  title: string;
  retailCents: Cents;
  isKnown: boolean;
};

/** One line of the worth: a SKU at a place. */
export type WorthLine = SkuWorth & { place: string };
