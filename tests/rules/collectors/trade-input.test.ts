import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { keepCollectorInput } from '@/lib/collectors/input';
import { certificateInput, tradeTermsInput } from '@/lib/collectors/input/trade';
import { payFeesInput } from '@/lib/sales/input/referral-fee';

type Read = { success: boolean; error?: { issues: { path: PropertyKey[] }[] } };
const fields = (read: Read) => (read.error?.issues ?? []).map(({ path }) => path.join('.'));
const ids = { requestKey: randomUUID(), collectorId: randomUUID() };

describe('a certificate', () => {
  const paper = {
    ...{ ...ids, state: 'Alderland', permitNumber: '4471', legalName: 'Halloran & Vane' },
    ...{ buys: '', fromOn: '2026-01-01', untilOn: '' },
  };
  test('is read; it need not run out', () => {
    expect(certificateInput.parse(paper)).toMatchObject({ untilOn: null, permitNumber: '4471' });
  });
  test('needs no picture: a file with nothing in it is none', () => {
    const picture = new File([], 'blob');
    expect(certificateInput.parse({ ...paper, picture }).picture).toBeUndefined();
  });
  test('may hold for a single day', () => {
    expect(certificateInput.parse({ ...paper, untilOn: '2026-01-01' }).untilOn).toBe('2026-01-01');
  });
  test.each([
    ['ends before it begins', { untilOn: '2025-12-31' }, 'untilOn'],
    ['31 February', { fromOn: '2026-02-31' }, 'fromOn'],
    ['no permit', { permitNumber: ' ' }, 'permitNumber'],
    ['a card’s number', { permitNumber: '4111 1111 1111 1111' }, 'permitNumber'],
    ['a book of what they buy', { buys: 'x'.repeat(10_000) }, 'buys'],
    ['no state', { state: '' }, 'state'],
  ])('is told at its field: %s', (_label, over, field) => {
    expect(fields(certificateInput.safeParse({ ...paper, ...over }))).toEqual([field]);
  });
});

describe('what a designer gets', () => {
  const terms = { ...ids, way: 'discount', percent: '15', sinceOn: '2026-01-01', note: '' };
  test('is one way or the other or neither', () => {
    expect(tradeTermsInput.parse(terms)).toMatchObject({ way: 'discount', percent: '15' });
    const neither = { ...terms, way: 'nothing', percent: '' };
    expect(tradeTermsInput.parse(neither)).toMatchObject({ way: 'nothing', percent: null });
    expect(fields(tradeTermsInput.safeParse({ ...terms, way: 'both' }))).toEqual(['way']);
  });
  test.each([['0'], ['100'], ['-5'], ['15.555'], ['a lot'], ['']])(
    'is a share: %s is not',
    (percent) => {
      expect(fields(tradeTermsInput.safeParse({ ...terms, percent }))).toEqual(['percent']);
    },
  );
});

describe('fees to pay', () => {
  const fee = randomUUID();
  const asked = { ...ids, feeIds: fee, how: 'cheque', paidOn: '2026-11-20' };
  test('are one or several', () => {
    expect(payFeesInput.parse(asked).feeIds).toEqual([fee]);
    expect(payFeesInput.parse({ ...asked, feeIds: [fee, randomUUID()] }).feeIds).toHaveLength(2);
  });
  test.each([
    ['none chosen', undefined],
    ['no list at all', 'one'],
    ['too many', Array.from({ length: 51 }, () => randomUUID())],
  ])('are told at the list: %s', (_label, feeIds) => {
    const [field] = fields(payFeesInput.safeParse({ ...asked, feeIds }));
    expect(field).toMatch(/^feeIds/);
  });
  test('are not paid by card', () => {
    expect(fields(payFeesInput.safeParse({ ...asked, how: 'card' }))).toEqual(['how']);
  });
});

test('a card’s number is not kept among what is known of a collector', () => {
  const input = { requestKey: ids.requestKey, name: 'Wren', note: 'pays by 4111-1111-1111-1111' };
  expect(fields(keepCollectorInput.safeParse(input))).toEqual(['note']);
});
