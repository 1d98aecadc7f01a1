import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { addMould } from '@/lib/catalogue/writes/moulds';
import type { LineToPut } from '@/lib/counter/rules/slip';
import { putOnSlip, sellSlip } from '@/lib/counter/writes';
import { takeOrderInput } from '@/lib/orders/input';
import type { Day } from '@/lib/dates/rules';
import { findOrder, listOrders } from '@/lib/orders/reads';
import { readTurnsWaiting } from '@/lib/orders/reads/before';
import { previewOrder } from '@/lib/orders/reads/preview';
import { listKept } from '@/lib/orders/reads/promises';
import { bringInMade, callOffOrder, moveOrderDay, tellReady } from '@/lib/orders/writes';
import { takeOrder } from '@/lib/orders/writes/take-order';
import { db } from '@/lib/platform/db/client';
import { constraintOf } from '@/lib/platform/db/errors';
import { findByCode } from '@/lib/stock/reads';
import {
  aPieceHere,
  doing,
  openGallery,
  type OpenGallery,
  type TestPiece,
} from '@/tests/database/sales/open-gallery';
import { sql } from '@/tests/helpers/database';

const told = { on: '2026-11-20', zone: 'America/Los_Angeles' } as const;
let gallery: OpenGallery;
let tern: TestPiece;
let moonId: string;
beforeAll(async () => {
  gallery = await openGallery();
  const piece = { sku: 'TERN-10-CI', title: 'Tern over Shoals', priceCents: 5_000n, here: 2 };
  tern = await aPieceHere(gallery, piece);
  moonId = (await db().colourway.create({ data: { name: 'Moon white' } })).id;
});

const clerk = () => doing(gallery.clerk);
const anOrder = (over: object = {}) =>
  takeOrderInput.parse({
    ...{ requestKey: randomUUID(), skuId: tern.skuId, quantity: '10', technique: 'slip_cast' },
    ...{ newName: 'Wren Alder', newPhone: '555 0142', goes: 'collected', said: 'yes' },
    ...{ readyAboutOn: '2027-01-15', ...over },
  });
const ofOrder = async (number: number) => {
  const order = await findOrder(gallery.owner, number, told);
  return { requestKey: randomUUID(), orderId: order?.id ?? randomUUID() };
};

test('refused, in this order, and nothing is written', async () => {
  const second = await aPieceHere(gallery, { ...tern, sku: 'TERN-S', title: 'Flawed', here: 0 });
  await db().sku.update({ where: { id: second.skuId }, data: { grade: 'second', flaw: 'warped' } });
  const once = await aPieceHere(gallery, { ...tern, sku: 'PANEL-1', title: 'Panel', here: 0 });
  await db().sku.update({ where: { id: once.skuId }, data: { making: 'one_off' } });
  const past = { readyAboutOn: '2026-11-19', newName: '' };
  const refusals = [
    await takeOrder(doing(gallery.maker), anOrder({ skuId: randomUUID() })),
    await takeOrder(clerk(), anOrder({ skuId: randomUUID() })),
    await takeOrder(clerk(), anOrder({ skuId: second.skuId, ...past })),
    await takeOrder(clerk(), anOrder({ skuId: once.skuId, ...past })),
    await takeOrder(clerk(), anOrder(past)),
    await takeOrder(clerk(), anOrder({ goes: 'sent', readyAboutOn: '2026-11-19' })),
    await takeOrder(clerk(), anOrder({ readyAboutOn: '2026-11-19' })),
    await takeOrder(clerk(), anOrder({ collectorId: randomUUID() })),
    await takeOrder(clerk(), anOrder({ colourwayId: moonId })),
    await takeOrder(clerk(), anOrder({ depositCents: '500.01' })),
  ];
  expect(refusals.map((each) => !each.ok && each.refusal.code)).toEqual([
    ...['not_allowed', 'unknown_piece', 'second_is_not_made', 'made_once', 'nobody_named'],
    ...['nowhere_to_send', 'day_is_over', 'unknown_collector', 'price_needed'],
    'deposit_above_price',
  ]);
  expect([await db().specialOrder.count(), await db().job.count()]).toEqual([0, 0]);
  expect(await db().collector.count()).toBe(0);
});

test('before money is taken, mould, glaze, kiln and day are looked at', async () => {
  const { designId } = await db().sku.findUniqueOrThrow({ where: { id: tern.skuId } });
  await addMould(clerk(), {
    ...{ requestKey: randomUUID(), code: 'TERN-M1', designId, lifeCasts: 100, begunWith: 91 },
    ...{ madeOn: '2026-01-05', note: '' },
  });
  const wantedOn: Day = '2026-12-01';
  const wish = { quantity: 10, technique: null, wantedOn, colourwayId: moonId };
  const shown = await previewOrder(gallery.clerk, 'TERN-10-CI', wish, told.on);
  expect(shown?.before.technique).toBe('slip_cast');
  expect(shown?.before.said.map((each) => [each.about, each.mind])).toEqual([
    ...[
      ['mould', true],
      ['glaze', false],
      ['kiln', false],
      ['day', true],
    ],
  ]);
  expect(shown?.choices.colourways.map((each) => each.name)).toEqual([
    ...['Moon white', 'celadon over iron slip'],
  ]);
});

test('an order in another colour makes its SKU, its job with spares and its collector, once', async () => {
  const form = anOrder({ colourwayId: moonId, unitPriceCents: '52', wish: 'as tile no. 14' });
  const both = await Promise.all([takeOrder(clerk(), form), takeOrder(clerk(), form)]);
  expect(both[0]).toMatchObject({ ok: true, value: { deposit: '26000' } });
  expect(both[1]).toEqual(both[0]);
  const order = await findOrder(gallery.maker, 1 + (await firstNumber()), told);
  expect(order).toBeNull();
  expect(await findOrder(gallery.maker, await firstNumber(), told)).toMatchObject({
    ...{ quantity: 10, totalCents: 52_000n, what: 'relief tile, Moon white', paidCents: 0n },
    ...{ collector: { name: 'Wren Alder' }, standing: { where: 'deposit', isLate: false } },
    ...{ sku: { code: 'TERN-10-MW' }, job: { pieces: 10, finished: 0, at: 'not begun' } },
  });
  expect(await readTurnsWaiting(db())).toBeCloseTo(22 / 80);
});

async function firstNumber(): Promise<number> {
  const first = await db().specialOrder.findFirstOrThrow({ orderBy: { number: 'asc' } });
  return first.number;
}

async function sell(slipId: string, totalCents: bigint) {
  const { version } = await db().slip.findUniqueOrThrow({ where: { id: slipId } });
  return sellSlip(clerk(), {
    ...{ requestKey: randomUUID(), slipId, slipVersion: version, expectedTotalCents: totalCents },
    tenders: totalCents === 0n ? [] : [{ kind: 'cash', givenCents: totalCents }],
  });
}

test('the deposit is a slip, and is a liability until the pieces are handed over', async () => {
  const number = await firstNumber();
  const { orderId } = await ofOrder(number);
  const line = { kind: 'order_deposit', orderId, cents: 26_000n } as const;
  const put = await putOnSlip(clerk(), { requestKey: randomUUID(), slipId: null, line });
  if (!put.ok) throw new Error(put.refusal.code);
  expect(await sell(put.value.slipId, 26_000n)).toMatchObject({ ok: true });
  expect(await findOrder(gallery.maker, number, told)).toMatchObject({
    ...{ paidCents: 26_000n, standing: { where: 'to_begin', clock: 'studio' } },
    receipts: [{ isHandOver: false }],
  });
  const held = await sql(`SELECT sum("amountCents")::text AS held FROM "Posting"
    WHERE "accountCode" = '2020'`);
  expect(held).toEqual([{ held: '-26000' }]);
});

test('what is made comes in and is kept for it, spare ones for anybody; then it is told', async () => {
  const number = await firstNumber();
  expect(await tellReady(clerk(), await ofOrder(number))).toMatchObject({
    refusal: { code: 'not_here_yet' },
  });
  const bring = async (pieces: number) =>
    bringInMade(clerk(), { ...(await ofOrder(number)), pieces });
  expect((await bring(4)).ok).toBe(true);
  expect((await bring(7)).ok).toBe(true);
  expect(await findByCode(gallery.clerk, 'TERN-10-MW')).toMatchObject({ onHand: 11, held: 10 });
  expect(await bring(1)).toMatchObject({ refusal: { code: 'all_here' } });
  expect((await findOrder(gallery.maker, number, told))?.standing.where).toBe('ready');
  expect((await tellReady(clerk(), await ofOrder(number))).ok).toBe(true);
  expect(await tellReady(clerk(), await ofOrder(number))).toMatchObject({
    refusal: { code: 'told_already' },
  });
});

test('it is handed over by a slip that uses its deposit, and is over then', async () => {
  const number = await firstNumber();
  const order = await findOrder(gallery.owner, number, told);
  const line: LineToPut = {
    ...{ kind: 'piece', skuId: order?.sku.id ?? '', quantity: 10, orderId: order?.id ?? null },
    holdIds: order?.holds.map((hold) => hold.id) ?? [],
  };
  const put = await putOnSlip(clerk(), { requestKey: randomUUID(), slipId: null, line });
  if (!put.ok) throw new Error(put.refusal.code);
  // 520.00 and 8 in a hundred of tax are 561.60; 260.00 were paid down.
  const total = 56_160n;
  const { version } = await db().slip.findUniqueOrThrow({ where: { id: put.value.slipId } });
  const sold = await sellSlip(clerk(), {
    ...{ requestKey: randomUUID(), slipId: put.value.slipId, slipVersion: version },
    ...{ expectedTotalCents: total, tenders: [{ kind: 'cash', givenCents: 30_160n }] },
  });
  expect(sold).toMatchObject({ ok: true });
  expect(await findOrder(gallery.owner, number, told)).toMatchObject({
    ...{ handedOver: 10, waitingHere: 0, standing: { where: 'handed_over', clock: 'nobody' } },
  });
  expect(await callOffOrder(clerk(), calling(await ofOrder(number)))).toMatchObject({
    refusal: { code: 'handed_over_already' },
  });
  const list = await listOrders(gallery.maker, told.on, told.zone);
  expect([list.open.length, list.over.length]).toEqual([0, 1]);
});

const calling = (of: { requestKey: string; orderId: string }, keepCents = 0n) => ({
  ...{ ...of, why: 'they moved away', keepCents, how: 'same_way' as const },
});

test('an order that is called off gives its deposit back, less what is kept', async () => {
  const taken = await takeOrder(clerk(), anOrder({ quantity: '2' }));
  if (!taken.ok) throw new Error(taken.refusal.code);
  const { number, orderId } = taken.value;
  const line = { kind: 'order_deposit', orderId, cents: 5_000n } as const;
  const put = await putOnSlip(clerk(), { requestKey: randomUUID(), slipId: null, line });
  if (!put.ok) throw new Error(put.refusal.code);
  await sell(put.value.slipId, 5_000n);
  expect(await callOffOrder(clerk(), calling(await ofOrder(number), 5_001n))).toMatchObject({
    refusal: { code: 'money', why: { code: 'fee_above_price' } },
  });
  const both = await Promise.all([
    callOffOrder(clerk(), calling({ requestKey: randomUUID(), orderId }, 1_000n)),
    callOffOrder(doing(gallery.owner), calling({ requestKey: randomUUID(), orderId }, 1_000n)),
  ]);
  expect(both.map((each) => each.ok).sort()).toEqual([false, true]);
  const left = await sql(`SELECT order_money('${orderId}')::text AS cents`);
  expect(left).toEqual([{ cents: '0' }]);
  expect((await findOrder(gallery.owner, number, told))?.standing.where).toBe('ended');
});

test('another day is named, also for the studio', async () => {
  const taken = await takeOrder(clerk(), anOrder({ quantity: '1' }));
  if (!taken.ok) throw new Error(taken.refusal.code);
  const { number } = taken.value;
  const day = async (readyAboutOn: '2027-02-01' | '2026-11-19') => ({
    ...(await ofOrder(number)),
    ...{ readyAboutOn, why: 'the kiln waits for an element' },
  });
  expect(await moveOrderDay(clerk(), await day('2026-11-19'))).toMatchObject({ ok: false });
  expect((await moveOrderDay(clerk(), await day('2027-02-01'))).ok).toBe(true);
  expect(await findOrder(gallery.owner, number, told)).toMatchObject({
    readyAboutOn: '2027-02-01',
  });
  const job = await db().job.findFirstOrThrow({ orderBy: { number: 'desc' } });
  expect(job.neededOn).toEqual(new Date('2027-02-01'));
});

test('what is kept for somebody is told with its day', async () => {
  await db().hold.create({
    data: {
      ...{ skuId: tern.skuId, placeId: gallery.counterId, quantity: 1, forWhom: 'Mrs Aldous' },
      // Half past four in the afternoon there, and already the next day in Greenwich.
      ...{ untilAt: new Date('2026-11-28T00:30:00Z'), staffId: gallery.clerk.id },
      at: new Date('2026-11-20T20:00:00Z'),
    },
  });
  expect(await listKept(gallery.maker, told.zone)).toMatchObject([
    { kind: 'hold', forWhom: 'Mrs Aldous', what: 'Tern over Shoals', on: '2026-11-27' },
  ]);
});

test.each([
  ['an order has pieces', `UPDATE "SpecialOrder" SET quantity = 0`, 'order_has_pieces'],
  [
    'no deposit is below nothing',
    `UPDATE "SpecialOrder" SET "depositCents" = -1`,
    'order_has_pieces',
  ],
])('by SQL: %s', async (_label, statement, rule) => {
  const error = await sql(statement).catch((reason: unknown) => reason);
  expect(constraintOf(error)).toBe(rule);
});
