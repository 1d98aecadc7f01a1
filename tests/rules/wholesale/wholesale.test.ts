import { expect, test } from 'vitest';
import { keepOrderInput, promiseTownInput } from '@/lib/wholesale/input';
import {
  orderStanding,
  shopRefusalMessage,
  wholesalePriceCents,
  type ShopRefusal,
} from '@/lib/wholesale/rules';
import { ageOf, ages, dueDay, statementByAge } from '@/lib/wholesale/rules/ageing';

test.each([
  [18_000n, '50', 9_000n],
  [9_965n, '50', 4_983n],
  [10_000n, '47.5', 4_750n],
  [1n, '50', 1n],
  [1n, '49', 0n],
])('%s cents at %s percent come to %s', (retail, percent, wholesale) => {
  expect(wholesalePriceCents(retail, percent)).toBe(wholesale);
});

test.each([
  ['2026-11-25', 'not_due'],
  ['2026-11-26', 'to_30'],
  ['2026-12-25', 'to_30'],
  ['2026-12-26', 'to_60'],
  ['2027-01-24', 'to_60'],
  ['2027-01-25', 'to_90'],
  ['2027-02-23', 'to_90'],
  ['2027-02-24', 'over_90'],
] as const)('due 25 November, on %s it is %s', (today, age) => {
  expect(ageOf('2026-11-25', today)).toBe(age);
});

test('an invoice of thirty days is due a month later, over the end of February too', () => {
  expect(dueDay('2026-01-30', 30)).toBe('2026-03-01');
  expect(dueDay('2026-01-30', 0)).toBe('2026-01-30');
});

test('the ages of a statement add up to what is owed', () => {
  const invoices = [
    { owedCents: 100n, dueOn: '2026-11-01' },
    { owedCents: 250n, dueOn: '2026-12-31' },
    { owedCents: 7n, dueOn: '2026-01-01' },
  ] as const;
  const { byAge, totalCents } = statementByAge(invoices, '2026-11-25');
  expect(byAge.map(({ cents }) => cents)).toEqual([250n, 100n, 0n, 0n, 7n]);
  expect(totalCents).toBe(357n);
  expect(statementByAge([], '2026-11-25').byAge.map(({ age }) => age)).toEqual(ages);
});

test('where an order stands is told by what happened', () => {
  const endedAt = new Date('2026-11-25T00:00:00Z');
  expect(orderStanding({ saleId: null, endedAt: null })).toBe('open');
  expect(orderStanding({ saleId: 'sale', endedAt: null })).toBe('shipped');
  expect(orderStanding({ saleId: null, endedAt })).toBe('cancelled');
});

const named = { title: 'Tern', sku: 'TS-10-CI' };
const refusals: Record<ShopRefusal['code'], ShopRefusal> = {
  unknown_shop: { code: 'unknown_shop' },
  unknown_order: { code: 'unknown_order' },
  order_is_shipped: { code: 'order_is_shipped', number: 3 },
  order_is_cancelled: { code: 'order_is_cancelled', number: 3 },
  unknown_code: { code: 'unknown_code', typed: 'XX-1' },
  no_price: { code: 'no_price', ...named },
  town_is_promised: {
    ...{ code: 'town_is_promised', town: 'Cedar Reach', shop: 'Driftline', untilOn: null },
  },
  unknown_promise: { code: 'unknown_promise' },
  no_state: { code: 'no_state', shop: 'Driftline' },
  no_certificate: { code: 'no_certificate', shop: 'Driftline', standing: { kind: 'none' } },
  unknown_place: { code: 'unknown_place' },
  not_enough: { code: 'not_enough', ...named, wanted: 3, free: 1, held: 1 },
  paid_first: { code: 'paid_first' },
  card_number_typed: { code: 'card_number_typed' },
};

test.each(Object.values(refusals))('$code is said in full sentences', (refusal) => {
  expect(shopRefusalMessage(refusal)).toMatch(/^[A-Z“0-9].*[.]$/);
});

test('without a certificate it is said why, and nothing about tax being charged', () => {
  const said = shopRefusalMessage(refusals.no_certificate);
  expect(said).toBe(
    'No resale certificate is on file. Without a resale certificate nothing leaves for Driftline ' +
      'untaxed. Ask for it, and keep it with the shop.',
  );
});

const order = {
  ...{ requestKey: '0190b7a6-0000-7000-8000-000000000001', pieces: 'TS-10-CI 6' },
  ...{ shopId: '0190b7a6-0000-7000-8000-000000000002', pricePercent: '50', netDays: '30' },
};

test.each([
  ['a share of nothing', { pricePercent: '0' }, 'pricePercent'],
  ['a share above the whole', { pricePercent: '101' }, 'pricePercent'],
  ['three figures after the point', { pricePercent: '33.333' }, 'pricePercent'],
  ['days below zero', { netDays: '-1' }, 'netDays'],
  ['two years of waiting', { netDays: '730' }, 'netDays'],
  ['31 February', { shipOn: '2027-02-31' }, 'shipOn'],
  ['no pieces', { pieces: '' }, 'pieces'],
  ['very long terms', { terms: 'x'.repeat(10_000) }, 'terms'],
])('the order form tells %s at its field', (_label, over, field) => {
  const read = keepOrderInput.safeParse({ ...order, ...over });
  expect(read.success ? [] : read.error.issues.map((issue) => issue.path.join('.'))).toEqual([
    field,
  ]);
});

test('a promise ends after it begins', () => {
  const promise = { ...order, town: 'Cedar Reach', state: 'Alderland', fromOn: '2026-11-25' };
  expect(promiseTownInput.safeParse({ ...promise, untilOn: '2026-11-25' }).success).toBe(false);
  expect(promiseTownInput.parse({ ...promise, untilOn: '' }).untilOn).toBeNull();
});
