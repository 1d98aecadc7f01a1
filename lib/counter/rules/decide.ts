import { ok, refuse, type Result } from '@/lib/platform/result';
import type { Cents } from '@/lib/money/rules';
import type { SaleDecision } from '@/lib/sales/rules';
import {
  settle,
  type CreditsKnown,
  type Tender,
  type TenderOffered,
} from '@/lib/sales/rules/tenders';
import type { CounterFacts } from './facts';
import { reckon, type Reckoned } from './reckon';
import type { CounterRefusal } from './refusals';
import type { SlipContent } from './slip';

/** How a slip is paid, and what was shown when the money was taken. */
export type SlipPaid = {
  tenders: readonly TenderOffered[];
  expectedTotalCents: Cents;
  credits: CreditsKnown;
};

/** A slip that was decided to be sold: the sale, and what the slip was reckoned to. */
export type SlipDecision = { sale: SaleDecision; reckoned: Reckoned };

/**
 * Decides whether a slip is sold, from what is true at this moment.
 *
 * @returns the sale; refuses, in this order: the first fault of {@link reckon}, a total other than
 *   the one shown, what {@link settle} refuses, a payment for a commission without any money
 * @example two people with the last piece: the second is refused `not_enough_pieces`
 */
export function decideSlip(
  content: SlipContent,
  facts: CounterFacts,
  paid: SlipPaid,
): Result<SlipDecision, CounterRefusal> {
  const reckoned = reckon(content, facts);
  const { priced, deposits, dueCents } = reckoned;
  const [fault] = reckoned.faults;
  if (fault) return refuse(fault.refusal);
  if (priced.totalCents !== paid.expectedTotalCents) {
    const { expectedTotalCents: shownCents } = paid;
    return refuse({ code: 'price_changed', shownCents, nowCents: priced.totalCents });
  }
  const tenders = settle(dueCents, paid.tenders, paid.credits);
  if (!tenders.ok) return tenders;
  const takesPayment = content.lines.some((line) => line.kind === 'instalment');
  if (takesPayment && !mostMoneyOf(tenders.value)) return refuse({ code: 'payment_needs_money' });
  return ok({ reckoned, sale: { ...priced, tenders: [...deposits, ...tenders.value] } });
}

/** A tender that is money, as a payment for a commission is kept under it. */
export type MoneyTender = Tender & { kind: 'cash' | 'card' | 'cheque' | 'bank_transfer' };

/** The largest of the tenders that are money; none when it was all paid before or by vouchers. */
export function mostMoneyOf(tenders: readonly Tender[]): MoneyTender | undefined {
  const isMoney = (tender: Tender): tender is MoneyTender =>
    ['cash', 'card', 'cheque', 'bank_transfer'].includes(tender.kind);
  return tenders.filter(isMoney).toSorted((a, b) => (a.amountCents < b.amountCents ? 1 : -1))[0];
}
