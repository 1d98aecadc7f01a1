import 'server-only';
import { z } from 'zod';
import type { Doer } from '@/lib/access/rules';
import type { Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import type { CatalogueSku } from '../rules/piece';

/** New prices in cents, all from the same day and for the same reason. */
export type PricesToSet = {
  prices: readonly { skuId: string; priceCents: Cents }[];
  fromOn: Day;
  reason: string;
};

/**
 * Sets prices from a day on, however many in one statement; joins the caller's transaction. A
 * price that was set for the same day before gives way, and its tag is to be written anew.
 */
export async function setPrices(tx: Tx, doer: Doer, setting: PricesToSet): Promise<void> {
  if (setting.prices.length === 0) return;
  const { fromOn, reason } = setting;
  const rows = setting.prices.map(({ skuId, priceCents }) => ({
    ...{ id: newId(), skuId, priceCents: priceCents.toString() },
  }));
  await tx.$executeRaw`
    INSERT INTO "PriceChange" ("id", "skuId", "fromOn", "priceCents", "beforeCents", reason,
      "staffId", at)
    SELECT listed.id, listed."skuId", ${fromOn}::date, listed."priceCents",
      price_on(listed."skuId", ${fromOn}::date - 1), ${reason}, ${doer.actor.id}::uuid,
      ${doer.at.toISOString()}::timestamptz
    FROM json_to_recordset(${JSON.stringify(rows)}::json)
      AS listed (id uuid, "skuId" uuid, "priceCents" bigint)
    ON CONFLICT ("skuId", "fromOn") DO UPDATE SET "priceCents" = excluded."priceCents",
      reason = excluded.reason, "staffId" = excluded."staffId", at = excluded.at,
      "tagDoneAt" = NULL, "tagDoneById" = NULL`;
}

const datedRow = z.object({
  skuId: z.string(),
  code: z.string(),
  baseCents: z.bigint(),
  currentCents: z.bigint(),
});

/**
 * Keeps the prices of a stock list where prices by day are known: a price that differs holds from
 * that day on, and what the piece cost before stays known. Joins the caller's transaction; two
 * statements however long the list is.
 *
 * @returns the pieces as they are to be kept: with the price they began with, where prices by day
 *   tell what they cost now
 */
export async function keepDatedPrices(
  tx: Tx,
  doer: Doer,
  list: { pieces: readonly CatalogueSku[]; on: Day },
): Promise<readonly CatalogueSku[]> {
  const { pieces, on } = list;
  const found = await tx.$queryRaw`
    SELECT sku.id AS "skuId", sku.code, sku."priceCents" AS "baseCents",
      price_on(sku.id, ${on}::date) AS "currentCents"
    FROM "Sku" sku WHERE sku.id IN (SELECT "skuId" FROM "PriceChange") ORDER BY sku.code`;
  const dated = new Map(
    z
      .array(datedRow)
      .parse(found)
      .map((row) => [row.code, row]),
  );
  if (dated.size === 0) return pieces;
  const prices = pieces.flatMap(({ code, priceCents }) => {
    const known = dated.get(code);
    if (!known || known.currentCents === priceCents) return [];
    return [{ skuId: known.skuId, priceCents }];
  });
  await setPrices(tx, doer, { prices, fromOn: on, reason: 'from a stock list' });
  return pieces.map((piece) => {
    const known = dated.get(piece.code);
    return known ? { ...piece, priceCents: known.baseCents } : piece;
  });
}
