import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import type { Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { placeKinds, type PlaceKind } from '../rules/moves/place';
import {
  addWorth,
  shelvesOfLot,
  type LotMovement,
  type ShelfWorth,
  type SkuWorth,
  type Worth,
  type WorthLine,
} from '../rules/moves/worth';

/** How many lots are read and valued at once: memory stays small however many movements there are. */
const lotsAtOnce = 400;
/** The most pieces without a known cost that are named. */
export const unknownNamedMost = 60;

/** A place with what stands there. */
export type PlaceWorth = Worth & {
  placeId: string;
  place: string;
  kind: PlaceKind;
  retailCents: Cents;
  /** Pieces there whose cost nobody knows; they are in no sum at cost. */
  unknownUnits: number;
};

/** What the stock is worth, in all and by place. */
export type StockWorthSheet = {
  whole: Omit<PlaceWorth, 'placeId' | 'place' | 'kind'>;
  places: PlaceWorth[];
  /** Pieces without a known cost, the first sixty of them. */
  unknown: SkuWorth[];
  unknownSkus: number;
  /** How many movements it was worked out from. */
  movements: number;
};

/**
 * What the stock is worth at cost, first in first out and by the moving average over the same
 * movements, and at the retail prices of today.
 *
 * Lots are read and valued in turns of 400, each in one statement.
 *
 * @param onLine is told of every SKU at every place, for a file; nothing is kept of it here
 */
export async function readStockWorth(
  actor: Actor,
  onLine: (line: WorthLine) => void = () => undefined,
): Promise<StockWorthSheet> {
  assertAllowed(actor, 'stock.value');
  const places = await readPlaces();
  const sums = new Map<string, PlaceWorth>();
  const unknown = new Map<string, SkuWorth>();
  let movements = 0;
  for (let after: string | null = null; ;) {
    const lots = await readLots(after);
    if (lots.length === 0) break;
    const read = await readMovements(lots);
    movements += [...read.values()].reduce((sum, lot) => sum + lot.length, 0);
    const shelves = [...read.values()].flatMap((lot) => shelvesOfLot(lot));
    const skus = await readSkus(shelves.map((shelf) => shelf.skuId));
    for (const shelf of shelves) {
      const line = lineOf(shelf, { skus, places });
      onLine(line);
      if (!shelf.isKnown) unknown.set(shelf.skuId, line);
      addTo(sums, shelf, line, places);
    }
    after = lots.at(-1) ?? null;
  }
  const listed = [...sums.values()].toSorted((one, other) => one.place.localeCompare(other.place));
  return {
    whole: wholeOf(listed),
    places: listed,
    unknown: [...unknown.values()].slice(0, unknownNamedMost),
    unknownSkus: unknown.size,
    movements,
  };
}

type PlaceRow = { id: string; name: string; kind: PlaceKind };

async function readPlaces(): Promise<Map<string, PlaceRow>> {
  const rows = await db().place.findMany({
    select: { id: true, name: true, kind: true },
    orderBy: { name: 'asc' },
    take: 1_000,
  });
  return new Map(rows.map((row) => [row.id, row]));
}

/** A lot is named after its first: seconds lie with the firsts they come from. */
async function readLots(after: string | null): Promise<string[]> {
  const rows = await db().sku.findMany({
    where: { firstSkuId: null, ...(after === null ? {} : { id: { gt: after } }) },
    select: { id: true },
    orderBy: { id: 'asc' },
    take: lotsAtOnce,
  });
  return rows.map((row) => row.id);
}

const movementRow = z.tuple([
  z.string(),
  z.string(),
  z.string(),
  z.number(),
  z.string(),
  z.string().nullable(),
]);

/** The cost of what came back is the one it left with; the catalogue's where none was written. */
async function readMovements(lots: readonly string[]): Promise<Map<string, LotMovement[]>> {
  const found = await db().$queryRaw`
    SELECT json_agg(json_build_array(lot.id, movement."skuId", movement."placeId",
      movement.quantity, movement.reason,
      coalesce(movement."unitCostCents", line."unitCostCents", sku."costCents", first."costCents")::text)
      ORDER BY movement.id) AS movements
    FROM "Sku" lot
    JOIN "Sku" sku ON sku.id = lot.id OR sku."firstSkuId" = lot.id
    JOIN "StockMovement" movement ON movement."skuId" = sku.id
    JOIN "Sku" first ON first.id = lot.id
    LEFT JOIN "GoodsReturnLine" back ON back.id = movement."returnLineId"
    LEFT JOIN "SaleLine" line ON line.id = back."saleLineId"
    WHERE lot.id = ANY(${[...lots]}::uuid[])`;
  const [answer] = z.tuple([z.object({ movements: z.array(movementRow).nullable() })]).parse(found);
  const byLot = new Map<string, LotMovement[]>();
  for (const [lot, skuId, placeId, quantity, reason, cost] of answer.movements ?? []) {
    const unitCostCents = cost === null ? null : BigInt(cost);
    const kept = byLot.get(lot);
    const movement = { skuId, placeId, quantity, reason, unitCostCents };
    if (kept) kept.push(movement);
    else byLot.set(lot, [movement]);
  }
  return byLot;
}

const skuRow = z.object({
  skuId: z.string(),
  sku: z.string(),
  title: z.string(),
  priceCents: z.bigint(),
});

type SkuRow = z.infer<typeof skuRow>;

async function readSkus(skuIds: readonly string[]): Promise<Map<string, SkuRow>> {
  const found = await db().$queryRaw`
    SELECT sku.id AS "skuId", sku.code AS sku, design.title,
      price_on(sku.id, (now() AT TIME ZONE gallery."timeZone")::date) AS "priceCents"
    FROM "Sku" sku JOIN "Design" design ON design.id = sku."designId"
    CROSS JOIN "Gallery" gallery
    WHERE sku.id = ANY(${[...new Set(skuIds)]}::uuid[])`;
  return new Map(
    z
      .array(skuRow)
      .parse(found)
      .map((row) => [row.skuId, row]),
  );
}

function lineOf(
  shelf: ShelfWorth,
  known: { skus: ReadonlyMap<string, SkuRow>; places: ReadonlyMap<string, PlaceRow> },
): WorthLine {
  const { skuId, sku, title, priceCents } = known.skus.get(shelf.skuId) ?? {
    ...{ skuId: shelf.skuId, sku: '', title: '', priceCents: 0n },
  };
  const { units, fifoCents, averageCents, isKnown } = shelf;
  const place = known.places.get(shelf.placeId)?.name ?? '';
  const retailCents = priceCents * BigInt(units);
  return { skuId, sku, title, place, units, fifoCents, averageCents, retailCents, isKnown };
}

function addTo(
  sums: Map<string, PlaceWorth>,
  shelf: ShelfWorth,
  line: WorthLine,
  places: ReadonlyMap<string, PlaceRow>,
): void {
  const { placeId } = shelf;
  const kind = places.get(placeId)?.kind ?? placeKinds[0].kind;
  const before = sums.get(placeId) ?? {
    ...{ placeId, place: line.place, kind, units: 0, unknownUnits: 0 },
    ...{ fifoCents: 0n, averageCents: 0n, retailCents: 0n },
  };
  sums.set(placeId, {
    ...before,
    ...addWorth([before, shelf]),
    retailCents: before.retailCents + line.retailCents,
    unknownUnits: before.unknownUnits + (shelf.isKnown ? 0 : shelf.units),
  });
}

function wholeOf(places: readonly PlaceWorth[]): StockWorthSheet['whole'] {
  return {
    ...addWorth(places),
    retailCents: places.reduce((sum, place) => sum + place.retailCents, 0n),
    unknownUnits: places.reduce((sum, place) => sum + place.unknownUnits, 0),
  };
}
