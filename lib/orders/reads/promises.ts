import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';

/** The most promises that are read of each sort. */
export const promisesMost = 200;

const promiseRow = z.object({
  kind: z.enum(['layaway', 'hold', 'approval', 'to_collect']),
  key: z.string(),
  number: z.number().nullable(),
  what: z.string(),
  forWhom: z.string(),
  on: z.date().transform(dayFromDate),
});

/** Something that was promised to somebody until a day, besides orders and commissions. */
export type PromiseKept = z.output<typeof promiseRow>;

/**
 * What is kept for somebody until a day: layaways to their last day, holds to their end, pieces on
 * approval, sold pieces that hang here still. The earliest day first; orders and commissions are
 * told by their own lists.
 *
 * @param zone the gallery's own, for the day on which a hold ends
 */
export async function listKept(actor: Actor, zone: string): Promise<PromiseKept[]> {
  assertAllowed(actor, 'orders.see');
  const rows = await db().$queryRaw`
    (SELECT 'layaway' AS kind, layaway.id::text AS key, layaway.number,
      (SELECT string_agg(DISTINCT design.title, ', ') FROM "LayawayLine" line
        JOIN "Sku" sku ON sku.id = line."skuId" JOIN "Design" design ON design.id = sku."designId"
        WHERE line."layawayId" = layaway.id) AS what,
      collector.name AS "forWhom", layaway."finalOn" AS "on"
    FROM "Layaway" layaway JOIN "Collector" collector ON collector.id = layaway."collectorId"
    WHERE layaway."endedAt" IS NULL ORDER BY layaway."finalOn", layaway.number
    LIMIT ${promisesMost})
    UNION ALL
    (SELECT 'hold', hold.id::text, hold.number, design.title, hold."forWhom",
      (hold."untilAt" AT TIME ZONE ${zone})::date
    FROM "Hold" hold JOIN "Sku" sku ON sku.id = hold."skuId"
    JOIN "Design" design ON design.id = sku."designId"
    WHERE hold."endedAt" IS NULL AND hold."untilAt" IS NOT NULL
      AND hold."layawayId" IS NULL AND hold."orderId" IS NULL
    ORDER BY hold."untilAt", hold.number LIMIT ${promisesMost})
    UNION ALL
    (SELECT 'approval', approval.id::text, approval.number,
      (SELECT string_agg(DISTINCT design.title, ', ') FROM "OnApprovalLine" line
        JOIN "Sku" sku ON sku.id = line."skuId" JOIN "Design" design ON design.id = sku."designId"
        WHERE line."approvalId" = approval.id),
      collector.name, approval."dueOn"
    FROM "OnApproval" approval JOIN "Collector" collector ON collector.id = approval."collectorId"
    WHERE approval."endedAt" IS NULL ORDER BY approval."dueOn", approval.number
    LIMIT ${promisesMost})
    UNION ALL
    (SELECT 'to_collect', wait."saleLineId"::text, sale.number, line.title,
      coalesce(collector.name, 'receipt ' || sale.number), wait."untilOn"
    FROM "ToCollect" wait JOIN "SaleLine" line ON line.id = wait."saleLineId"
    JOIN "Sale" sale ON sale.id = line."saleId"
    LEFT JOIN "Collector" collector ON collector.id = sale."collectorId"
    WHERE wait."collectedAt" IS NULL ORDER BY wait."untilOn", sale.number LIMIT ${promisesMost})
    ORDER BY "on", key`;
  return z.array(promiseRow).parse(rows);
}
