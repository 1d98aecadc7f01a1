import 'server-only';
import { createHash } from 'node:crypto';
import { z } from 'zod';
import { Prisma } from '@/generated/prisma/client';
import type { Day } from '@/lib/dates/rules';
import type { RaiseWish } from '../input/prices';
import { pieceKinds } from '../rules';
import { raisedPriceCents } from '../rules/prices';

/** The most prices that are raised at once. */
export const raisedMost = 5_000;

/** The columns by which a price list names a piece. */
export const pieceShown = {
  skuId: z.string(),
  code: z.string(),
  title: z.string(),
  colourway: z.string(),
  kind: z.enum(pieceKinds.map((each) => each.kind)),
  widthUm: z.number(),
  heightUm: z.number(),
};

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

function meant({ kind, designId, size }: RaiseWish): Prisma.Sql {
  const [width = 0, height = 0] = (size ?? '').split('x').map(Number);
  return Prisma.sql`
    ${kind ? Prisma.sql`AND sku.kind = ${kind}::"Kind"` : Prisma.empty}
    ${designId ? Prisma.sql`AND sku."designId" = ${designId}::uuid` : Prisma.empty}
    ${size ? Prisma.sql`AND sku."widthUm" = ${width} AND sku."heightUm" = ${height}` : Prisma.empty}`;
}
