import { randomUUID } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { counterTermsInput } from '@/lib/access/input/counter-terms';
import { taxPlaceInput, taxStateInput, treatmentInput } from '@/lib/tax/input';

type Read = { success: boolean; error?: { issues: { path: PropertyKey[]; message: string }[] } };
const faults = (read: Read) =>
  Object.fromEntries(
    (read.error?.issues ?? []).map(({ path, message }) => [path.join('.'), message]),
  );
const requestKey = randomUUID();

describe('a place', () => {
  const place = { requestKey, name: 'Cedar Reach', state: 'Alderland' };
  test('needs no more than its name and state', () => {
    expect(taxPlaceInput.parse(place)).toEqual({ ...place, placeId: null, registeredFrom: null });
  });
  test.each([
    ['no name', { name: '  ' }, 'name'],
    ['no state', { state: '' }, 'state'],
    ['31 February', { registeredFrom: '2026-02-31' }, 'registeredFrom'],
    ['a very long name', { name: 'x'.repeat(81) }, 'name'],
    ['another id', { placeId: 'one' }, 'placeId'],
  ])('is told at its field: %s', (_label, over, field) => {
    expect(Object.keys(faults(taxPlaceInput.safeParse({ ...place, ...over })))).toEqual([field]);
  });
  test('may be called by any name in any writing', () => {
    const names = ['שפך הנהר', 'Otter 🦦 Cove'];
    expect(names.map((name) => taxPlaceInput.parse({ ...place, name }).name)).toEqual(names);
  });
});

describe('what a state says', () => {
  const said = {
    ...{ requestKey, state: 'Alderland', kind: 'shipping', treatment: 'taxed' },
    ...{ shareBy: 'by_weight', fromOn: '2026-11-25' },
  };
  test.each([
    ['delivery is shared as it was said', {}, 'by_weight'],
    ['by price when nothing was said', { shareBy: '' }, 'by_price'],
    ['untaxed delivery is not shared', { treatment: 'not_taxed' }, null],
    ['nothing else is shared', { kind: 'installation' }, null],
  ])('%s', (_label, over, shareBy) => {
    expect(treatmentInput.parse({ ...said, ...over }).shareBy).toBe(shareBy);
  });
  test('a piece always stands as a line of its own', () => {
    const read = treatmentInput.safeParse({
      ...{ ...said, kind: 'goods', treatment: 'not_taxed_when_separate' },
    });
    expect(faults(read)).toHaveProperty('treatment');
  });
  test('money for later is no kind', () => {
    expect(faults(treatmentInput.safeParse({ ...said, kind: 'none' }))).toEqual({
      kind: 'Say what this is about.',
    });
  });
});

describe('another state', () => {
  const state = {
    ...{ requestKey, state: 'Fenmark', registeredFrom: '', thresholdCents: '100,000.00' },
    ...{ thresholdSales: '', needs: 'either', window: 'twelve_months', lookedUpOn: '', note: '' },
  };
  test('is read', () => {
    expect(taxStateInput.parse(state)).toMatchObject({
      ...{ thresholdCents: 10_000_000n, thresholdSales: null, registeredFrom: null },
    });
  });
  test.each([
    ['nought', { thresholdCents: '0' }, 'thresholdCents'],
    ['three decimals of a cent', { thresholdCents: '1.005' }, 'thresholdCents'],
    ['below zero', { thresholdCents: '-5' }, 'thresholdCents'],
    ['half a sale', { thresholdSales: '1.5' }, 'thresholdSales'],
    ['no sale', { thresholdSales: '0' }, 'thresholdSales'],
    ['far too many', { thresholdSales: '99999999' }, 'thresholdSales'],
    ['both, with one missing', { needs: 'both' }, 'needs'],
    ['a note without end', { note: 'x'.repeat(10_000) }, 'note'],
  ])('is told at its field: %s', (_label, over, field) => {
    expect(Object.keys(faults(taxStateInput.safeParse({ ...state, ...over })))).toEqual([field]);
  });
});

describe('what holds at the counter', () => {
  const terms = {
    ...{ requestKey, staffDiscountPercent: '10', returnDays: '14', restockingFeePercent: '0' },
    ...{ returnTerms: '', holdHours: '48', layawayDownPercent: '33.33', layawayDays: '90' },
    ...{ layawayTerms: '', approvalDays: '7', drawerFloatCents: '200.00' },
  };
  test('is read', () => {
    expect(counterTermsInput.parse(terms)).toMatchObject({
      ...{ returnDays: 14, layawayDownPercent: '33.33', drawerFloatCents: 20_000n },
    });
  });
  test.each([
    ['more than all', 'staffDiscountPercent', '100.01'],
    ['three decimals', 'layawayDownPercent', '33.333'],
    ['below zero', 'restockingFeePercent', '-1'],
    ['no figure', 'returnDays', 'two weeks'],
    ['half a day', 'returnDays', '1.5'],
    ['no time at all', 'holdHours', '0'],
    ['a century', 'layawayDays', '36500'],
    ['for ever', 'approvalDays', '91'],
    ['a till full of gold', 'drawerFloatCents', '10,000.01'],
    ['part of a cent', 'drawerFloatCents', '1.001'],
    ['a book', 'layawayTerms', 'x'.repeat(10_000)],
  ])('is told at its field: %s', (_label, field, text) => {
    const read = counterTermsInput.safeParse({ ...terms, [field]: text });
    expect(Object.keys(faults(read))).toEqual([field]);
  });
});
