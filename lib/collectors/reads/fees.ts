import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { parseDay, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { invariant } from '@/lib/platform/invariant';
import { idsOf } from './group';

const feesListed = 200;
/** Referral fees owed, as the ledger's accounts have it. */
const owed = '2300';

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
  /** What of the fee was taken back, because pieces came back. */
  takenBackCents: bigint;
};

/** A designer's referral fees, the newest first, and what they come to as the books have it. */
export type FeesOf = {
  fees: FeeShown[];
  /** Less what was taken back. */
  earnedCents: bigint;
  paidCents: bigint;
  /** Below zero when pieces came back after their fee was paid. */
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
  ...{ amountCents: z.bigint(), buyerOwesCents: z.bigint(), takenBackCents: z.bigint() },
});
const sumRow = z.object({
  ...{ owedCents: z.bigint(), paidCents: z.bigint(), paidThisYearCents: z.bigint() },
});

/** What a designer earned by bringing buyers; at most the newest two hundred are listed. */
export async function listFeesOf(actor: Actor, collectorId: string, on: Day): Promise<FeesOf> {
  assertAllowed(actor, 'receipts.see');
  const ids = [...(await idsOf(db(), collectorId))];
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
        coalesce((SELECT sum(back."amountCents") FROM "GoodsReturn" returned
            JOIN "Posting" back ON back."entryId" = returned."entryId"
            WHERE returned."saleId" = sale.id AND back."accountCode" = ${owed}), 0)::bigint
          AS "takenBackCents"
      FROM "ReferralFee" fee
      JOIN "Sale" sale ON sale.id = fee."saleId"
      JOIN "JournalEntry" entry ON entry.id = fee."entryId"
      WHERE fee."collectorId" = ANY(${ids}::uuid[])
      ORDER BY entry."on" DESC, sale.number DESC LIMIT ${feesListed}`,
    db().$queryRaw`
      SELECT coalesce(-sum(posting."amountCents"), 0)::bigint AS "owedCents",
        coalesce(sum(posting."amountCents") FILTER (WHERE paid.id IS NOT NULL), 0)::bigint
          AS "paidCents",
        coalesce(sum(posting."amountCents") FILTER (WHERE paid."paidOn" >= ${yearOn}::date
          AND paid."paidOn" <= ${on}::date), 0)::bigint AS "paidThisYearCents"
      FROM "Posting" posting
      LEFT JOIN "ReferralFee" paid ON paid."paidEntryId" = posting."entryId"
      WHERE posting."accountCode" = ${owed} AND posting."collectorId" = ANY(${ids}::uuid[])`,
  ]);
  const [sum] = z.array(sumRow).parse(sums);
  invariant(sum, 'A sum has one row.');
  return {
    fees: z.array(feeRow).parse(found),
    ...sum,
    earnedCents: sum.owedCents + sum.paidCents,
  };
}
