import { isFinished, hasBegun } from '@/lib/commissions/rules/course/standing';
import type { CommissionFacts } from '@/lib/commissions/rules/facts';
import { accounts, type PostingLine } from '@/lib/ledger/rules';
import { shareCents, type Cents } from '@/lib/money/rules';

/** How far the work was when it ended. */
export type EndStage = 'before_making' | 'making' | 'finished';

/** The stages as they are said. */
export const endStageWords: Record<EndStage, string> = {
  before_making: 'before the making',
  making: 'while it was made',
  finished: 'when it was finished',
};

/** What the agreement says stays when it ends early. */
export type CancelTerms = {
  readonly designFeeCents: Cents;
  readonly cancelMakingPercent: string;
  readonly cancelFinishedPercent: string;
};

/** What an early end comes to, in cents. */
export type EndSettled = {
  readonly stage: EndStage;
  readonly feeCents: Cents;
  /** The part of the fee that was paid already. */
  readonly keptCents: Cents;
  /** What was paid beyond it and goes back. */
  readonly backCents: Cents;
  /** What of the fee was not paid. */
  readonly stillOwedCents: Cents;
};

/** How far the work is. */
export function endStageOf(facts: CommissionFacts): EndStage {
  if (!hasBegun(facts)) return 'before_making';
  return facts.jobs.length > 0 && facts.jobs.every(isFinished) ? 'finished' : 'making';
}

/**
 * What stays and what goes back when a commission ends early: before the making the design fee, after
 * it the agreed share of the price with its changes, never less than the design fee.
 *
 * @param priceCents before tax, with every signed change; nothing before it is agreed
 * @param ownFeeCents the owner's own figure; null for the agreement's
 * @source common practice: the agreement's own clause decides, and an adviser knows the law
 * @example 10,000.00 while it is made at 50 %, 5,412.50 paid: 5,000.00 stay, 412.50 go back
 */
export function settleEnd(
  facts: CommissionFacts,
  terms: CancelTerms | null,
  paidCents: Cents,
  ownFeeCents: Cents | null,
): EndSettled {
  const stage = endStageOf(facts);
  const priceCents = facts.agreement?.priceCents ?? 0n;
  const feeCents = ownFeeCents ?? feeByAgreement(stage, terms, priceCents);
  const keptCents = paidCents < feeCents ? paidCents : feeCents;
  return {
    ...{ stage, feeCents, keptCents },
    backCents: paidCents - keptCents,
    stillOwedCents: feeCents - keptCents,
  };
}

/**
 * What stays by the agreement when it ends at a stage, in cents: see {@link settleEnd}.
 *
 * @param priceCents before tax, with every signed change
 * @example a share below the design fee: the design fee
 */
export function feeByAgreement(
  stage: EndStage,
  terms: CancelTerms | null,
  priceCents: Cents,
): Cents {
  if (terms === null) return 0n;
  const { designFeeCents, cancelMakingPercent, cancelFinishedPercent } = terms;
  if (stage === 'before_making') return designFeeCents;
  const percent = stage === 'making' ? cancelMakingPercent : cancelFinishedPercent;
  const share = shareCents(priceCents, percent, 'half-up');
  return share > designFeeCents ? share : designFeeCents;
}

/**
 * The postings of an early end: what stays becomes income of its own kind, never a sale.
 *
 * @returns empty when nothing stays
 * @source OpenStax, Principles of Accounting, volume 1, section 12.2: a deposit is a debt until then
 * @example 5,000.00 kept: deposits +5,000.00, deposits kept −5,000.00
 */
export function endEntry(
  { keptCents, stillOwedCents, feeCents }: EndSettled,
  { commissionId, collectorId }: { commissionId: string; collectorId: string },
): PostingLine[] {
  const lines: PostingLine[] = [
    { account: accounts.deposits, amountCents: keptCents, commissionId },
    { account: accounts.owedByCollectors, amountCents: stillOwedCents, commissionId, collectorId },
    { account: accounts.depositsKept, amountCents: -feeCents },
  ];
  return lines.filter((line) => line.amountCents !== 0n);
}

/** The postings of money that goes back of a deposit: the debt is less, and so is the money. */
export function refundEntry(refund: {
  moneyAccount: PostingLine['account'];
  amountCents: Cents;
  commissionId: string;
}): PostingLine[] {
  const { moneyAccount, amountCents, commissionId } = refund;
  return [
    { account: accounts.deposits, amountCents, commissionId },
    { account: moneyAccount, amountCents: -amountCents },
  ];
}
