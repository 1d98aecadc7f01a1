import { fc, test as prop } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import {
  commissionMoney,
  commissionTaxCents,
  decideAgreement,
  decidePayment,
  depositCents,
} from '@/lib/commissions/rules/money/sums';

const half = { as: 'percent', percent: '50' } as const;

describe('a deposit', () => {
  test.each([
    ['half of an even whole', half, 10_000n, 5_000n],
    ['half of an odd whole is rounded up', half, 10_001n, 5_001n],
    ['a third', { as: 'percent', percent: '33.3333' } as const, 10_000n, 3_334n],
    ['the whole of it', { as: 'percent', percent: '100' } as const, 10_001n, 10_001n],
    ['nothing', { as: 'percent', percent: '0' } as const, 10_001n, 0n],
    ['an amount stays what it is', { as: 'amount', amountCents: 777n } as const, 10_001n, 777n],
  ])('%s', (_label, deposit, totalCents, expected) => {
    expect(depositCents(deposit, totalCents)).toBe(expected);
  });
});

describe('an agreement is refused, in this order, for', () => {
  test('a deposit above the whole, even when more was paid', () => {
    const agreed = { priceCents: 1_000n, deposit: { as: 'amount', amountCents: 1_081n } as const };
    expect(decideAgreement(agreed, 80n, 5_000n)).toEqual({
      ok: false,
      refusal: { code: 'deposit_above_total', depositCents: 1_081n, totalCents: 1_080n },
    });
  });
  test('a whole below what came in already', () => {
    expect(decideAgreement({ priceCents: 1_000n, deposit: half }, 80n, 1_081n)).toEqual({
      ok: false,
      refusal: { code: 'agreed_below_paid', totalCents: 1_080n, paidCents: 1_081n },
    });
  });
  test('nothing else', () => {
    const agreed = { priceCents: 1_000n, deposit: half };
    expect(decideAgreement(agreed, 80n, 1_080n)).toEqual({ ok: true, value: 540n });
  });
});

test('a payment of all that is owed is taken, a cent more only to be kept for them', () => {
  expect(decidePayment(10_000n, 10_001n, true).ok).toBe(true);
  expect(decidePayment(10_000n, 10_000n, false).ok).toBe(true);
  expect(decidePayment(10_000n, 10_001n, false)).toEqual({
    ok: false,
    refusal: { code: 'more_than_owed', owedCents: 10_000n },
  });
});

test('tax is worked out on the whole price, by all authorities together', () => {
  const parts = [
    { name: 'State', ratePercent: '6.5' },
    { name: 'County', ratePercent: '1.75' },
  ];
  expect(commissionTaxCents(1_000_000n, parts, 'invoice')).toBe(82_500n);
  expect(commissionTaxCents(1_000_000n, [], 'invoice')).toBe(0n);
});

const cents = fc.bigInt({ min: 0n, max: 10_000_000n });

prop.prop([cents, cents, cents, cents])(
  'what is owed and what was paid never fall short of the whole, and nothing is below zero',
  (priceCents, taxCents, paidCents, deposit) => {
    const money = commissionMoney({
      ...{ priceCents, taxCents, paidCents, depositCents: deposit },
      ...{ invoicedCents: 0n, fallenDueCents: deposit },
    });
    expect(money.owedCents - money.overpaidCents).toBe(money.totalCents - paidCents);
    expect(money.totalCents).toBe(priceCents + taxCents);
    expect(money.owedCents >= 0n && money.depositLeftCents >= 0n).toBe(true);
    expect(money.owedCents + paidCents >= money.totalCents).toBe(true);
  },
);
