import 'server-only';
import { createHash } from 'node:crypto';
import { z } from 'zod';
import { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import type { RaiseWish } from '../input/prices';
import { pieceKinds } from '../rules';
import { raisedPriceCents } from '../rules/prices';

/** The most lines that the page of prices shows of each sort. */
export const pricesListed = 500;
/** The most prices that are raised at once. */
export const raisedMost = 5_000;

const pieceShown = {
  skuId: z.string(),
  code: z.string(),
  title: z.string(),
  colourway: z.string(),
  kind: z.enum(pieceKinds.map((each) => each.kind)),
  widthUm: z.number(),
  heightUm: z.number(),
};

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

const priceRow = z.object({ ...pieceShown, priceCents: z.bigint() });

/** A price before and after it is raised, in cents. */
export type RaisedPrice = z.output<typeof priceRow> & { newCents: bigint };

/** New prices as they are shown before anybody says yes, and their fingerprint. */
export type RaiseShown = { prices: RaisedPrice[]; sha256: string };

/**
 * What the prices of the pieces meant would be from a day on; only those that change. Seconds and
 * irregulars keep their own prices.
 *
 * @returns at most one more than {@link raisedMost}, so that too many are seen
 */
export async function readRaise(
  from: Prisma.TransactionClient,
  wish: RaiseWish,
  fromOn: Day,
): Promise<RaiseShown> {
  const rows = await from.$queryRaw`
    SELECT sku.id AS "skuId", sku.code, design.title, colourway.name AS colourway,
      sku.kind::text AS kind, sku."widthUm", sku."heightUm",
      price_on(sku.id, ${fromOn}::date) AS "priceCents"
    FROM "Sku" sku
    JOIN "Design" design ON design.id = sku."designId"
    JOIN "Colourway" colourway ON colourway.id = sku."colourwayId"
    WHERE sku.grade = 'first' ${meant(wish)}
    ORDER BY design.title, sku.code LIMIT ${raisedMost + 1}`;
  const prices = z
    .array(priceRow)
    .parse(rows)
    .map((row) => ({ ...row, newCents: raisedPriceCents(row.priceCents, wish.percent, wish.step) }))
    .filter((row) => row.newCents !== row.priceCents);
  const told = prices.map((each) => `${each.skuId} ${each.priceCents} ${each.newCents}`);
  return { prices, sha256: createHash('sha256').update(told.join('\n')).digest('hex') };
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

function meant({ kind, designId, size }: RaiseWish): Prisma.Sql {
  const [width = 0, height = 0] = (size ?? '').split('x').map(Number);
  return Prisma.sql`
    ${kind ? Prisma.sql`AND sku.kind = ${kind}::"Kind"` : Prisma.empty}
    ${designId ? Prisma.sql`AND sku."designId" = ${designId}::uuid` : Prisma.empty}
    ${size ? Prisma.sql`AND sku."widthUm" = ${width} AND sku."heightUm" = ${height}` : Prisma.empty}`;
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
