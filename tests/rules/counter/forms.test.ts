import { describe, expect, test } from 'vitest';
import { addLineInput, changeInput, countInput, touchInput } from '@/lib/counter/input';
import { payInput } from '@/lib/counter/input/pay';

const slipId = '0195f1c2-7d3a-7c11-8a20-3f5b9e0d1a01';
const lineId = '0195f1c2-7d3a-7c11-8a20-3f5b9e0d1a03';
const form = { requestKey: '0195f1c2-7d3a-4c11-8a20-3f5b9e0d1a02', slipId, version: '3' };
const longWords = 'x'.repeat(10_000);

function fieldsOf(read: { error?: { issues: { path: PropertyKey[] }[] } | undefined }): string[] {
  return read.error?.issues.map((issue) => issue.path.join('.')) ?? [];
}

describe('how a slip is paid', () => {
  const pay = { ...form, expectedTotal: '194.40' };

  test.each([
    ['cash as typed', { paidBy: 'cash', given: '$200' }, [{ kind: 'cash', givenCents: 20_000n }]],
    ['just right', { paidBy: 'cash', justRight: 'yes' }, [{ kind: 'cash', givenCents: null }]],
    [
      'card',
      { paidBy: 'card', reference: ' 0482 ' },
      [{ kind: 'card', amountCents: null, reference: '0482' }],
    ],
    [
      'a voucher and the rest by cheque, with a row left empty',
      { paidBy: 'several', way1: 'credit', note1: '4H7K', amount1: '', way2: '', way3: 'cheque' },
      [
        { kind: 'credit', code: '4H7K', amountCents: null },
        { kind: 'cheque', amountCents: null, reference: '' },
      ],
    ],
    ['nothing is left to pay', { paidBy: 'nothing' }, []],
  ])('%s', (_label, paid, tenders) => {
    const read = payInput.parse({ ...pay, ...paid });
    expect(read).toMatchObject({ slipId, slipVersion: 3, expectedTotalCents: 19_440n });
    expect(read.tenders).toEqual(tenders);
  });

  test.each([
    ['cash, but not how much', { paidBy: 'cash', given: '' }, ['given']],
    ['cash, in letters', { paidBy: 'cash', given: 'twenty' }, ['given']],
    ['no word how it is paid', { paidBy: 'shells' }, ['paidBy']],
    ['a key that is none', { paidBy: 'card', requestKey: 'twice' }, ['requestKey']],
    ['a part of a cent', { paidBy: 'several', way1: 'card', amount1: '5.555' }, ['amount1']],
    ['an amount without a way', { paidBy: 'several', amount2: '5' }, ['way2']],
    ['a voucher without a number', { paidBy: 'several', way1: 'credit' }, ['note1']],
    ['less than nothing', { paidBy: 'several', way1: 'card', amount1: '-5' }, ['amount1']],
  ])('refused: %s', (_label, paid, fields) => {
    expect(fieldsOf(payInput.safeParse({ ...pay, ...paid }))).toEqual(fields);
  });
});

describe('what is put on a slip', () => {
  test('a touch names a piece or a set, and never a price', () => {
    const read = touchInput.parse({ ...form, put: `sku:${lineId}`, amount: '1' });
    expect(read.line).toEqual({ kind: 'piece', skuId: lineId, quantity: 1 });
    expect(touchInput.parse({ ...form, put: `set:${lineId}` }).line).toMatchObject({
      kind: 'set',
    });
    expect(touchInput.safeParse({ ...form, put: 'sku:all' }).success).toBe(false);
  });

  test('freight has a name of its own, a piece without a tag needs one', () => {
    const freight = addLineInput.parse({ ...form, add: 'shipping', amount: '12' });
    expect(freight.line).toEqual({ kind: 'shipping', words: 'Freight', cents: 1_200n });
    const bare = { ...form, add: 'goods', amount: '12', words: ' ' };
    expect(fieldsOf(addLineInput.safeParse(bare))).toEqual(['words']);
  });

  test.each([
    ['no price', { add: 'goods', amount: '0', words: 'Ok' }, ['amount']],
    [
      'a thousand of it',
      { add: 'goods', amount: '1', words: 'Ok', quantity: '1000' },
      ['quantity'],
    ],
    ['words without an end', { add: 'goods', amount: '1', words: longWords }, ['words']],
    [
      'a card’s number for whom',
      { add: 'voucher', amount: '50', forWhom: '4111 1111 1111 1111' },
      ['forWhom'],
    ],
  ])('refused: %s', (_label, line, fields) => {
    expect(fieldsOf(addLineInput.safeParse({ ...form, ...line }))).toEqual(fields);
  });

  test('names in any script and pictures of birds are words like any other', () => {
    const forWhom = 'مريم 🐦 Dvořák';
    const read = addLineInput.parse({ ...form, add: 'voucher', amount: '50', forWhom });
    expect(read.line).toMatchObject({ forWhom });
  });
});

describe('what is changed on a slip', () => {
  test('a discount is a share or an amount, with its reason', () => {
    const off = { ...form, does: 'discount', on: 'slip', reason: 'a scratch' };
    expect(changeInput.parse({ ...off, as: 'percent', much: '12.5' }).change).toEqual({
      ...{ does: 'discount', lineId: null },
      discount: { way: 'percent', percent: '12.5', reason: 'a scratch' },
    });
    expect(changeInput.parse({ ...off, on: lineId, as: 'amount', much: '5' }).change).toEqual({
      ...{ does: 'discount', lineId },
      discount: { way: 'amount', cents: 500n, reason: 'a scratch' },
    });
  });

  test.each([
    ['no reason', { does: 'discount', on: 'slip', as: 'percent', much: '5', reason: '' }, 'reason'],
    [
      'more than all',
      { does: 'discount', on: 'slip', as: 'percent', much: '101', reason: 'x' },
      'much',
    ],
    ['nothing off', { does: 'discount', on: 'slip', as: 'amount', much: '0', reason: 'x' }, 'much'],
    ['sent nowhere', { does: 'deliver', way: 'sent', to: '', taxPlaceId: lineId }, 'to'],
    ['sent, at no tax', { does: 'deliver', way: 'sent', to: 'Kelp Lane 4' }, 'taxPlaceId'],
    ['31 February', { does: 'collect', untilOn: '2027-02-31' }, 'untilOn'],
    ['set aside without a word', { does: 'aside', asideAs: ' ' }, 'asideAs'],
    ['a long letter on the card', { does: 'gift', to: 'M', words: longWords }, 'words'],
  ])('refused: %s', (_label, change, field) => {
    expect(fieldsOf(changeInput.safeParse({ ...form, ...change }))).toEqual([field]);
  });

  test('a button beside a line says which line', () => {
    expect(countInput.parse({ ...form, less: lineId }).change).toEqual({ does: 'less', lineId });
    expect(countInput.parse({ ...form, off: lineId }).change).toEqual({ does: 'off', lineId });
  });
});
