import { paidCents, type CommissionFacts } from '@/lib/commissions/rules/facts';
import type { Cents } from '@/lib/money/rules';

/** What says how much of a collector's money is still theirs. */
export type HeldFacts = Pick<CommissionFacts, 'payments' | 'refunds' | 'handOver' | 'ending'>;

/**
 * What of the money that came in is earned, in cents: nothing before the end, the whole sum at the
 * hand-over, what stays at an early end.
 *
 * @source OpenStax, Principles of Accounting, volume 1, section 12.2: a deposit is a debt until then
 */
export function earnedCents({ handOver, ending }: HeldFacts): Cents {
  return handOver?.totalCents ?? ending?.feeCents ?? 0n;
}

/**
 * What is still held for the collector, in cents: what the books keep as their deposit. Never below
 * zero.
 *
 * @example 1,000.00 paid, 600.00 stay of an early end, 100.00 went back: 300.00
 */
export function heldCents(facts: HeldFacts): Cents {
  const cents = paidCents(facts) - earnedCents(facts);
  return cents > 0n ? cents : 0n;
}

/**
 * What the collector owes of what is earned, in cents: what the books keep as owed by them. Nothing
 * before the hand-over or an early end, whatever was asked for; never below zero.
 *
 * @source ASC 606-10-45-4: a receivable is a right that only time stands before
 * @example asked for 1,000.00, nothing paid, not handed over: nothing is owed yet
 */
export function receivableCents(facts: HeldFacts): Cents {
  const cents = earnedCents(facts) - paidCents(facts);
  return cents > 0n ? cents : 0n;
}
