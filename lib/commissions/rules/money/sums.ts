import { shareCents, type Cents } from '@/lib/money/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { workOutTax, type RoundBy, type TaxPart } from '@/lib/tax/rules';

/** What a commission comes to, what came in, and what is left, in cents. */
export type CommissionMoney = {
  /** The original and its signed changes, before tax. */
  readonly priceCents: Cents;
  readonly taxCents: Cents;
  readonly totalCents: Cents;
  readonly depositCents: Cents;
  /** What was asked for and not withdrawn. */
  readonly invoicedCents: Cents;
  /** What came in, less what went back. */
  readonly paidCents: Cents;
  /** What has fallen due by the plan and is not paid; never below zero. */
  readonly dueCents: Cents;
  /** What is still to come of the whole; never below zero. */
  readonly owedCents: Cents;
  /** What was paid beyond the whole; never below zero. */
  readonly overpaidCents: Cents;
  /** What is still to come of the deposit; never below zero. */
  readonly depositLeftCents: Cents;
};

/** What the sum is made from; a hand-over fixes the tax, before it the rates of today are used. */
export type MoneyFacts = {
  readonly priceCents: Cents;
  readonly depositCents: Cents;
  readonly paidCents: Cents;
  readonly taxCents: Cents;
  readonly invoicedCents: Cents;
  /** What has fallen due by the plan, paid or not. */
  readonly fallenDueCents: Cents;
};

/** The tax on the whole price of a commission at the rates of one place and day, in cents. */
export function commissionTaxCents(
  priceCents: Cents,
  parts: readonly TaxPart[],
  roundBy: RoundBy,
): Cents {
  return workOutTax({ lines: [{ cents: priceCents, taxable: true }], parts, roundBy }).taxCents;
}

/**
 * What a commission comes to and what is left of it.
 *
 * @returns nothing owed, rather than less than nothing, when more was paid than it comes to; the
 *   surplus stands as overpaid
 * @source OpenStax, Principles of Accounting, volume 1, section 12.2: a deposit is owed until then
 * @example 10,000.00 and 825.00 of tax, 5,412.50 paid: 5,412.50 owed
 */
export function commissionMoney(facts: MoneyFacts): CommissionMoney {
  const { priceCents, taxCents, depositCents, paidCents, invoicedCents, fallenDueCents } = facts;
  const totalCents = priceCents + taxCents;
  return {
    ...{ priceCents, taxCents, depositCents, paidCents, invoicedCents, totalCents },
    dueCents: notBelowZero(fallenDueCents - paidCents),
    owedCents: notBelowZero(totalCents - paidCents),
    overpaidCents: notBelowZero(paidCents - totalCents),
    depositLeftCents: notBelowZero(depositCents - paidCents),
  };
}

/** A deposit as people agree on it: an amount, or a share of price and tax. */
export type DepositAgreed =
  | { readonly as: 'amount'; readonly amountCents: Cents }
  | { readonly as: 'percent'; readonly percent: string };

/**
 * A deposit in cents; a share is rounded up, so that it is never a cent short.
 *
 * @param totalCents price and tax
 * @source common practice: half down, rounded in the studio's favour
 * @example depositCents({ as: 'percent', percent: '50' }, 10_001n) // 5_001n
 */
export function depositCents(deposit: DepositAgreed, totalCents: Cents): Cents {
  if (deposit.as === 'amount') return deposit.amountCents;
  return shareCents(totalCents, deposit.percent, 'up');
}

/** Why an agreement cannot stand as it is. */
export type AgreementRefusal =
  | { code: 'deposit_above_total'; depositCents: Cents; totalCents: Cents }
  | { code: 'agreed_below_paid'; totalCents: Cents; paidCents: Cents };

/**
 * Decides what is agreed: the deposit in cents, within the whole, which covers what was paid.
 *
 * @returns the deposit; refuses, in this order: a deposit above the whole, a whole below what came
 *   in already
 */
export function decideAgreement(
  agreed: { readonly priceCents: Cents; readonly deposit: DepositAgreed },
  taxCents: Cents,
  paidCents: Cents,
): Result<Cents, AgreementRefusal> {
  const totalCents = agreed.priceCents + taxCents;
  const wanted = depositCents(agreed.deposit, totalCents);
  if (wanted > totalCents) {
    return refuse({ code: 'deposit_above_total', depositCents: wanted, totalCents });
  }
  if (paidCents > totalCents) return refuse({ code: 'agreed_below_paid', totalCents, paidCents });
  return ok(wanted);
}

/**
 * Decides whether a payment may be taken: more than is owed only when they say that the rest is kept
 * for them.
 *
 * @example decidePayment(10_000n, 10_001n, false) // refused with the 100.00 that are owed
 */
export function decidePayment(
  owedCents: Cents,
  amountCents: Cents,
  keepsRest: boolean,
): Result<Cents, { code: 'more_than_owed'; owedCents: Cents }> {
  if (amountCents > owedCents && !keepsRest) return refuse({ code: 'more_than_owed', owedCents });
  return ok(amountCents);
}

function notBelowZero(cents: Cents): Cents {
  return cents > 0n ? cents : 0n;
}
