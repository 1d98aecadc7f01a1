import { expect, test } from 'vitest';
import { takeOrderInput, callOffOrderInput } from '@/lib/orders/input';
import {
  mailOrderReminder,
  orderStanding,
  usualDepositCents,
  type OrderFacts,
} from '@/lib/orders/rules';
import {
  piecesToBegin,
  readySpan,
  saidBefore,
  spanWords,
  usualTechnique,
  type BeforeFacts,
} from '@/lib/orders/rules/before';
import { orderSkuCode } from '@/lib/orders/rules/order-sku';
import {
  orderRefusalField,
  orderRefusalMessage,
  type OrderRefusal,
} from '@/lib/orders/rules/refusals';
import type { StepDays } from '@/lib/studio/rules/routes';

const today = '2026-11-25';

test.each([
  [1, 2],
  [10, 11],
  [11, 13],
  [22, 25],
  [900, 990],
])('for %i wanted, %i are begun (common practice: one spare in ten)', (quantity, begun) => {
  expect(piecesToBegin(quantity)).toBe(begun);
});

test('half is paid down, never a cent short', () => {
  expect(usualDepositCents(5_201n, 1)).toBe(2_601n);
  expect(usualDepositCents(5_201n, 2)).toBe(5_201n);
  expect(usualDepositCents(0n, 9)).toBe(0n);
});

const step = (peg: StepDays['peg'], days: readonly [number, number, number]): StepDays => ({
  ...{ name: peg, peg, shortestDays: days[0], likelyDays: days[1], longestDays: days[2] },
});
const route = [
  step('clay', [1, 3, 5]),
  step('dry', [5, 10, 14]),
  step('bisque', [2, 5, 10]),
  step('glaze', [2, 10, 20]),
];

test('with a free kiln the route decides', () => {
  expect(readySpan(route, 0, today)).toEqual({
    ...{ fromOn: '2026-12-23', untilOn: '2027-01-13', fromWeeks: 4, untilWeeks: 7 },
  });
});

test('a kiln that is busy only while the clay dries delays nothing, beyond that it does', () => {
  // Two turns a week: three turns are 11 days, and clay and drying take 13.
  expect(readySpan(route, 2.2, today).fromOn).toBe('2026-12-23');
  // Eight turns are 28 days: 15 more than clay and drying.
  expect(readySpan(route, 8, today)).toMatchObject({ fromOn: '2027-01-07', fromWeeks: 7 });
});

const span = readySpan(route, 0, today);
const before: BeforeFacts = {
  ...{ quantity: 22, needsMould: true, mould: { code: 'HERON-M1', left: 31 }, span },
  ...{ colourway: { name: 'Moon white', endedOn: null }, turnsWaiting: 0, wantedOn: null },
};

test('mould, glaze and kiln are said before money is taken', () => {
  expect(saidBefore(before, today)).toEqual([
    {
      ...{ about: 'mould', mind: false },
      words: 'Mould HERON-M1 has 31 casts left; 25 are begun for 22, with what may crack.',
    },
    { about: 'glaze', mind: false, words: 'Moon white is made.' },
    {
      ...{ about: 'kiln', mind: false },
      words: 'The kiln is free: about 4 to 7 weeks. That is about, and no promise.',
    },
  ]);
});

test.each([
  ['a mould with too few casts', { mould: { code: 'M', left: 24 } }, 0, /A new mould comes first/],
  ['no mould written down', { mould: null }, 0, /No mould of this design/],
  ['a glaze that ended', { colourway: { name: 'Kelp', endedOn: today } }, 1, /no longer made/],
  ['a glaze that ends soon', { colourway: { name: 'Kelp', endedOn: '2026-12-01' } }, 1, /until/],
  ['a day before the route', { wantedOn: '2026-12-22' }, 3, /will likely be late/],
  ['a day within the route', { wantedOn: '2026-12-23' }, 3, /may be late/],
] as const)('%s is to be minded', (_label, over, at, words) => {
  const said = saidBefore({ ...before, ...over }, today)[at];
  expect(said?.mind).toBe(true);
  expect(said?.words).toMatch(words);
});

test('a day after the route, and a piece made by hand, are fine', () => {
  const over = { wantedOn: span.untilOn, needsMould: false, mould: null, turnsWaiting: 0.4 };
  const said = saidBefore({ ...before, ...over }, today);
  expect(said.map((each) => each.mind)).toEqual([false, false, false, false]);
  expect(said[2]?.words).toMatch(/^The kiln has one load before it/);
  expect(spanWords({ ...span, untilWeeks: 4 })).toBe('about 4 weeks');
});

test('a technique is guessed from the mould and the kind', () => {
  expect(usualTechnique('bowl', false)).toBe('thrown');
  expect(usualTechnique('plaque', false)).toBe('slab_relief');
  expect(usualTechnique('plaque', true)).toBe('slip_cast');
});

const order: OrderFacts & { askedOn: typeof today } = {
  ...{ quantity: 6, depositCents: 30_000n, paidCents: 30_000n, readyAboutOn: '2026-12-20' },
  ...{ isSent: true, waitingHere: 0, handedOver: 0, toldReadyOn: null, hasEnded: false },
  job: { number: 7, at: 'the bisque kiln', pieces: 7, finished: 0, likelyOn: '2026-12-18' },
  askedOn: today,
};

test.each([
  ['ended', { hasEnded: true }, /Called off/, 'nobody'],
  ['handed_over', { handedOver: 6 }, /Handed over/, 'nobody'],
  ['ready', { waitingHere: 6 }, /not told yet/, 'gallery'],
  ['told', { waitingHere: 6, toldReadyOn: today }, /was told on/, 'collector'],
  ['deposit', { paidCents: 0n }, /not paid/, 'collector'],
  ['deposit', { paidCents: 1n }, /Part of/, 'collector'],
  ['to_begin', { job: null }, /To be begun/, 'studio'],
  ['making', {}, /at the bisque kiln/, 'studio'],
  ['made', { job: { ...order.job, number: 7, finished: 7, pieces: 7 } }, /bring the/, 'gallery'],
] as const)('an order stands at %s by its facts alone', (where, over, words, clock) => {
  const facts = { ...order, ...over } as OrderFacts;
  const standing = orderStanding(facts, today);
  expect(standing).toMatchObject({ where, clock, isLate: false });
  expect(standing.words).toMatch(words);
});

test('an order is late the day after, and never once it is over', () => {
  expect(orderStanding(order, '2026-12-20').isLate).toBe(false);
  expect(orderStanding(order, '2026-12-21').isLate).toBe(true);
  expect(orderStanding({ ...order, hasEnded: true }, '2026-12-21').isLate).toBe(false);
});

test('who waits far away is to be told a new day and offered the money back', () => {
  expect(mailOrderReminder(order, '2026-12-21')).toMatch(/\(26 days since it was ordered\)/);
  expect(mailOrderReminder(order, '2026-12-20')).toBe('');
  expect(mailOrderReminder({ ...order, isSent: false }, '2026-12-21')).toBe('');
  expect(mailOrderReminder({ ...order, handedOver: 6 }, '2026-12-21')).toBe('');
});

test.each([
  ['a new colour', ['TERN-10-CEL', 'Moon white'], [], 'TERN-10-MW'],
  ['one that is taken', ['TERN-10-CEL', 'Moon white'], ['TERN-10-MW'], 'TERN-10-MW2'],
  ['a name without letters', ['TERN', '☾'], [], 'TERN-X'],
] as const)('the SKU of %s is made up', (_label, [from, colour], taken, code) => {
  expect(orderSkuCode(from, colour, new Set(taken))).toBe(code);
});

const form = {
  ...{ requestKey: '0199aaaa-0000-4000-8000-000000000001', quantity: '6', technique: 'thrown' },
  ...{ skuId: '0199aaaa-0000-4000-8000-000000000002', goes: 'collected', said: 'yes' },
  readyAboutOn: '2026-12-20',
};
test.each([
  ['nothing odd', {}, null],
  ['31 February', { readyAboutOn: '2027-02-31' }, 'readyAboutOn'],
  ['a negative price', { unitPriceCents: '-5' }, 'unitPriceCents'],
  ['three decimals of a cent', { depositCents: '10.005' }, 'depositCents'],
  ['a huge number of pieces', { quantity: '901' }, 'quantity'],
  ['nought pieces', { quantity: '0' }, 'quantity'],
  ['a long wish', { wish: 'x'.repeat(10_000) }, 'wish'],
  ['the number of a card', { wish: 'card 4111 1111 1111 1111' }, 'wish'],
  ['nothing said', { said: undefined }, 'said'],
  ['a name from right to left, with a wave', { newName: 'מאיה 🌊' }, null],
])('a form with %s', (_label, over, field) => {
  const read = takeOrderInput.safeParse({ ...form, ...over });
  expect(read.error?.issues[0]?.path[0] ?? null).toBe(field);
});

test('an order is not called off without a reason', () => {
  const off = { requestKey: form.requestKey, orderId: form.skuId, why: ' ', how: 'same_way' };
  expect(callOffOrderInput.safeParse(off).error?.issues[0]?.message).toMatch(/Say why/);
  expect(callOffOrderInput.parse({ ...off, why: 'moved', keepCents: '' }).keepCents).toBe(0n);
});

const refusals: readonly [OrderRefusal, RegExp, string | null][] = [
  [{ code: 'not_allowed', permission: 'orders.take' }, /does not let you/, null],
  [{ code: 'made_once' }, /not made again/, null],
  [{ code: 'nobody_named' }, /for whom/, 'newName'],
  [{ code: 'price_needed' }, /no price yet/, 'unitPriceCents'],
  [{ code: 'nowhere_to_send' }, /where it is sent/, 'sendTo'],
  [{ code: 'day_is_over', todayOn: today }, /Nov 25|25 Nov/, 'readyAboutOn'],
  [{ code: 'deposit_above_price', totalCents: 5_200n }, /\$52.00/, 'depositCents'],
  [{ code: 'piece', why: { code: 'sku_taken', sku: 'TERN-10' } }, /TERN-10 is in use/, null],
  [{ code: 'edition', why: { code: 'which_number', sku: 'TERN-10' } }, /which number/, null],
  [{ code: 'money', why: { code: 'no_payments' } }, /Nothing was paid/, null],
  [{ code: 'hold', why: { code: 'unknown_piece' } }, /./, null],
];
test.each(refusals)('a refusal is told where it helps: %o', (refusal, words, field) => {
  expect(orderRefusalMessage(refusal, 'America/Los_Angeles')).toMatch(words);
  expect(orderRefusalField(refusal)).toBe(field);
});
