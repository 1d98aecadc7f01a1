import type { TenderKind } from '@/lib/ledger/rules';
import { splitCents, sumCents, type Cents } from '@/lib/money/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { ReturnRefusal } from './refusals';
import { tenderLeft, type SoldTender } from './sold';

/**
 * How the money goes back: as it was paid, as a store credit with a number of its own, or, for a
 * sale that is struck out, as if it had not been: even a deposit lies where it lay before.
 */
export type RefundWay = 'same_way' | 'store_credit' | 'undone';

/** Money given back against one tender of the sale. */
export type DecidedRefund = { tender: SoldTender; kind: TenderKind; amountCents: Cents };

/**
 * How much of a tender may go back in that way. What is still owed goes back by owing less, and
 * money from before goes onto a store credit: the paper that it was paid for has ended.
 */
export function mayGoBack(tender: SoldTender, how: RefundWay): Cents {
  const left = tenderLeft(tender);
  const isFromBefore = tender.kind === 'deposit' || tender.kind === 'layaway';
  if (isFromBefore && how === 'same_way') return 0n;
  if (tender.kind !== 'on_account') return left;
  const owed = left - tender.settledCents;
  if (how === 'store_credit') return least(left, tender.settledCents);
  return owed > 0n ? owed : 0n;
}

/**
 * Shares what is given back among the tenders of the sale.
 *
 * What is still owed is always taken off first: nobody gets credit for what they have not paid.
 *
 * @param asked amounts by tender id as a person typed them; empty shares them out by what is left
 * @returns the refunds, together the total; refuses, in this order: more against a tender than was
 *   paid that way and is not back, amounts that do not add up, a way that cannot take it all
 * @example 93.00 of 108.00 paid half in cash and half by card: 46.50 each
 */
export function shareOfTenders(
  tenders: readonly SoldTender[],
  { totalCents, how, asked }: RefundAsked,
): Result<DecidedRefund[], ReturnRefusal> {
  if (asked.size > 0) return asTyped(tenders, { totalCents, how, asked });
  const owed = tenders.find((tender) => tender.kind === 'on_account');
  const owedCents = owed ? least(mayGoBack(owed, 'same_way'), totalCents) : 0n;
  const rest = tenders.map((tender) =>
    tender === owed && how !== 'store_credit' ? 0n : mayGoBack(tender, how),
  );
  const restCents = totalCents - owedCents;
  if (sumCents(rest) < restCents) return refuse({ code: 'only_as_credit' });
  const shares = restCents === 0n ? rest.map(() => 0n) : splitCents(restCents, rest);
  const refunds = tenders.map((tender, at) => refundOf(tender, how, shares[at] ?? 0n));
  const lessOwed: DecidedRefund[] =
    owed && owedCents > 0n ? [{ tender: owed, kind: 'on_account', amountCents: owedCents }] : [];
  return ok([...lessOwed, ...refunds.filter((refund) => refund.amountCents > 0n)]);
}

/** What is asked to be given back, and how. */
export type RefundAsked = {
  totalCents: Cents;
  how: RefundWay;
  asked: ReadonlyMap<string, Cents>;
};

function asTyped(
  tenders: readonly SoldTender[],
  { totalCents, how, asked }: RefundAsked,
): Result<DecidedRefund[], ReturnRefusal> {
  const refunds = tenders
    .map((tender) => refundOf(tender, how, asked.get(tender.id) ?? 0n))
    .filter((refund) => refund.amountCents > 0n);
  for (const { tender, amountCents } of refunds) {
    const leftCents = mayGoBack(tender, how);
    if (amountCents > leftCents) {
      const facts = { tenderId: tender.id, leftCents, givenCents: amountCents };
      return refuse({ code: 'refund_above_paid', ...facts });
    }
  }
  const givenCents = sumCents(refunds.map((refund) => refund.amountCents));
  if (givenCents === totalCents) return ok(refunds);
  return refuse({ code: 'refund_does_not_add_up', totalCents, givenCents });
}

function refundOf(tender: SoldTender, how: RefundWay, amountCents: Cents): DecidedRefund {
  return { tender, kind: how === 'store_credit' ? how : tender.kind, amountCents };
}

function least(one: Cents, other: Cents): Cents {
  return one < other ? one : other;
}
