import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import type { RaiseWish } from '../input/prices';
import { pieceShown, readRaise, type RaiseShown } from './raise';

/** The most lines that the page of prices shows of each sort. */
export const pricesListed = 500;

const changeRow = z.object({
  ...pieceShown,
  id: z.string(),
  fromOn: z.date().transform(dayFromDate),
  priceCents: z.bigint(),
  beforeCents: z.bigint(),
  reason: z.string(),
  staff: z.string(),
});

/** A price that will hold from a day that is still to come. Cents. */
export type PriceToCome = z.output<typeof changeRow>;

/** The prices that are to come, the nearest day first; at most {@link pricesListed}. */
export async function listPricesToCome(actor: Actor, todayOn: Day): Promise<PriceToCome[]> {
  assertAllowed(actor, 'stock.see');
  const rows = await db().$queryRaw`
    SELECT change.id, change."skuId", sku.code, design.title, colourway.name AS colourway,
      sku.kind::text AS kind, sku."widthUm", sku."heightUm", change."fromOn", change."priceCents",
      price_on(sku.id, change."fromOn" - 1) AS "beforeCents", change.reason, staff.name AS staff
    FROM "PriceChange" change
    JOIN "Sku" sku ON sku.id = change."skuId"
    JOIN "Design" design ON design.id = sku."designId"
    JOIN "Colourway" colourway ON colourway.id = sku."colourwayId"
    JOIN "Staff" staff ON staff.id = change."staffId"
    WHERE change."fromOn" > ${todayOn}::date
    ORDER BY change."fromOn", design.title, sku.code LIMIT ${pricesListed}`;
  return z.array(changeRow).parse(rows);
}

const tagRow = z.object({
  ...pieceShown,
  /** What the tag says until it is written anew, and what it is to say. */
  tagCents: z.bigint(),
  priceCents: z.bigint(),
  sinceOn: z.date().transform(dayFromDate),
  /** How many pieces there are in all, wherever they stand. */
  pieces: z.number(),
});

/** A tag that still says an older price. */
export type TagToRewrite = z.output<typeof tagRow>;

/**
 * The tags that are to be written anew: prices that hold today and whose tag says another one,
 * those of which pieces are here first.
 */
export async function listTagsToRewrite(actor: Actor, todayOn: Day): Promise<TagToRewrite[]> {
  assertAllowed(actor, 'stock.see');
  const rows = await db().$queryRaw`
    SELECT sku.id AS "skuId", sku.code, design.title, colourway.name AS colourway,
      sku.kind::text AS kind, sku."widthUm", sku."heightUm", open."tagCents", said."priceCents",
      open."sinceOn", stock.pieces
    FROM (
      SELECT DISTINCT ON ("skuId") "skuId", "beforeCents" AS "tagCents", "fromOn" AS "sinceOn"
      FROM "PriceChange" WHERE "fromOn" <= ${todayOn}::date AND "tagDoneAt" IS NULL
      ORDER BY "skuId", "fromOn"
    ) open
    JOIN "Sku" sku ON sku.id = open."skuId"
    JOIN "Design" design ON design.id = sku."designId"
    JOIN "Colourway" colourway ON colourway.id = sku."colourwayId"
    CROSS JOIN LATERAL (SELECT price_on(sku.id, ${todayOn}::date) AS "priceCents") said
    CROSS JOIN LATERAL (
      SELECT coalesce(sum("onHand"), 0)::int AS pieces FROM "StockLevel" WHERE "skuId" = sku.id
    ) stock
    WHERE said."priceCents" <> open."tagCents"
    ORDER BY stock.pieces = 0, design.title, sku.code LIMIT ${pricesListed}`;
  return z.array(tagRow).parse(rows);
}

/** Shows {@link readRaise} to whoever may set prices. */
export async function previewRaise(
  actor: Actor,
  wish: RaiseWish,
  fromOn: Day,
): Promise<RaiseShown> {
  assertAllowed(actor, 'catalogue.price');
  return readRaise(db(), wish, fromOn);
}

/** What can be chosen when prices are raised: designs by title, sizes from small to large. */
export async function listRaiseChoices(actor: Actor) {
  assertAllowed(actor, 'catalogue.price');
  const [designs, sizes] = await Promise.all([
    db().design.findMany({
      select: { id: true, title: true },
      orderBy: [{ title: 'asc' }, { id: 'asc' }],
      take: pricesListed,
    }),
    db().sku.groupBy({
      by: ['widthUm', 'heightUm'],
      orderBy: [{ widthUm: 'asc' }, { heightUm: 'asc' }],
      take: 200,
    }),
  ]);
  return { designs, sizes };
}
