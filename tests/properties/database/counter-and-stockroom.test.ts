import { randomUUID } from 'node:crypto';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { endHold, holdPieces } from '@/lib/holds/writes';
import { cancelLayawayInput, handOverInput } from '@/lib/layaway/input';
import { beginLayaway } from '@/lib/layaway/writes';
import { cancelLayaway, handOverLayaway } from '@/lib/layaway/writes/end';
import { plainCents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import type { TakeBackInput } from '@/lib/returns/input';
import { takeBack } from '@/lib/returns/writes';
import { moveStock } from '@/lib/stock/writes';
import { correctStock } from '@/lib/stock/writes/correct-stock';
import { asked, pay } from '@/tests/database/layaway/a-layaway';
import {
  aPieceHere,
  aSale,
  doing,
  later,
  openGallery,
  sellNow,
  type OpenGallery,
  type TestPiece,
} from '@/tests/database/sales/open-gallery';
import { sql, startAfresh } from '@/tests/helpers/database';
import { alwaysTrue } from './always-true';

/** One thing that happens, in figures that chance chooses; several happen at the same moment. */
const step = fc.record({
  does: fc.constantFrom(
    ...(['sell', 'sell', 'sell twice', 'hold', 'end a hold', 'take back', 'take back'] as const),
    ...(['move', 'count', 'lay away', 'pay off', 'hand over', 'call off'] as const),
  ),
  piece: fc.nat(2),
  count: fc.integer({ min: 1, max: 3 }),
  cents: fc.bigInt({ min: 1n, max: 40_000n }),
  which: fc.nat(9),
});
type Step = typeof step extends fc.Arbitrary<infer One> ? One : never;
const play = fc.array(fc.array(step, { minLength: 1, maxLength: 3 }), {
  minLength: 5,
  maxLength: 9,
});

type World = { gallery: OpenGallery; pieces: TestPiece[]; collectorId: string; second: number };

test('whatever is sold, held, laid away, brought back, moved and counted at once, the rules hold', async () => {
  const seed = Number(process.env['TRADE_SEED'] ?? String(Math.floor(Math.random() * 2 ** 31)));
  console.log(`counter seed ${seed}`);
  const done = new Map<string, number>();
  await fc.assert(
    fc.asyncProperty(play, async (moments) => {
      await startAfresh();
      const world = await aWorld();
      for (const [second, steps] of moments.entries()) {
        const now = { ...world, second };
        const outcomes = await Promise.all(steps.map((one) => happen(one, now)));
        for (const [at, ok] of outcomes.entries()) {
          const name = `${steps[at]?.does} ${ok ? 'done' : 'refused'}`;
          done.set(name, (done.get(name) ?? 0) + 1);
        }
        expect(await broken()).toEqual([]);
      }
    }),
    { seed, numRuns: 8, endOnFailure: true },
  );
  console.log(`counter steps ${JSON.stringify(Object.fromEntries(done))}`);
}, 180_000);

async function aWorld(): Promise<Omit<World, 'second'>> {
  const gallery = await openGallery();
  const pieces: TestPiece[] = [];
  for (const [at, title] of ['Tern over Shoals', 'Sword Fern', 'River Stones'].entries()) {
    const facts = { sku: `AB-${at + 10}`, title, priceCents: 3_333n * BigInt(at + 1) };
    pieces.push(await aPieceHere(gallery, { ...facts, here: at + 2 }));
  }
  const name = { name: 'Odile Sefton', createdAt: later(0) };
  const { id: collectorId } = await db().collector.create({ data: name });
  return { gallery, pieces, collectorId };
}

/** Whether it was done; a refusal is as good an answer, an exception is not. */
async function happen(one: Step, world: World): Promise<boolean> {
  const { gallery, second } = world;
  const piece = world.pieces[one.piece];
  if (!piece) throw new Error('There are three pieces.');
  const doer = doing(one.which % 2 === 0 ? gallery.clerk : gallery.second, later(second));
  if (one.does === 'sell' || one.does === 'sell twice') {
    const sale = aSale([{ piece, quantity: one.count }]);
    const first = await sellNow(doer, sale);
    // What was refused may go through a moment later; what was sold is sold once.
    const isSentAgain = one.does === 'sell twice' && first.ok;
    if (isSentAgain) expect(await sellNow(doer, sale)).toEqual(first);
    return first.ok;
  }
  if (one.does === 'take back') return bringBack(one, { ...world, doer });
  const here = { ...world, doer, piece };
  return onTheShelf(one) ? shelve(one, here) : layAway(one, here);
}

const onTheShelf = ({ does }: Step) => ['hold', 'end a hold', 'move', 'count'].includes(does);

type Doing = World & { doer: ReturnType<typeof doing> };

async function shelve(one: Step, { gallery, doer, piece }: Doing & { piece: TestPiece }) {
  const { skuId } = piece;
  const { counterId: placeId, backRoomId } = gallery;
  if (one.does === 'hold') {
    const hold = {
      ...{ skuId, placeId, quantity: one.count, editionNumber: null, collectorId: null },
      ...{ forWhom: 'Marit Oland', phone: '', note: '', untilAt: later(9e5) },
    };
    return (await inTransaction((tx) => holdPieces(tx, doer, hold))).ok;
  }
  if (one.does === 'end a hold') {
    const holds = await db().hold.findMany({ where: { endedAt: null, layawayId: null } });
    const holdId = holds[one.which % Math.max(1, holds.length)]?.id;
    if (holdId === undefined) return false;
    return (await inTransaction((tx) => endHold(tx, doer, { holdId, how: 'released' }))).ok;
  }
  if (one.does === 'move') {
    const pieces = [{ skuId, quantity: one.count }];
    const there = { fromId: placeId, toId: backRoomId, movedOn: '2026-11-20', pieces } as const;
    const back = { ...there, fromId: backRoomId, toId: placeId };
    const way = one.which < 6 ? there : back;
    return (await inTransaction((tx) => moveStock(tx, doer, way))).ok;
  }
  const found = { reason: 'counted', pieces: one.count - 1, note: '' } as const;
  return (await correctStock(doer, { requestKey: randomUUID(), skuId, ...found })).ok;
}

async function bringBack(one: Step, { doer }: Doing): Promise<boolean> {
  const sales = await db().sale.findMany({
    where: { lines: { some: { kind: 'piece' } } },
    orderBy: { number: 'asc' },
    select: { number: true, lines: { select: { id: true } } },
  });
  const sale = sales[one.which % Math.max(1, sales.length)];
  if (!sale) return false;
  const to = (['shelf', 'broken', 'nothing'] as const)[one.which % 3] ?? 'shelf';
  const lines = sale.lines.map(({ id: lineId }) => ({ lineId, numbers: [], flaw: '', to }));
  const back: TakeBackInput = {
    ...{ requestKey: randomUUID(), saleNumber: sale.number, kind: 'returned', refunds: [] },
    how: one.which % 2 === 0 ? 'same_way' : 'store_credit',
    ...{ feePercent: one.which > 6 ? '15' : '0', reason: 'too large for the wall' },
    lines: lines.map((line) => ({ ...line, pieces: one.count })),
  };
  return (await takeBack(doer, back)).ok;
}

async function layAway(one: Step, world: Doing & { piece: TestPiece }): Promise<boolean> {
  const { gallery, doer, piece, collectorId } = world;
  if (one.does === 'lay away') {
    const shownNet = plainCents(piece.priceCents);
    const form = asked(piece.sku, collectorId, { shownNet, down: '1' });
    return (await beginLayaway(doer, form)).ok;
  }
  const open = await db().layaway.findMany({
    where: { endedAt: null },
    orderBy: { number: 'asc' },
  });
  const layaway = open[one.which % Math.max(1, open.length)];
  if (!layaway) return false;
  const { id: layawayId, totalCents } = layaway;
  if (one.does === 'pay off') {
    const cents = one.which % 2 === 0 ? totalCents : one.cents;
    return (await pay(gallery, doer, layawayId, cents)).ok;
  }
  const form = { requestKey: randomUUID(), layawayId };
  if (one.does === 'hand over') {
    const shownTotal = plainCents(totalCents);
    return (await handOverLayaway(doer, handOverInput.parse({ ...form, shownTotal }))).ok;
  }
  const ending = { why: 'moved away', keep: '0', how: 'same_way' };
  return (await cancelLayaway(doer, cancelLayawayInput.parse({ ...form, ...ending }))).ok;
}

async function broken(): Promise<string[]> {
  const found: string[] = [];
  for (const [rule, statement] of Object.entries(alwaysTrue)) {
    if ((await sql(statement)).length > 0) found.push(rule);
  }
  return found;
}
