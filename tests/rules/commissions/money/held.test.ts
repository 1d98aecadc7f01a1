import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { CommissionFacts } from '@/lib/commissions/rules/facts';
import { earnedCents, heldCents, receivableCents } from '@/lib/commissions/rules/money/held';
import { moneyNow } from '@/lib/commissions/rules/money/now';
import { accounts, entryBalances, receivedEntry } from '@/lib/ledger/rules';
import { agreement, paid, someFacts } from '../some-facts';

const day = '2026-05-13';
const handedOver = { handOver: { handedOn: day, totalCents: 1_080_000n } } as const;
const ended = { ending: { endedOn: day, why: 'sold', feeCents: 500_000n } } as const;

describe('what is held for them, what they owe, and what is earned', () => {
  test.each<[string, Partial<CommissionFacts>, bigint, [bigint, bigint, bigint]]>([
    ['nothing is earned or owed before the end', {}, 540_000n, [0n, 540_000n, 0n]],
    ['at the hand-over all of it', handedOver, 1_080_000n, [1_080_000n, 0n, 0n]],
    ['paid less: the rest is owed', handedOver, 540_000n, [1_080_000n, 0n, 540_000n]],
    ['paid more: the rest is held', handedOver, 1_080_001n, [1_080_000n, 1n, 0n]],
    ['an early end: what stays', ended, 540_000n, [500_000n, 40_000n, 0n]],
    ['an early end that is not covered', ended, 400_000n, [500_000n, 0n, 100_000n]],
  ])('%s', (_label, over, cents, [earned, held, owed]) => {
    const facts = someFacts({ agreement, payments: [paid(cents, day)], ...over });
    expect([earnedCents(facts), heldCents(facts), receivableCents(facts)]).toEqual([
      ...[earned, held, owed],
    ]);
  });
  test('what was asked for is no receivable before it is handed over', () => {
    const asked = [{ amountCents: 540_000n, askedOn: day, dueOn: day, stepPosition: 1 }] as const;
    expect(receivableCents(someFacts({ agreement, asked }))).toBe(0n);
  });
  test('what went back is held no more', () => {
    const refunds = [{ amountCents: 40_000n, refundedOn: day }] as const;
    const payments = [paid(540_000n, day)];
    expect(heldCents(someFacts({ agreement, payments, refunds, ...ended }))).toBe(0n);
  });
});

describe('money that comes in', () => {
  const payment = { kind: 'cash', amountCents: 10_000n, commissionId: 'c' } as const;
  const moneyIn = { account: accounts.cashDrawer, amountCents: 10_000n };
  test.each<[string, bigint, [string, bigint][]]>([
    ['is a deposit while nothing is owed', 0n, [[accounts.deposits, -10_000n]]],
    ['is a deposit while the books owe', -5n, [[accounts.deposits, -10_000n]]],
    ['settles what is owed', 10_000n, [[accounts.owedByCollectors, -10_000n]]],
    ['settles a part of it', 20_000n, [[accounts.owedByCollectors, -10_000n]]],
    [
      'settles what is owed, and the rest is a deposit',
      6_000n,
      [
        [accounts.owedByCollectors, -6_000n],
        [accounts.deposits, -4_000n],
      ],
    ],
  ])('%s', (_label, owedCents, answers) => {
    expect(receivedEntry(payment, owedCents)).toEqual([
      moneyIn,
      ...answers.map(([account, amountCents]) => ({ account, amountCents, commissionId: 'c' })),
    ]);
  });
  test('any amount against any debt balances', () => {
    const cents = fc.bigInt({ min: 1n, max: 10n ** 9n });
    fc.assert(
      fc.property(cents, fc.bigInt({ min: 0n, max: 10n ** 9n }), (amountCents, owedCents) => {
        const entry = receivedEntry({ ...payment, amountCents }, owedCents);
        expect(entryBalances(entry)).toBe(true);
      }),
    );
  });
});

describe('the page', () => {
  const sums = { priceCents: 1_000_000n, taxCents: 80_000n, depositCents: 500_000n };
  test('tells of an early end what stays, all of it due, and no plan', () => {
    const facts = someFacts({ agreement, payments: [paid(400_000n, day)], ...ended });
    expect(moneyNow(facts, sums)).toEqual({
      plan: [],
      money: {
        ...{ priceCents: 500_000n, taxCents: 0n, totalCents: 500_000n, depositCents: 0n },
        ...{ invoicedCents: 0n, paidCents: 400_000n, dueCents: 100_000n, owedCents: 100_000n },
        ...{ overpaidCents: 0n, depositLeftCents: 0n },
      },
    });
  });
  test('never says that more is due than is owed, and agrees with what is held and owed', () => {
    const cents = fc.bigInt({ min: 0n, max: 2_000_000n });
    const end = fc.constantFrom<Partial<CommissionFacts>>({}, handedOver, ended);
    fc.assert(
      fc.property(fc.array(cents, { maxLength: 4 }), end, (payments, over) => {
        const facts = someFacts({
          ...{ agreement, ...over },
          payments: payments.map((each) => paid(each, day)),
        });
        const { money } = moneyNow(facts, sums);
        expect(money.dueCents <= money.owedCents).toBe(true);
        if (facts.handOver || facts.ending) {
          expect(money.overpaidCents).toBe(heldCents(facts));
          expect(money.owedCents).toBe(receivableCents(facts));
        } else {
          expect([heldCents(facts), receivableCents(facts)]).toEqual([money.paidCents, 0n]);
        }
      }),
    );
  });
});
