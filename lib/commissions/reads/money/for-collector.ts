import 'server-only';
import { readTotal } from '@/lib/commissions/reads/agreement/total';
import { factsOf } from '@/lib/commissions/reads/facts';
import { factsSelect } from '@/lib/commissions/reads/facts-select';
import { paidCents } from '@/lib/commissions/rules/facts';
import { planDue, type PlanStepDue } from '@/lib/commissions/rules/money/plan';
import type { Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';

/** The money of a commission as its collector sees it, in cents. */
export type MoneyForCollector = {
  totalCents: Cents;
  paidCents: Cents;
  leftCents: Cents;
  plan: readonly PlanStepDue[];
};

/**
 * The plan of payments and what is paid, for the collector's own page: whoever opened the link of
 * this commission may see it.
 *
 * @returns null before anything is agreed
 */
export async function moneyForCollector(
  commissionId: string,
  today: Day,
): Promise<MoneyForCollector | null> {
  const gallery = await getGallery();
  const row = await db().commission.findUnique({
    where: { id: commissionId },
    select: factsSelect,
  });
  if (!row) return null;
  const facts = factsOf(row, gallery.timeZone);
  const on = { on: today, roundBy: gallery.roundTaxBy };
  const total = facts.handOver?.totalCents ?? (await readTotal(db(), commissionId, on))?.totalCents;
  if (total === undefined) return null;
  const paid = paidCents(facts);
  return {
    totalCents: total,
    paidCents: paid,
    leftCents: total > paid ? total - paid : 0n,
    plan: planDue(facts, total),
  };
}
