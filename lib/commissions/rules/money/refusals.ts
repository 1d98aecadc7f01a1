import type { Sentences } from '@/lib/commissions/rules/refusal-sentences';
import { formatDay, type Day } from '@/lib/dates/rules';
import { formatCents, type Cents } from '@/lib/money/rules';

/** Why something about the money of a commission was not done, and the facts that explain each. */
export type MoneyRefusalFacts = {
  looks_like_twice: { readonly number: number; readonly receivedOn: Day };
  unknown_step: unknown;
  step_asked_already: { readonly name: string };
  unknown_ask: unknown;
  ask_is_paid: { readonly paidCents: Cents };
  unknown_payment: unknown;
  refund_above_payment: { readonly leftCents: Cents };
  refund_needs_deposit: { readonly heldCents: Cents };
  fee_above_price: { readonly priceCents: Cents };
  end_before_payment: { readonly movedOn: Day };
  pieces_need_a_fate: unknown;
};

/** Each of them in full sentences. */
export const moneySentences: Sentences<MoneyRefusalFacts> = {
  looks_like_twice: ({ number, receivedOn }) =>
    `Payment ${number} of ${formatDay(receivedOn, 'short')} has the same amount and was paid the same way. If this is another one, tick that below.`,
  unknown_step: () => 'There is no such step in the plan of payments.',
  step_asked_already: ({ name }) => `“${name}” was asked for already.`,
  unknown_ask: () => 'That was not asked for on this commission.',
  ask_is_paid: ({ paidCents }) =>
    `${formatCents(paidCents)} came in for it already, so it cannot be withdrawn.`,
  unknown_payment: () => 'That payment is not one of this commission.',
  refund_above_payment: ({ leftCents }) =>
    leftCents > 0n
      ? `No more than ${formatCents(leftCents)} of this payment can still go back.`
      : 'All of this payment went back already.',
  refund_needs_deposit: ({ heldCents }) =>
    heldCents > 0n
      ? `Only ${formatCents(heldCents)} is still held for them; the rest is earned.`
      : 'Nothing is held for them any more; what was paid is earned.',
  fee_above_price: ({ priceCents }) =>
    `What stays cannot be more than the price, ${formatCents(priceCents)}.`,
  end_before_payment: ({ movedOn }) =>
    `Money came in or went back on ${formatDay(movedOn, 'short')}; the end cannot be older than that.`,
  pieces_need_a_fate: () =>
    'Pieces were begun for it. Write what becomes of them: kept for stock, given to them, or not worth keeping.',
};
