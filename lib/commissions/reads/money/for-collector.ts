import 'server-only';
import { readMoneyPaper, type PriceTold } from '@/lib/commissions/reads/money/paper';
import {
  moneyLinesForCollector,
  type InstalmentTold,
  type PaymentTold,
  type RefundTold,
} from '@/lib/commissions/reads/payments';
import { moneyNow, type MoneyNow } from '@/lib/commissions/rules/money/now';
import type { Day } from '@/lib/dates/rules';

/** What was asked for, as its collector sees it. */
export type AskedForCollector = Pick<
  InstalmentTold,
  'number' | 'name' | 'amountCents' | 'paidCents' | 'dueOn'
>;

/** What came in, as the collector sees it: nobody's name. */
export type PaidForCollector = Pick<PaymentTold, 'number' | 'amountCents' | 'kind' | 'receivedOn'>;

/** What went back, as the collector sees it. */
export type BackForCollector = Pick<RefundTold, 'number' | 'amountCents' | 'kind' | 'refundedOn'>;

/** The money of a commission as its collector sees it, in cents. */
export type MoneyForCollector = MoneyNow & {
  price: PriceTold;
  /** The day on which it ended early; null where it did not. */
  endedOn: Day | null;
  asked: readonly AskedForCollector[];
  payments: readonly PaidForCollector[];
  refunds: readonly BackForCollector[];
};

/**
 * What is agreed with its changes and tax, what was asked for, what is paid, due and still to come,
 * for the collector's own page: whoever opened the link of this commission may see it.
 *
 * @returns null before anything is agreed
 */
export async function moneyForCollector(
  commissionId: string,
  today: Day,
): Promise<MoneyForCollector | null> {
  const paper = await readMoneyPaper(commissionId, today);
  if (!paper) return null;
  const { asked, payments, refunds } = await moneyLinesForCollector(commissionId);
  const { price, facts } = paper;
  const depositCents = facts.agreement?.depositCents ?? 0n;
  const { priceCents, tax } = price;
  return {
    ...moneyNow(facts, { priceCents, taxCents: tax.taxCents, depositCents }),
    ...{ price, endedOn: facts.ending?.endedOn ?? null },
    asked: asked
      .filter((each) => each.withdrawnWhy === null)
      .map(({ number, name, amountCents, paidCents, dueOn }) => ({
        ...{ number, name, amountCents, paidCents, dueOn },
      })),
    refunds: refunds.map(({ number, amountCents, kind, refundedOn }) => ({
      ...{ number, amountCents, kind, refundedOn },
    })),
    payments: payments.map(({ number, amountCents, kind, receivedOn }) => ({
      ...{ number, amountCents, kind, receivedOn },
    })),
  };
}
