import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { readTotal } from '@/lib/commissions/reads/agreement/total';
import { factsOf } from '@/lib/commissions/reads/facts';
import { factsSelect } from '@/lib/commissions/reads/facts-select';
import { owedBeforeHandOverCents, planDue } from '@/lib/commissions/rules/money/plan';
import type { Day } from '@/lib/dates/rules';
import type { Gallery } from '@/lib/platform/settings';

/**
 * Whether the agreement wants money that is not in before the piece goes. It says no amount: those
 * who go along need not know it.
 */
export async function isOwedBefore(
  from: Prisma.TransactionClient,
  commissionId: string,
  { gallery, today }: { gallery: Gallery; today: Day },
): Promise<boolean> {
  const row = await from.commission.findUnique({
    where: { id: commissionId },
    select: factsSelect,
  });
  const total = await readTotal(from, commissionId, { on: today, roundBy: gallery.roundTaxBy });
  if (!row || !total) return false;
  const facts = factsOf(row, gallery.timeZone);
  return owedBeforeHandOverCents(planDue(facts, total.totalCents)) > 0n;
}
