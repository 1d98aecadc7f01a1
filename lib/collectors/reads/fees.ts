import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { parseDay, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { invariant } from '@/lib/platform/invariant';

const feesListed = 200;

/** A referral fee as the designer's page shows it; amounts in cents. */
export type FeeShown = {
  id: string;
  receipt: number;
  earnedOn: Day;
  percent: string;
  amountCents: bigint;
  paidOn: Day | null;
  /** What the buyer still owes of the sale; a fee is commonly paid after that. */
  buyerOwesCents: bigint;
  /** What came back of the sale since, before tax. */
  cameBackCents: bigint;
};

/** A designer's referral fees, the newest first, and what they come to. */
export type FeesOf = {
  fees: FeeShown[];
  earnedCents: bigint;
  paidCents: bigint;
  owedCents: bigint;
  /** What was paid in the calendar year of the day asked. */
  paidThisYearCents: bigint;
};

const day = z.string().transform((text): Day => {
  const read = parseDay(text);
  invariant(read.ok, 'The database writes a day as a day.');
  return read.value;
});
const feeRow = z.object({
  ...{ id: z.string(), receipt: z.number(), percent: z.string() },
  ...{ earnedOn: day, paidOn: day.nullable() },
  ...{ amountCents: z.bigint(), buyerOwesCents: z.bigint(), cameBackCents: z.bigint() },
});
const sumRow = z.object({
  ...{ earnedCents: z.bigint(), paidCents: z.bigint(), paidThisYearCents: z.bigint() },
});

/** What a designer earned by bringing buyers; at most the newest two hundred are listed. */
export async function listFeesOf(actor: Actor, collectorId: string, on: Day): Promise<FeesOf> {
  assertAllowed(actor, 'receipts.see');
  const yearOn = `${on.slice(0, 4)}-01-01`;
  const [found, sums] = await Promise.all([
    db().$queryRaw`
      SELECT fee.id, sale.number AS receipt, trim_scale(fee.percent)::text AS percent,
        to_char(entry."on", 'YYYY-MM-DD') AS "earnedOn",
        to_char(fee."paidOn", 'YYYY-MM-DD') AS "paidOn", fee."amountCents",
        (coalesce((SELECT sum("amountCents") FROM "Tender"
            WHERE "saleId" = sale.id AND kind = 'on_account'), 0)
         - coalesce((SELECT sum("amountCents") FROM "SettlementPayment"
            WHERE "saleId" = sale.id), 0))::bigint AS "buyerOwesCents",
        coalesce((SELECT sum("netCents") FROM "GoodsReturn" WHERE "saleId" = sale.id), 0)::bigint
          AS "cameBackCents"
      FROM "ReferralFee" fee
      JOIN "Sale" sale ON sale.id = fee."saleId"
      JOIN "JournalEntry" entry ON entry.id = fee."entryId"
      WHERE fee."collectorId" = ${collectorId}::uuid
      ORDER BY entry."on" DESC, sale.number DESC LIMIT ${feesListed}`,
    db().$queryRaw`
      SELECT coalesce(sum("amountCents"), 0)::bigint AS "earnedCents",
        coalesce(sum("amountCents") FILTER (WHERE "paidOn" IS NOT NULL), 0)::bigint AS "paidCents",
        coalesce(sum("amountCents") FILTER (WHERE "paidOn" >= ${yearOn}::date
          AND "paidOn" <= ${on}::date), 0)::bigint AS "paidThisYearCents"
      FROM "ReferralFee" WHERE "collectorId" = ${collectorId}::uuid`,
  ]);
  const [sum] = z.array(sumRow).parse(sums);
  invariant(sum, 'A sum has one row.');
  return {
    fees: z.array(feeRow).parse(found),
    ...sum,
    owedCents: sum.earnedCents - sum.paidCents,
  };
}
