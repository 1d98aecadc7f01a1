import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { isPieceKind, kindWords, type PieceKind } from '@/lib/catalogue/rules';
import { addDays, dateFromDay, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { daysOnOffer, kindRate, type StockDay } from '@/lib/stock/rules/demand';
import { readUsualRoutes } from '@/lib/studio/reads/routes';
import type { StepDays, Technique } from '@/lib/studio/rules/routes';
import { lookedBackDays, makeNext, usualTechnique, type MakeNext } from '../rules/make-next';
import type { SkuToMake } from '../rules/make-next';

/** A piece that should be made again, and why. */
export type PieceToMake = SkuToMake &
  MakeNext & {
    skuId: string;
    code: string;
    title: string;
    /** Kind and colourway in words. */
    what: string;
    picture: { fileId: string; widthPx: number; heightPx: number } | null;
  };

/** What to make next, and how many were looked at to know it. */
export type MakeNextList = {
  pieces: PieceToMake[];
  /** Pieces that should be begun, however many of them are listed. */
  toBegin: number;
  lookedAt: number;
};

/** How many pieces the page lists. */
export const makeNextListed = 60;
/** How many SKUs are looked at; a studio has hundreds. */
const skusMost = 20_000;

const skuRow = z.object({
  skuId: z.string(),
  code: z.string(),
  title: z.string(),
  kind: z.string().refine(isPieceKind),
  colourway: z.string(),
  priceCents: z.bigint(),
  here: z.number(),
  elsewhere: z.number(),
  held: z.number(),
  ordered: z.number(),
  inMaking: z.number(),
  editionLeft: z.number().nullable(),
  technique: z.enum(['slab_relief', 'slip_cast', 'press_moulded', 'thrown']).nullable(),
  fileId: z.string().nullable(),
  widthPx: z.number().nullable(),
  heightPx: z.number().nullable(),
});
type SkuRow = z.infer<typeof skuRow>;

const dayRow = z.object({
  skuId: z.string(),
  on: z.custom<Day>((value) => typeof value === 'string'),
  change: z.number(),
  sold: z.number(),
  back: z.number(),
});

/**
 * What to make next: open stock and editions that ran low, by the sales that would be lost before
 * a lot begun today is ready. One-offs and seconds are not made again.
 *
 * Only the gallery's own places count: what other galleries and shops sell is not sold here.
 *
 * @param place the counter's place, today and the gallery's zone
 * @returns at most {@link makeNextListed} pieces
 */
export async function listMakeNext(
  actor: Actor,
  place: { floorId: string; todayOn: Day; zone: string },
): Promise<MakeNextList> {
  assertAllowed(actor, 'stock.see');
  const sinceOn = addDays(place.todayOn, -lookedBackDays);
  const [skus, days, routes] = await Promise.all([
    readSkus({ ...place, sinceOn }),
    readDays({ sinceOn, zone: place.zone }),
    readUsualRoutes(db()),
  ]);
  const seen = skus.map((sku) => seenOf(sku, days.get(sku.skuId) ?? [], { ...place, sinceOn }));
  const perDayOf = ratesByKind(seen);
  const reckoned = seen
    .map((sku) => toMake(sku, perDayOf.get(sku.kind) ?? 0, routes))
    .filter((piece) => piece.wanted > 0)
    .toSorted((a, b) => order(b.lostCents, a.lostCents) || order(a.code, b.code));
  const { length: toBegin } = reckoned;
  return { pieces: reckoned.slice(0, makeNextListed), toBegin, lookedAt: skus.length };
}

function order<Value extends bigint | string>(a: Value, b: Value): number {
  return a < b ? -1 : a > b ? 1 : 0;
}

type Seen = SkuRow & { sold: number; daysOnOffer: number };
type DayOfSku = StockDay & { back: number };

function seenOf(
  sku: SkuRow,
  days: readonly DayOfSku[],
  { sinceOn, todayOn }: { sinceOn: Day; todayOn: Day },
): Seen {
  const changed = days.reduce((sum, day) => sum + day.change, 0);
  const sold = days.reduce((sum, day) => sum + day.sold - day.back, 0);
  const span = { fromOn: sinceOn, untilOn: addDays(todayOn, 1) };
  const opening = sku.here + sku.elsewhere - changed;
  return { ...sku, sold: Math.max(0, sold), daysOnOffer: daysOnOffer({ opening, days, ...span }) };
}

/** How many a day one SKU of each kind sells, over all of the kind. */
function ratesByKind(seen: readonly Seen[]): ReadonlyMap<PieceKind, number> {
  const sums = new Map<PieceKind, { sold: number; daysOnOffer: number }>();
  for (const { kind, ...one } of seen) {
    const sum = sums.get(kind) ?? { sold: 0, daysOnOffer: 0 };
    const daysOfAll = sum.daysOnOffer + one.daysOnOffer;
    sums.set(kind, { sold: sum.sold + one.sold, daysOnOffer: daysOfAll });
  }
  return new Map([...sums].map(([kind, sum]) => [kind, kindRate(sum)]));
}

function toMake(
  sku: Seen,
  kindPerDay: number,
  routes: Readonly<Record<Technique, readonly StepDays[]>>,
): PieceToMake {
  const { fileId, widthPx, heightPx, colourway, kind } = sku;
  const technique = sku.technique ?? usualTechnique[kind];
  const known = { ...sku, technique };
  return {
    ...known,
    ...makeNext(known, kindPerDay, routes[technique]),
    what: `${kindWords(kind)}, ${colourway}`,
    picture:
      fileId !== null && widthPx !== null && heightPx !== null
        ? { fileId, widthPx, heightPx }
        : null,
  };
}

async function readSkus(of: { floorId: string; todayOn: Day; sinceOn: Day }): Promise<SkuRow[]> {
  const found = await db().$queryRaw`
    WITH here AS (
      SELECT level."skuId", sum(level.held)::int AS held,
        coalesce(sum(level."onHand") FILTER (WHERE place.id = ${of.floorId}::uuid), 0)::int AS here,
        coalesce(sum(level."onHand") FILTER (WHERE place.id <> ${of.floorId}::uuid), 0)::int
          AS elsewhere
      FROM "StockLevel" level JOIN "Place" place ON place.id = level."placeId"
      WHERE place.kind IN ('gallery', 'storeroom', 'studio', 'fair') GROUP BY level."skuId"),
    making AS (
      SELECT job."skuId", sum(pieces_under_way(job.id))::int AS pieces FROM "Job" job
      WHERE job."skuId" IS NOT NULL GROUP BY job."skuId"),
    ordered AS (
      SELECT "skuId", sum(pieces)::int AS pieces FROM (
        SELECT special."skuId", greatest(0, special.quantity - coalesce((SELECT sum(quantity)
            FROM "Hold" WHERE "orderId" = special.id AND "endedAt" IS NULL), 0)) AS pieces
        FROM "SpecialOrder" special WHERE special."endedAt" IS NULL
        UNION ALL
        SELECT line."skuId", line.quantity FROM "WholesaleLine" line
        JOIN "WholesaleOrder" shop ON shop.id = line."orderId"
        WHERE shop."saleId" IS NULL AND shop."endedAt" IS NULL) asked GROUP BY "skuId")
    SELECT sku.id AS "skuId", sku.code, design.title, sku.kind::text AS kind,
      colourway.name AS colourway, price_on(sku.id, ${of.todayOn}::date) AS "priceCents",
      coalesce(here.here, 0) AS here, coalesce(here.elsewhere, 0) AS elsewhere,
      coalesce(here.held, 0) AS held, coalesce(ordered.pieces, 0) AS ordered,
      coalesce(making.pieces, 0) AS "inMaking",
      edition.size + edition."artistProofs" - (SELECT count(*)::int FROM "EditionPiece"
        WHERE "skuId" = sku.id) - coalesce(making.pieces, 0) AS "editionLeft",
      (SELECT technique::text FROM "Job" WHERE "skuId" = sku.id ORDER BY "openedAt" DESC LIMIT 1)
        AS technique,
      file.id AS "fileId", file."widthPx", file."heightPx"
    FROM "Sku" sku
    JOIN "Design" design ON design.id = sku."designId"
    JOIN "Colourway" colourway ON colourway.id = sku."colourwayId"
    LEFT JOIN "Edition" edition ON edition."skuId" = sku.id
    LEFT JOIN "StoredFile" file ON file.id = coalesce(sku."pictureId", design."pictureId")
    LEFT JOIN here ON here."skuId" = sku.id
    LEFT JOIN making ON making."skuId" = sku.id
    LEFT JOIN ordered ON ordered."skuId" = sku.id
    WHERE sku.making <> 'one_off' AND sku.grade = 'first'
      AND (colourway."endedOn" IS NULL OR colourway."endedOn" > ${of.todayOn}::date)
      AND EXISTS (SELECT 1 FROM "StockMovement" movement WHERE movement."skuId" = sku.id
        AND (here.here > 0 OR movement.at >= ${dateFromDay(of.sinceOn)}))
    ORDER BY sku.code LIMIT ${skusMost}`;
  return z.array(skuRow).parse(found);
}

async function readDays(of: { sinceOn: Day; zone: string }): Promise<Map<string, DayOfSku[]>> {
  const found = await db().$queryRaw`
    SELECT movement."skuId", (movement.at AT TIME ZONE ${of.zone})::date::text AS on,
      sum(movement.quantity)::int AS change,
      coalesce(-sum(movement.quantity) FILTER (WHERE movement.reason = 'sold'
        AND line."orderId" IS NULL AND sale.channel IN ('counter', 'fair', 'shipped')), 0)::int
        AS sold,
      coalesce(sum(movement.quantity) FILTER (WHERE movement.reason = 'returned'), 0)::int AS back
    FROM "StockMovement" movement
    JOIN "Place" place ON place.id = movement."placeId"
    LEFT JOIN "SaleLine" line ON line.id = movement."saleLineId"
    LEFT JOIN "Sale" sale ON sale.id = line."saleId"
    WHERE place.kind IN ('gallery', 'storeroom', 'studio', 'fair')
      AND (movement.at AT TIME ZONE ${of.zone})::date >= ${of.sinceOn}::date
    GROUP BY 1, 2 ORDER BY 1, 2`;
  const days = new Map<string, DayOfSku[]>();
  for (const { skuId, ...day } of z.array(dayRow).parse(found)) {
    const known = days.get(skuId);
    if (known) known.push(day);
    else days.set(skuId, [day]);
  }
  return days;
}
