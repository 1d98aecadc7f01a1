import { describe, expect, test } from 'vitest';
import {
  decidePayment,
  feePaidEntry,
  feeRefusalMessage,
  type FeeNo,
  type FeeOwed,
} from '@/lib/sales/rules/referral-fee';

const fee = (id: string, over: Partial<FeeOwed> = {}): FeeOwed => ({
  ...{ id, receipt: 12, collectorId: 'designer', amountCents: 7_200n },
  ...{ earnedOn: '2026-11-01', paidOn: null },
  ...over,
});
const asked: Parameters<typeof decidePayment>[1] = {
  ...{ collectorId: 'designer', feeIds: ['a'], paidOn: '2026-11-20', today: '2026-11-20' },
};

test('fees are paid together, on the day they were earned at the earliest', () => {
  const fees = [fee('a'), fee('b', { earnedOn: '2026-11-20' })];
  expect(decidePayment(fees, { ...asked, feeIds: ['a', 'b'] })).toEqual({ ok: true, value: fees });
});

describe('in this order are refused', () => {
  const paid = fee('a', { paidOn: '2026-11-10' });
  test.each([
    ['a day to come, of a fee nobody knows', [], { paidOn: '2026-11-21' }, 'paid_in_the_future'],
    ['a fee nobody knows', [], {}, 'unknown_fee'],
    ['somebody else’s, paid', [{ ...paid, collectorId: 'other' }], {}, 'unknown_fee'],
    ['one that is missing among others', [fee('a')], { feeIds: ['a', 'b'] }, 'unknown_fee'],
    [
      'one paid before, earned later',
      [{ ...paid, earnedOn: '2026-11-21' }],
      {},
      'fee_paid_already',
    ],
    [
      'one taken back, earned later',
      [fee('a', { amountCents: 0n, earnedOn: '2026-11-21' })],
      ...[{}, 'fee_taken_back'],
    ],
    ['one earned later', [fee('a', { earnedOn: '2026-11-21' })], {}, 'paid_before_earned'],
  ] as const)('%s', (_label, fees, over, code) => {
    expect(decidePayment(fees, { ...asked, ...over })).toMatchObject({ refusal: { code } });
  });
});

test('the same fee twice in one form is one fee', () => {
  expect(decidePayment([fee('a')], { ...asked, feeIds: ['a', 'a'] }).ok).toBe(true);
});

test.each([
  ['cheque', '1030'],
  ['bank_transfer', '1030'],
  ['cash', '1000'],
] as const)('by %s the money leaves account %s', (how, account) => {
  expect(feePaidEntry(fee('a'), how)).toEqual([
    { account: '2300', amountCents: 7_200n, collectorId: 'designer' },
    { account, amountCents: -7_200n },
  ]);
});

const refusals: Record<FeeNo['code'], FeeNo> = {
  not_allowed: { code: 'not_allowed', permission: 'trade.keep' },
  key_used_for_something_else: { code: 'key_used_for_something_else' },
  unknown_fee: { code: 'unknown_fee' },
  fee_paid_already: { code: 'fee_paid_already', receipt: 12, paidOn: '2026-11-10' },
  fee_taken_back: { code: 'fee_taken_back', receipt: 12 },
  paid_before_earned: { code: 'paid_before_earned', receipt: 12, earnedOn: '2026-11-10' },
  paid_in_the_future: { code: 'paid_in_the_future', today: '2026-11-10' },
};
test.each(Object.values(refusals))('$code is told in a full sentence', (refusal) => {
  expect(feeRefusalMessage(refusal)).toMatch(/^[A-Z].*\.$/);
});
