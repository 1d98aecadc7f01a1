import { describe, expect, test } from 'vitest';
import { counterInput } from '@/lib/sales/input';
import { endsInItsCheckDigit, looksLikeCardNumber } from '@/lib/money/rules/card-number';
import { putOn, readSlip, setQuantity, slipMost, writeSlip } from '@/lib/sales/rules/slip';
import { changeCents, settle, type TenderOffered } from '@/lib/sales/rules/tenders';

describe('how it is paid', () => {
  const byCard = (amountCents: bigint): TenderOffered => ({
    kind: 'card',
    amountCents,
    reference: '000482',
  });
  const cash = (givenCents: bigint): TenderOffered => ({ kind: 'cash', givenCents });

  test.each([
    ['cash, just right', [cash(1_850n)], [['cash', 1_850n]], 0n],
    ['cash, with change', [cash(2_000n)], [['cash', 1_850n]], 150n],
    ['card', [byCard(1_850n)], [['card', 1_850n]], 0n],
    [
      'part by card, the rest in cash',
      [cash(2_000n), byCard(500n)],
      [
        ['card', 500n],
        ['cash', 1_350n],
      ],
      650n,
    ],
  ])('%s', (_label, offered, kept, change) => {
    const settled = settle(1_850n, offered);
    expect(settled.ok).toBe(true);
    if (!settled.ok) return;
    expect(settled.value.map((tender) => [tender.kind, tender.amountCents])).toEqual(kept);
    expect(changeCents(settled.value)).toBe(change);
  });

  test.each([
    ['less by card than the slip', [byCard(1_849n)], 'tenders_do_not_add_up'],
    ['more by card than the slip', [byCard(1_851n)], 'tenders_do_not_add_up'],
    ['cash beside a card that paid all', [byCard(1_850n), cash(5n)], 'tenders_do_not_add_up'],
    ['nothing at all', [], 'tenders_do_not_add_up'],
    ['a cent too little in cash', [cash(1_849n)], 'not_enough_cash'],
  ])('refused: %s', (_label, offered, code) => {
    expect(settle(1_850n, offered)).toMatchObject({ ok: false, refusal: { code } });
  });
});

describe('the number of a card is known when it is seen', () => {
  // The figures below are well-known numbers for trying out payments, written from memory.
  test.each([
    ['4111111111111111', true],
    ['4111 1111 1111 1111', true],
    ['4111-1111-1111-1111', true],
    ['approved, 4111.1111.1111.1111, thanks', true],
    ['slip 12 4111111111111111', true],
    ['378282246310005', true],
    ['5555555555554444', true],
    ['6011111111111117', true],
    ['4111111111111112', false],
    ['1111111111111117', false],
    ['000482', false],
    ['AUTH 0042 17 NOV 2026', false],
    ['4242424242', false],
    ['', false],
  ])('%s: %s', (text, seen) => {
    expect(looksLikeCardNumber(text)).toBe(seen);
  });

  // The worked figure of many descriptions of this check digit, written from memory.
  test.each(Array.from({ length: 10 }, (_, digit) => [`7992739871${digit}`, digit === 3] as const))(
    'the check digit of %s',
    (digits, right) => {
      expect(endsInItsCheckDigit(digits)).toBe(right);
    },
  );
});

describe('the slip in the address', () => {
  test('reads back what it wrote', () => {
    const slip = [
      { sku: 'TS-10-CI', quantity: 1 },
      { sku: 'KF-8-MW', quantity: 12 },
    ];
    expect(writeSlip(slip)).toBe('TS-10-CI.KF-8-MW*12');
    expect(readSlip(writeSlip(slip))).toEqual(slip);
  });

  test.each([
    ['', []],
    ['ts-10-ci', [{ sku: 'TS-10-CI', quantity: 1 }]],
    ['TS-10-CI.TS-10-CI*2', [{ sku: 'TS-10-CI', quantity: 3 }]],
    ['TS-10-CI*0', []],
    ['TS-10-CI*-4.KF-8', [{ sku: 'KF-8', quantity: 1 }]],
    ['<script>', []],
    ['TS-10-CI*900.TS-10-CI*900', [{ sku: 'TS-10-CI', quantity: 999 }]],
  ])('%s', (text, slip) => {
    expect(readSlip(text)).toEqual(slip);
  });

  test('a full slip takes no other piece, but more of the same', () => {
    const full = Array.from({ length: slipMost.lines }, (_, at) => ({
      sku: `AB-${at + 10}`,
      quantity: 1,
    }));
    expect(putOn(full, 'ZZ-10')).toEqual(full);
    expect(putOn(full, 'AB-10')[0]).toEqual({ sku: 'AB-10', quantity: 2 });
  });

  test('none of a piece takes its line off', () => {
    expect(setQuantity([{ sku: 'TS-10-CI', quantity: 1 }], 'TS-10-CI', 0)).toEqual([]);
  });
});

describe('the form of the counter', () => {
  const skuId = '0195f1c2-7d3a-7c11-8a20-3f5b9e0d1a01';
  const form = {
    requestKey: '0195f1c2-7d3a-4c11-8a20-3f5b9e0d1a02',
    line: `${skuId}*2`,
    expectedTotal: '194.40',
  };

  test.each([
    ['cash as typed', { paidBy: 'cash', given: '$200' }, { kind: 'cash', givenCents: 20_000n }],
    ['just right', { paidBy: 'cash', given: '', justRight: 'yes' }, { givenCents: 19_440n }],
    ['card', { paidBy: 'card', reference: ' 0482 ' }, { kind: 'card', reference: '0482' }],
  ])('%s', (_label, paid, tender) => {
    const sale = counterInput.parse({ ...form, ...paid });
    expect(sale).toMatchObject({ collectorId: null, expectedTotalCents: 19_440n });
    expect(sale.lines).toEqual([{ skuId, quantity: 2 }]);
    expect(sale.tenders).toHaveLength(1);
    expect(sale.tenders[0]).toMatchObject(tender);
  });

  test.each([
    ['cash, but not how much', { paidBy: 'cash', given: '' }, 'given'],
    ['cash, in letters', { paidBy: 'cash', given: 'twenty' }, 'given'],
    ['no word how it is paid', { paidBy: 'shells' }, 'paidBy'],
    ['a key that is none', { paidBy: 'card', requestKey: 'twice' }, 'requestKey'],
    ['half a piece', { paidBy: 'card', line: `${skuId}*0.5` }, 'lines.0.quantity'],
    ['nought pieces', { paidBy: 'card', line: `${skuId}*0` }, 'lines.0.quantity'],
  ])('refused: %s', (_label, paid, field) => {
    const read = counterInput.safeParse({ ...form, ...paid });
    expect(read.error?.issues.map((issue) => issue.path.join('.'))).toEqual([field]);
  });
});
