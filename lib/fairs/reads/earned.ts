import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import { kindsForLater } from '@/lib/ledger/rules/sale-entry';
import { db } from '@/lib/platform/db/client';
import type { Cents } from '@/lib/money/rules';

/** The most designs that one fair's table names. */
const designsMost = 200;

/** What one design sold at a fair: net of discounts and of what came back, before tax. */
export type SoldDesign = {
  key: string;
  title: string;
  pieces: number;
  netCents: Cents;
  /** What making them cost; pieces nobody reckoned count as nothing. */
  makingCents: Cents;
  /** How many of the pieces nobody reckoned the cost of. */
  unreckoned: number;
};

const soldRow = z.object({
  key: z.string(),
  title: z.string(),
  pieces: z.number(),
  netCents: z.bigint(),
  makingCents: z.bigint(),
  unreckoned: z.number(),
});

/**
 * What was sold at a fair by design, the most first; money for later (a voucher, a deposit) is no
 * sale and is left out. One statement.
 */
export async function readSoldAtFair(
  fairId: string,
  from: Prisma.TransactionClient = db(),
): Promise<SoldDesign[]> {
  const found = await from.$queryRaw`
    SELECT coalesce(line."designId"::text, line.title) AS key, min(line.title) AS title,
      sum(line.quantity - back.quantity)::int AS pieces,
      sum(line."netCents" - back."netCents")::bigint AS "netCents",
      sum(coalesce(line."unitCostCents", 0) * (line.quantity - back.quantity))::bigint
        AS "makingCents",
      coalesce(sum(line.quantity - back.quantity)
        FILTER (WHERE line.kind = 'piece' AND line."unitCostCents" IS NULL), 0)::int AS unreckoned
    FROM "SaleLine" line
    JOIN "Sale" sale ON sale.id = line."saleId"
    CROSS JOIN LATERAL (
      SELECT coalesce(sum(each.quantity), 0) AS quantity,
        coalesce(sum(each."netCents"), 0) AS "netCents"
      FROM "GoodsReturnLine" each WHERE each."saleLineId" = line.id
    ) back
    WHERE line.kind::text <> ALL(${[...kindsForLater]})
      AND (sale."fairId" = ${fairId}::uuid
        OR sale."placeId" = (SELECT "placeId" FROM "Fair" WHERE id = ${fairId}::uuid))
    GROUP BY coalesce(line."designId"::text, line.title)
    ORDER BY 4 DESC, 2
    LIMIT ${designsMost}`;
  return z.array(soldRow).parse(found);
}

const sumRow = z.object({ fairId: z.string(), netCents: z.bigint() });

/** What each of these fairs sold, reckoned as {@link readSoldAtFair} does; one statement. */
export async function readSoldByFair(
  fairIds: readonly string[],
  from: Prisma.TransactionClient = db(),
): Promise<Map<string, Cents>> {
  const found = await from.$queryRaw`
    SELECT fair.id AS "fairId",
      sum(line."netCents" - coalesce((SELECT sum(each."netCents")
        FROM "GoodsReturnLine" each WHERE each."saleLineId" = line.id), 0))::bigint AS "netCents"
    FROM "Fair" fair
    JOIN "Sale" sale ON sale."fairId" = fair.id OR sale."placeId" = fair."placeId"
    JOIN "SaleLine" line ON line."saleId" = sale.id
    WHERE fair.id = ANY(${[...fairIds]}::uuid[])
      AND line.kind::text <> ALL(${[...kindsForLater]})
    GROUP BY fair.id`;
  const rows = z.array(sumRow).parse(found);
  return new Map(rows.map((row) => [row.fairId, row.netCents]));
}
