import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import type { Day, Month } from '@/lib/dates/rules';
import { monthRange } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { accounts } from '../rules';

const commissionRow = z.object({
  number: z.number(),
  title: z.string(),
  collector: z.string(),
  depositCents: z.bigint(),
  owedCents: z.bigint(),
});

/** What is held for a commission, and what its collector owes, in cents above zero. */
export type CommissionMoney = z.infer<typeof commissionRow>;

/** Every commission for which money is held or owed at the end of a day, by its number. */
export async function listCommissionMoney(actor: Actor, on: Day): Promise<CommissionMoney[]> {
  assertAllowed(actor, 'books.see');
  const rows = await db().$queryRaw`
    SELECT commission.number, commission.title, collector.name AS collector,
      coalesce(-sum(posting."amountCents")
        FILTER (WHERE posting."accountCode" = ${accounts.deposits}), 0)::bigint AS "depositCents",
      coalesce(sum(posting."amountCents")
        FILTER (WHERE posting."accountCode" = ${accounts.owedByCollectors}), 0)::bigint
        AS "owedCents"
    FROM "Posting" posting
    JOIN "JournalEntry" entry ON entry.id = posting."entryId" AND entry."on" <= ${on}::date
    JOIN "Commission" commission ON commission.id = posting."commissionId"
    JOIN "Collector" collector ON collector.id = commission."collectorId"
    WHERE posting."accountCode" IN (${accounts.deposits}, ${accounts.owedByCollectors})
    GROUP BY commission.id, collector.id
    HAVING (
      sum(posting."amountCents") FILTER (WHERE posting."accountCode" = ${accounts.deposits}) <> 0
      OR sum(posting."amountCents")
        FILTER (WHERE posting."accountCode" = ${accounts.owedByCollectors}) <> 0)
    ORDER BY commission.number`;
  return z.array(commissionRow).parse(rows);
}

const taxRow = z.object({
  authority: z.string(),
  monthCents: z.bigint(),
  heldCents: z.bigint(),
});

/** What is held for one tax authority: what the month added, and all there is, in cents. */
export type TaxHeld = z.infer<typeof taxRow>;

/** The sales tax held for each authority at the end of a month, by its name. */
export async function listTaxHeld(actor: Actor, month: Month): Promise<TaxHeld[]> {
  assertAllowed(actor, 'books.see');
  const { fromOn, untilOn } = monthRange(month);
  const rows = await db().$queryRaw`
    SELECT coalesce(posting.authority, 'not named') AS authority,
      coalesce(-sum(posting."amountCents") FILTER (WHERE entry."on" >= ${fromOn}::date), 0)::bigint
        AS "monthCents",
      -sum(posting."amountCents")::bigint AS "heldCents"
    FROM "Posting" posting
    JOIN "JournalEntry" entry ON entry.id = posting."entryId" AND entry."on" < ${untilOn}::date
    WHERE posting."accountCode" = ${accounts.taxHeld}
    GROUP BY 1 ORDER BY 1`;
  return z.array(taxRow).parse(rows);
}
