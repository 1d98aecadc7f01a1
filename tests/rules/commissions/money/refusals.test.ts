import { describe, expect, test } from 'vitest';
import type { MoneyRefusalFacts } from '@/lib/commissions/rules/money/refusals';
import { commissionRefusalMessage, type CommissionRefusal } from '@/lib/commissions/rules/refusals';

const on = '2026-05-12';

/** One refusal of each kind: a new one without a row does not compile. */
const refusals: { [Code in keyof MoneyRefusalFacts]: CommissionRefusal<Code> } = {
  looks_like_twice: { code: 'looks_like_twice', number: 12, receivedOn: on },
  unknown_step: { code: 'unknown_step' },
  step_asked_already: { code: 'step_asked_already', name: 'Deposit' },
  unknown_ask: { code: 'unknown_ask' },
  ask_is_paid: { code: 'ask_is_paid', paidCents: 10_000n },
  unknown_payment: { code: 'unknown_payment' },
  refund_above_payment: { code: 'refund_above_payment', leftCents: 10_000n },
  refund_needs_deposit: { code: 'refund_needs_deposit', heldCents: 10_000n },
  fee_above_price: { code: 'fee_above_price', priceCents: 1_000_000n },
  end_before_payment: { code: 'end_before_payment', movedOn: on },
  pieces_need_a_fate: { code: 'pieces_need_a_fate' },
};

describe('every refusal about money is told in full sentences', () => {
  test.each(Object.entries(refusals))('%s', (code, refusal) => {
    const sentence = commissionRefusalMessage(refusal);
    expect(sentence).toMatch(/^[A-Z$“].*\.$/);
    expect(sentence).not.toContain(code);
    expect(sentence).not.toMatch(/undefined|error|invalid|!/i);
  });
  test('and says so when there is nothing left', () => {
    const none = commissionRefusalMessage({ code: 'refund_above_payment', leftCents: 0n });
    expect(none).toBe('All of this payment went back already.');
    expect(commissionRefusalMessage({ code: 'refund_needs_deposit', heldCents: 0n })).toBe(
      'Nothing is held for them any more; what was paid is earned.',
    );
  });
});
