import { randomUUID } from 'node:crypto';
import { beforeAll, beforeEach, expect, test } from 'vitest';
import { readHolds } from '@/lib/holds/reads';
import { findHold, listHolds } from '@/lib/holds/reads/hold-list';
import { listWaiting } from '@/lib/holds/reads/waiting-list';
import { holdInput } from '@/lib/holds/input';
import { holdRefusalMessage } from '@/lib/holds/rules/refusals';
import { holdForSomebody, holdLonger, letGo, noteCall } from '@/lib/holds/writes/keep';
import { holdForWaiting, noteTold, waitForPiece, waitNoLonger } from '@/lib/holds/writes/waiting';
import { db } from '@/lib/platform/db/client';
import { constraintOf } from '@/lib/platform/db/errors';
import { sql, startAfresh } from '@/tests/helpers/database';
import {
  aPieceHere,
  aSale,
  doing,
  later,
  openGallery,
  sellNow,
  type OpenGallery,
  type TestPiece,
} from '../sales/open-gallery';

const zone = 'America/Los_Angeles';
let gallery: OpenGallery;
let tern: TestPiece;
let count = 0;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
});

beforeEach(async () => {
  count += 1;
  const title = `Tern ${count}`;
  tern = await aPieceHere(gallery, { sku: `TERN-${count}`, title, priceCents: 18_000n, here: 1 });
});

const asked = (over: Record<string, string> = {}) =>
  holdInput.parse({
    ...{ requestKey: randomUUID(), skuId: tern.skuId, placeId: gallery.counterId, quantity: '1' },
    ...{ forWhom: 'Marit Oland', phone: '555 0148', untilOn: '2026-11-23', untilTime: '16:00' },
    ...over,
  });

async function held(over: Record<string, string> = {}) {
  const made = await holdForSomebody(doing(gallery.clerk), asked(over));
  if (!made.ok) throw new Error(`not held: ${made.refusal.code}`);
  return made.value;
}

const touch = (holdId: string) => ({ requestKey: randomUUID(), holdId });

async function levelOf(skuId: string) {
  const [level] = await sql<{ onHand: number; held: number }>(
    'select "onHand", held from "StockLevel" where "skuId" = $1',
    [skuId],
  );
  return level;
}

test('a piece is held by name until an hour, and can be read back', async () => {
  const { number } = await held();
  const [hold] = await readHolds(db(), { skuIds: [tern.skuId], placeId: gallery.counterId });
  expect(hold).toMatchObject({
    ...{ number, forWhom: 'Marit Oland', phone: '555 0148', quantity: 1, layawayId: null },
    ...{ staffName: 'Perrin Oday', untilAt: new Date('2026-11-24T00:00:00Z') },
  });
  expect(await levelOf(tern.skuId)).toEqual({ onHand: 1, held: 1 });
});

test('of two people who hold the last one at the same moment, one is told who holds it', async () => {
  const both = await Promise.all([
    holdForSomebody(doing(gallery.clerk), asked()),
    holdForSomebody(doing(gallery.second), asked({ forWhom: 'Bram Aldous' })),
  ]);
  expect(both.map((each) => each.ok).sort()).toEqual([false, true]);
  const [words = ''] = both
    .map((each) => (each.ok ? '' : holdRefusalMessage(each.refusal, zone)))
    .sort()
    .reverse();
  expect(words).toMatch(
    /^The only Tern \d+ here is held already\. Held for (Marit Oland|Bram Aldous) until 23 Nov 2026, 4:00 pm, by (Perrin Oday|Sunniva Rask)\.$/,
  );
  expect(await levelOf(tern.skuId)).toEqual({ onHand: 1, held: 1 });
});

test('of a hold and a sale of the last one, one happens and nothing is promised twice', async () => {
  const [hold, sale] = await Promise.all([
    holdForSomebody(doing(gallery.clerk), asked()),
    sellNow(doing(gallery.second), aSale([{ piece: tern, quantity: 1 }])),
  ]);
  expect([hold.ok, sale.ok].sort()).toEqual([false, true]);
  const level = await levelOf(tern.skuId);
  expect(level).toEqual(hold.ok ? { onHand: 1, held: 1 } : { onHand: 0, held: 0 });
});

test('the same hold sent twice is written once', async () => {
  const once = asked();
  const first = await holdForSomebody(doing(gallery.clerk), once);
  expect(await holdForSomebody(doing(gallery.clerk), once)).toEqual(first);
  expect(await levelOf(tern.skuId)).toEqual({ onHand: 1, held: 1 });
});

test.each([
  ['a maker', 'maker', {}, 'not_allowed'],
  ['an unknown collector', 'clerk', { collectorId: randomUUID() }, 'unknown_collector'],
  ['an unknown piece', 'clerk', { skuId: randomUUID() }, 'unknown_piece'],
  ['yesterday', 'clerk', { untilOn: '2026-11-19' }, 'until_has_passed'],
  ['two years', 'clerk', { untilOn: '2028-11-19' }, 'until_too_far'],
  ['a number of what is no edition', 'clerk', { editionNumber: '3' }, 'number_not_here'],
  ['two of one', 'clerk', { quantity: '2' }, 'not_enough_free'],
] as const)('%s is refused, and nothing is held', async (_label, who, over, code) => {
  const refused = await holdForSomebody(doing(gallery[who]), asked(over));
  expect(refused).toMatchObject({ ok: false, refusal: { code } });
  expect(await levelOf(tern.skuId)).toEqual({ onHand: 1, held: 0 });
});

test('a lapsed hold stays until it is let go, and stands on the call list first', async () => {
  const { holdId, number } = await held();
  const at = new Date('2026-11-24T00:00:00Z');
  const { toCall } = await listHolds(gallery.clerk, at);
  expect(toCall.find((hold) => hold.number === number)).toMatchObject({
    ...{ standing: 'lapsed', calledAt: null },
  });
  expect(await levelOf(tern.skuId)).toEqual({ onHand: 1, held: 1 });
  await noteCall(doing(gallery.clerk, at), touch(holdId));
  expect(await findHold(gallery.clerk, number, at)).toMatchObject({ calledAt: at });

  const gone = await letGo(doing(gallery.clerk, at), touch(holdId));
  expect(gone).toMatchObject({ ok: true, value: { number, next: null } });
  expect(await findHold(gallery.clerk, number, at)).toMatchObject({ endedHow: 'lapsed' });
  expect(await levelOf(tern.skuId)).toEqual({ onHand: 1, held: 0 });
});

test('let go by two people at once, it ends once and the pieces come free once', async () => {
  const { holdId } = await held();
  const both = await Promise.all([
    letGo(doing(gallery.clerk), touch(holdId)),
    letGo(doing(gallery.second), touch(holdId)),
  ]);
  expect(both.map((each) => each.ok).sort()).toEqual([false, true]);
  expect(both.find((each) => !each.ok)).toMatchObject({ refusal: { code: 'hold_has_ended' } });
  expect(await levelOf(tern.skuId)).toEqual({ onHand: 1, held: 0 });
});

test('a hold is made longer, and whoever was called is called again', async () => {
  const { holdId, number } = await held();
  await noteCall(doing(gallery.clerk), touch(holdId));
  const until = { untilOn: '2026-11-30', untilTime: '12:00' } as const;
  const longer = await holdLonger(doing(gallery.clerk), { ...touch(holdId), ...until });
  expect(longer).toEqual({ ok: true, value: { number } });
  const hold = await findHold(gallery.clerk, number, later(0));
  expect(hold).toMatchObject({ calledAt: null, untilAt: new Date('2026-11-30T20:00:00Z') });
});

test('the second in line is named when the first is let go, and gets the hold by one touch', async () => {
  const { holdId, number } = await held();
  const who = { collectorId: null, forWhom: 'Bram Aldous', phone: '555 0101', note: '' };
  const wish = { requestKey: randomUUID(), skuId: tern.skuId, what: 'second_in_line' as const };
  const waits = await waitForPiece(doing(gallery.second), { ...wish, ...who });
  if (!waits.ok) throw new Error('Anybody may wait.');
  const { waitingId } = waits.value;
  const one = () => ({ requestKey: randomUUID(), waitingId });
  expect(await holdForWaiting(doing(gallery.clerk), one())).toMatchObject({
    refusal: { code: 'not_enough_free' },
  });
  expect(await findHold(gallery.clerk, number, later(0))).toMatchObject({
    nextInLine: 'Bram Aldous',
  });
  const gone = await letGo(doing(gallery.clerk), touch(holdId));
  expect(gone).toMatchObject({ value: { next: { forWhom: 'Bram Aldous', phone: '555 0101' } } });
  const listed = (await listWaiting(gallery.clerk)).find((each) => each.id === waitingId);
  expect(listed?.standing).toBe('free_now');

  const both = await Promise.all([
    holdForWaiting(doing(gallery.clerk), one()),
    holdForWaiting(doing(gallery.second), one()),
  ]);
  expect(both.map((each) => each.ok).sort()).toEqual([false, true]);
  expect(await levelOf(tern.skuId)).toEqual({ onHand: 1, held: 1 });
});

test('who asked to be told is told once it is back, and then waits no longer', async () => {
  const who = { collectorId: null, forWhom: 'Inka Sorrel', phone: '', note: 'the blue one' };
  const wish = { requestKey: randomUUID(), skuId: tern.skuId, what: 'back_again' as const };
  const waits = await waitForPiece(doing(gallery.clerk), { ...wish, ...who });
  if (!waits.ok) throw new Error('Anybody may wait.');
  const one = () => ({ requestKey: randomUUID(), waitingId: waits.value.waitingId });
  expect(await noteTold(doing(gallery.clerk), one())).toMatchObject({ ok: true });
  const listed = (await listWaiting(gallery.clerk)).find((each) => each.skuId === tern.skuId);
  expect(listed?.standing).toBe('told');
  expect(await waitNoLonger(doing(gallery.clerk), one())).toMatchObject({ ok: true });
  const again = await waitNoLonger(doing(gallery.clerk), one());
  expect(again).toMatchObject({ refusal: { code: 'waits_no_longer' } });
});

test.each([
  ['holds more than is here', 'holds_never_exceed_on_hand', 'quantity', '2'],
  ['holds nothing', 'hold_has_pieces', 'quantity', '0'],
  ['holds for nobody', 'hold_names_somebody', '"forWhom"', "' '"],
])('the database itself refuses whoever %s', async (_label, rule, column, value) => {
  const values: Record<string, string> = {
    ...{ quantity: '1', '"forWhom"': "'Marit'", '"untilAt"': 'now()', at: 'now()' },
    ...{ id: 'gen_random_uuid()', '"skuId"': '$1', '"placeId"': '$2', '"staffId"': '$3' },
    [column]: value,
  };
  const knock = sql(
    `insert into "Hold" (${Object.keys(values).join()}) values (${Object.values(values).join()})`,
    [tern.skuId, gallery.counterId, gallery.clerk.id],
  );
  expect(constraintOf(await knock.catch((error: unknown) => error))).toBe(rule);
});

test.each([
  ['ends twice', 'update "Hold" set "endedHow" = \'sold\' where id = $1'],
  ['becomes another piece', 'update "Hold" set quantity = 3 where id = $1'],
])('the database itself refuses a hold that %s', async (_label, statement) => {
  const { holdId } = await held();
  await letGo(doing(gallery.clerk), touch(holdId));
  const failure: unknown = await sql(statement, [holdId]).catch((error: unknown) => error);
  expect(constraintOf(failure)).toBe('hold_ends_once');
});
