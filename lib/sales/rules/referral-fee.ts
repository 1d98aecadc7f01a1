import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { formatDay, type Day } from '@/lib/dates/rules';
import { accountOfMoney, accounts, type PostingLine } from '@/lib/ledger/rules';
import type { Cents } from '@/lib/money/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** A referral fee as paying it looks at it. */
export type FeeOwed = Readonly<{
  id: string;
  receipt: number;
  collectorId: string;
  /** What was earned, less what was taken back since, in cents. */
  amountCents: Cents;
  earnedOn: Day;
  paidOn: Day | null;
}>;

/** Why referral fees were not paid. */
export type FeeRefusal =
  | { code: 'unknown_fee' }
  | { code: 'fee_paid_already'; receipt: number; paidOn: Day }
  | { code: 'fee_taken_back'; receipt: number }
  | { code: 'paid_before_earned'; receipt: number; earnedOn: Day }
  | { code: 'paid_in_the_future'; today: Day };

/** What a command may answer besides. */
export type FeeNo = FeeRefusal | NotAllowed | { code: 'key_used_for_something_else' };

/**
 * Whether these fees can be paid to a designer on a day.
 *
 * @param fees those that were found of the ones asked for
 * @returns refuses, in this order: a day that has not come, a fee that is not there or is somebody
 *   else's, one that was paid, one that was taken back, one that was earned later
 */
export function decidePayment(
  fees: readonly FeeOwed[],
  asked: { collectorId: string; feeIds: readonly string[]; paidOn: Day; today: Day },
): Result<readonly FeeOwed[], FeeRefusal> {
  const { collectorId, feeIds, paidOn, today } = asked;
  if (paidOn > today) return refuse({ code: 'paid_in_the_future', today });
  const theirs = fees.filter((fee) => fee.collectorId === collectorId);
  if (theirs.length < new Set(feeIds).size) return refuse({ code: 'unknown_fee' });
  for (const { receipt, paidOn: before } of theirs) {
    if (before !== null) return refuse({ code: 'fee_paid_already', receipt, paidOn: before });
  }
  const gone = theirs.find((fee) => fee.amountCents <= 0n);
  if (gone) return refuse({ code: 'fee_taken_back', receipt: gone.receipt });
  const later = theirs.find((fee) => fee.earnedOn > paidOn);
  if (later) {
    return refuse({
      ...{ code: 'paid_before_earned', receipt: later.receipt, earnedOn: later.earnedOn },
    });
  }
  return ok(theirs);
}

/** The postings of paying a fee: less is owed to the designer, and less money is here. */
export function feePaidEntry(
  fee: Pick<FeeOwed, 'amountCents' | 'collectorId'>,
  how: 'cheque' | 'bank_transfer' | 'cash',
): PostingLine[] {
  const { amountCents, collectorId } = fee;
  // A cheque of our own is drawn on the bank; the account of cheques holds those that came in.
  const from = how === 'cheque' ? accounts.bank : accountOfMoney[how];
  return [
    { account: accounts.referralFeesOwed, amountCents, collectorId },
    { account: from, amountCents: -amountCents },
  ];
}

/** Says in a full sentence why referral fees were not paid. */
export function feeRefusalMessage(refusal: FeeNo): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This form was sent before with something else in it. Open the page again.';
    case 'unknown_fee':
      return 'One of these fees is not owed to this designer. Look at the list again.';
    case 'fee_paid_already':
      return `The fee for receipt ${refusal.receipt} was paid on ${formatDay(refusal.paidOn, 'short')}.`;
    case 'fee_taken_back':
      return `What was sold on receipt ${refusal.receipt} came back, and its fee with it.`;
    case 'paid_before_earned':
      return `The fee for receipt ${refusal.receipt} was earned on ${formatDay(refusal.earnedOn, 'short')}; it cannot be paid before.`;
    case 'paid_in_the_future':
      return `Today is ${formatDay(refusal.today, 'short')}. Write down a payment once it is made.`;
  }
}
