import { fc, test as property } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { countDrawerInput } from '@/lib/drawer/input';
import {
  countedCents,
  countEntry,
  decideCount,
  differenceWords,
  drawerRefusalMessage,
  notesAndCoins,
  type CountAsked,
} from '@/lib/drawer/rules';
import {
  addPurposes,
  moneyInSum,
  newMoneyOf,
  sheetLines,
  type SaleOfDay,
} from '@/lib/drawer/rules/day-sheet';
import { sumCents } from '@/lib/money/rules';

const nothingIn = addPurposes([]);

/** 213.40 in notes and coins. */
const pieces = { '10000': 1, '5000': 2, '1000': 1, '100': 3, '25': 1, '10': 1, '5': 1 };
const counted = 21_340n;

function asked(over: Partial<CountAsked> = {}): CountAsked {
  return { pieces, shownCents: counted, floatCents: 15_000n, reason: '', ...over };
}

describe('the count', () => {
  test('agrees: nothing is booked but what goes to the bank', () => {
    expect(countedCents(pieces)).toBe(counted);
    const decided = decideCount(counted, asked());
    expect(decided).toMatchObject({
      ok: true,
      value: { differenceCents: 0n, bankedCents: 6_340n },
    });
    if (decided.ok) {
      expect(decided.value.postings).toEqual([
        { account: '1000', amountCents: -6_340n },
        { account: '1030', amountCents: 6_340n },
      ]);
    }
  });

  test.each([
    ['drawer_moved', asked({ shownCents: 20_000n }), counted, /while you counted/],
    ['reason_missing', asked({ shownCents: 21_540n }), 21_540n, /Short by \$2\.00/],
    ['float_above_count', asked({ floatCents: 21_341n }), counted, /cannot stay/],
  ] as const)('%s', (code, want, expected, said) => {
    const decided = decideCount(expected, want);
    expect(decided).toMatchObject({ ok: false, refusal: { code } });
    if (!decided.ok) expect(drawerRefusalMessage(decided.refusal)).toMatch(said);
  });

  test('over and short go to an account of their own', () => {
    expect(countEntry(-200n, 0n)).toEqual([
      { account: '1000', amountCents: -200n },
      { account: '6900', amountCents: 200n },
    ]);
    expect([0n, -200n, 35n].map(differenceWords)).toEqual([
      'It agrees to the cent',
      'Short by $2.00',
      'Over by $0.35',
    ]);
    expect(countEntry(0n, 0n)).toEqual([]);
  });
});

// The worked sheet of a day's end is common practice; its figures here are our own.
test('the sheet adds up line by line to what should be there, and what is short is seen', () => {
  const lines = sheetLines({
    floatCents: 15_000n,
    cashIn: { ...nothingIn, goods: 38_000n, tax: 3_040n, deposits: 12_500n, vouchers: 5_000n },
    refundedCents: 7_020n,
    petty: [{ number: 12, what: 'string', amountCents: 1_165n }],
    expectedCents: 65_355n,
  });
  expect(lines.map(({ words, cents }) => [words, cents])).toEqual([
    ['Float at open', 15_000n],
    ['Cash sales, with their tax', 41_040n],
    ['Cash deposits', 12_500n],
    ['Cash for gift vouchers', 5_000n],
    ['Cash given back', -7_020n],
    ['Small cash, slip 12: string', -1_165n],
  ]);
  expect(sumCents(lines.map((line) => line.cents))).toBe(65_355n);
});

test('what no line explains is told as one', () => {
  const moved = { floatCents: 0n, cashIn: nothingIn, refundedCents: 0n, petty: [] };
  expect(sheetLines({ ...moved, expectedCents: 500n }).at(-1)).toEqual({
    words: 'Other entries of the books',
    cents: 500n,
  });
});

describe('what money was for', () => {
  const sale: SaleOfDay = {
    ...{ number: 1, taxCents: 800n },
    lines: [
      { kind: 'piece', netCents: 10_000n },
      { kind: 'shipping', netCents: 1_200n },
      { kind: 'voucher', netCents: 2_000n },
    ],
    tenders: [
      { kind: 'voucher', amountCents: 7_000n },
      { kind: 'cash', amountCents: 7_000n },
    ],
  };

  test('half of it paid with a voucher: half of each is new money', () => {
    const fresh = addPurposes([newMoneyOf(sale)]);
    expect(fresh).toMatchObject({ goods: 5_000n, tax: 400n, freight: 600n, vouchers: 1_000n });
    expect(moneyInSum(fresh)).toBe(7_000n);
  });

  property.prop([
    fc.array(fc.bigInt({ min: 0n, max: 90_000n }), { minLength: 1, maxLength: 5 }),
    fc.bigInt({ min: 0n, max: 9_000n }),
    fc.integer({ min: 0, max: 100 }),
  ])('the parts always add up to what was paid in cash', (nets, taxCents, share) => {
    const totalCents = sumCents([...nets, taxCents]);
    const cash = (totalCents * BigInt(share)) / 100n;
    const parts = newMoneyOf({
      ...{ number: 1, taxCents, lines: nets.map((netCents) => ({ kind: 'piece', netCents })) },
      tenders: [
        { kind: 'cash', amountCents: cash },
        { kind: 'store_credit', amountCents: totalCents - cash },
      ],
    });
    expect(sumCents([...parts.values()])).toBe(cash);
  });
});

describe('the form of the count', () => {
  const form = {
    requestKey: '6f6b0a3e-70a7-4d9b-9e57-2f2f4be7b001',
    ...{ shown: '21340', float: '150', reason: '', cardTotal: '' },
  };

  test('fields that are left empty are none', () => {
    const read = countDrawerInput.parse({ ...form, pieces10000: '2', pieces25: '', pieces1: '3' });
    expect(read).toMatchObject({ pieces: { '10000': 2, '1': 3 }, floatCents: 15_000n });
  });

  test.each([
    ['nothing counted at all', {}, 'pieces10000'],
    ['part of a coin', { pieces25: '1.5' }, 'pieces25'],
    ['fewer than none', { pieces25: '-1' }, 'pieces25'],
    ['more than a drawer holds', { pieces25: '12345' }, 'pieces25'],
    ['a part of a cent as float', { pieces25: '1', float: '1.005' }, 'float'],
  ])('%s is told at its field', (_label, over, field) => {
    const read = countDrawerInput.safeParse({ ...form, ...over });
    expect(read.success).toBe(false);
    expect(read.error?.issues.map((issue) => issue.path.join('.'))).toContain(field);
  });

  test('every note and coin has its own worth', () => {
    expect(new Set(notesAndCoins.map(({ cents }) => cents)).size).toBe(12);
  });
});
