import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import {
  moneyLinesForCollector,
  type InstalmentTold,
  type PaymentTold,
  type RefundTold,
} from '@/lib/commissions/reads/payments';
import type { Cents } from '@/lib/money/rules';
import type { PlanEvent } from '@/lib/commissions/rules/facts';
import type { Day } from '@/lib/dates/rules';
import { readMoneyPaper, type MoneyPaper } from './paper';

/** What was asked for as its paper tells it, and how it stands on a day; in cents. */
export type InvoiceTold = MoneyPaper & {
  ask: InstalmentTold;
  /** What makes it due by the plan; null for anything else. */
  event: PlanEvent | null;
  payments: readonly PaymentTold[];
  refunds: readonly RefundTold[];
  /** What of it is still to be paid: never more than is owed in all. */
  leftCents: Cents;
  today: Day;
};

/**
 * What was asked for under a number, with what is agreed, what came in and what is due of it now; for
 * those who see money.
 *
 * @returns null for a number that is none of this commission
 */
export async function findInvoice(
  actor: Actor,
  commissionId: string,
  { number, today }: { number: number; today: Day },
): Promise<InvoiceTold | null> {
  assertAllowed(actor, 'commissions.see_money');
  return invoiceForCollector(commissionId, { number, today });
}

/** {@link findInvoice} for the collector's own page: whoever opened the link may see it. */
export async function invoiceForCollector(
  commissionId: string,
  { number, today }: { number: number; today: Day },
): Promise<InvoiceTold | null> {
  const { asked, payments, refunds } = await moneyLinesForCollector(commissionId);
  const ask = asked.find((each) => each.number === number);
  const paper = ask && (await readMoneyPaper(commissionId, today));
  if (!paper) return null;
  const { plan, facts, owedCents } = paper;
  const step = plan.find(({ position }) => position === ask.stepPosition);
  const asks = ask.withdrawnWhy === null && facts.ending === null;
  const leftCents = asks ? lesser(ask.amountCents - ask.paidCents, owedCents) : 0n;
  return { ...paper, ask, event: step?.event ?? null, payments, refunds, leftCents, today };
}

function lesser(one: Cents, other: Cents): Cents {
  return one < other ? one : other;
}
