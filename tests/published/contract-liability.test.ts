import { describe, expect, test } from 'vitest';
import type { AgreementFact, CommissionFacts } from '@/lib/commissions/rules/facts';
import { heldCents, receivableCents } from '@/lib/commissions/rules/money/held';
import { splitPlan, type PlanWish } from '@/lib/commissions/rules/proposal/plan';
import type { Day } from '@/lib/dates/rules';
import { accounts, receivedEntry, type PostingLine } from '@/lib/ledger/rules';
import { saleEntry } from '@/lib/ledger/rules/sale-entry';
import { formatCents, splitCents, sumCents } from '@/lib/money/rules';
import { decideCommissionSale } from '@/lib/sales/rules';
import { someFacts } from '@/tests/rules/commissions/some-facts';
import { aCommissionSale } from '@/tests/rules/sales/a-commission-sale';

// ASC 606-10-55-284 and 55-285, Example 38 (the same as IFRS 15, IE197 to IE200): a contract of
// 1 January over 1,000, to be paid on 31 January, paid on 1 March, transferred on 31 March. The facts
// and the two cases were read in the codification; the amounts of the entries follow from them, and
// that Case B shows a receivable of 1,000 against the liability on 31 January is from memory.
const thousand = 100_000n;
const asked = { amountCents: thousand, askedOn: '2029-01-01', dueOn: '2029-01-31' } as const;
const agreement: AgreementFact = {
  ...{ agreedOn: '2029-01-01', priceCents: thousand, originalCents: thousand },
  ...{ depositCents: thousand, promisedOn: '2029-03-31', clayFromOn: null },
};

/** The contract of the example as it is known on a day. */
function known(on: Day): CommissionFacts {
  const payments =
    on < '2029-03-01' ? [] : [{ amountCents: thousand, receivedOn: '2029-03-01' as const }];
  const handOver =
    on < '2029-03-31' ? null : { handedOn: '2029-03-31' as const, totalCents: thousand };
  return someFacts({ agreement, asked: [{ ...asked, stepPosition: null }], payments, handOver });
}

/** The entries of the example as our books write them, in their order. */
function entries(): PostingLine[][] {
  const payment = { kind: 'cash', amountCents: thousand, commissionId: 'c' } as const;
  const piece = aCommissionSale({ priceCents: thousand, paidCents: thousand }, false);
  const sale = decideCommissionSale(piece, [], 'invoice');
  return [
    receivedEntry(payment, receivableCents(known('2029-02-28'))),
    saleEntry({ ...sale, commissionId: 'c' }),
  ];
}

describe('a contract liability and a receivable, Example 38 of ASC 606 and IFRS 15', () => {
  test('Case A, cancellable: nothing on 31 January, a liability on 1 March, revenue on 31 March', () => {
    expect(entries()).toEqual([
      [
        { account: accounts.cashDrawer, amountCents: thousand },
        { account: accounts.deposits, amountCents: -thousand, commissionId: 'c' },
      ],
      [
        { account: accounts.deposits, amountCents: thousand, commissionId: 'c' },
        { account: accounts.commissionsHandedOver, amountCents: -thousand },
      ],
    ]);
  });
  test.each<[string, Day, [bigint, bigint]]>([
    ['when it falls due and is not paid, neither', '2029-01-31', [0n, 0n]],
    ['when it is paid, a liability', '2029-03-01', [thousand, 0n]],
    ['when it is transferred, neither', '2029-03-31', [0n, 0n]],
  ])('Case A: %s', (_label, on, expected) => {
    expect([heldCents(known(on)), receivableCents(known(on))]).toEqual(expected);
  });
  // Case B is not ours: a commission can be ended until it is handed over, for what the agreement
  // says, so that asking for money gives no unconditional right to it. From the transfer on both
  // cases stand the same.
  test('Case B, non-cancellable, would show a receivable on 31 January; our books never do', () => {
    const caseB = { receivable: thousand, liability: thousand };
    const ours = known('2029-01-31');
    expect([receivableCents(ours), heldCents(ours)]).not.toEqual([
      caseB.receivable,
      caseB.liability,
    ]);
    expect(caseB.receivable - caseB.liability).toBe(receivableCents(ours) - heldCents(ours));
  });
  // ASC 606-10-45-4: a right is a receivable when only time stands before it is due.
  test('transferred before it is paid, the right is unconditional and is a receivable', () => {
    const piece = aCommissionSale({ priceCents: thousand, paidCents: 0n }, false);
    const sale = decideCommissionSale(piece, [], 'invoice');
    expect(saleEntry({ ...sale, commissionId: 'c', collectorId: 'm' })).toEqual([
      {
        account: accounts.owedByCollectors,
        amountCents: thousand,
        commissionId: 'c',
        collectorId: 'm',
      },
      { account: accounts.commissionsHandedOver, amountCents: -thousand },
    ]);
    const later = { ...known('2029-03-31'), payments: [] };
    expect([receivableCents(later), heldCents(later)]).toEqual([thousand, 0n]);
  });
});

// OpenStax, Principles of Accounting, volume 1, section 12.2: 5,500 on 25 March for work of 10 June.
test('5,500 received on 25 March is owed until 10 June, and not a cent of it is earned before', () => {
  const received = { amountCents: 550_000n, receivedOn: '2026-03-25' } as const;
  const before = someFacts({ agreement, payments: [received] });
  expect([heldCents(before), receivableCents(before)]).toEqual([550_000n, 0n]);
  const handOver = { handedOn: '2026-06-10', totalCents: 550_000n } as const;
  expect(heldCents({ ...before, handOver })).toBe(0n);
});

// Largest remainder (Hamilton): OpenStax, Contemporary Mathematics, section 11.4; worked by hand.
describe('instalments lose no cent', () => {
  const share = (percent: string): PlanWish => ({
    ...{ name: 'Part', event: 'hung', percent, amountCents: null },
  });
  test.each<[string, string[], bigint, bigint[]]>([
    // 3333.633, 3333.633 and 3333.734: two cents are left, for .734 and the first .633.
    ['100.01 in thirds', ['33.333', '33.333', '33.334'], 10_001n, [3_334n, 3_333n, 3_334n]],
    // 61728.5, 30864.25 and 30864.25.
    ['1,234.57 by 50, 25, 25', ['50', '25', '25'], 123_457n, [61_729n, 30_864n, 30_864n]],
    // 37037.1 three times, and 12345.7.
    [
      '1,234.57 by 30, 30, 30, 10',
      ['30', '30', '30', '10'],
      123_457n,
      [37_037n, 37_037n, 37_037n, 12_346n],
    ],
    ['a cent by halves', ['50', '50'], 1n, [1n, 0n]],
  ])('%s', (_label, percents, totalCents, expected) => {
    const steps = splitPlan(percents.map(share), totalCents);
    expect(steps?.map((step) => step.amountCents)).toEqual(expected);
    expect(sumCents(expected)).toBe(totalCents);
  });
  test('100.01 in three equal parts: 33.34, 33.34 and 33.33', () => {
    expect(splitCents(10_001n, [1n, 1n, 1n])).toEqual([3_334n, 3_334n, 3_333n]);
  });
});

// ISO 4217: US dollar, Canadian dollar, euro and pound have two places, so a cent is the smallest.
test.each(['USD', 'CAD', 'EUR', 'GBP'] as const)(
  'a minor unit of %s is written with two places',
  (currency) => {
    expect(formatCents(1n, { currency })).toMatch(/0\.01$/);
    const digits = new Intl.NumberFormat('en', { style: 'currency', currency }).resolvedOptions();
    expect(digits.minimumFractionDigits).toBe(2);
  },
);
