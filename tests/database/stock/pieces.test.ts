import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { constraintOf } from '@/lib/platform/db/errors';
import { inTransaction } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';
import { findByCode, findPieces } from '@/lib/stock/reads';
import { readStory } from '@/lib/stock/reads/moves/story';
import { listStock } from '@/lib/stock/reads/stock-room';
import { bringIntoStock } from '@/lib/stock/writes';
import { correctStock } from '@/lib/stock/writes/correct-stock';
import { confirmStockList, showStockList } from '@/lib/stock/writes/stock-list';
import { sql } from '@/tests/helpers/database';
import { aGallery, type TestGallery } from './a-gallery';

const list = `code,title,kind,width,height,colourway,price,here,barcode
TERN-10-CEL,Tern over Shoals,relief tile,10,10,Celadon,138,4,2000000000015
TERN-10-MOO,Tern over Shoals,relief tile,10,10,Moon white,138,0,
HERON-P-MOO,Heron at Low Water,plaque,8,14,Moon white,176,2,
FERN-5-COP,Sword Fern,relief tile,5,5,Copper moss,42,30,
`;

let here: TestGallery;
let ternId: string;
beforeAll(async () => {
  here = await aGallery();
  const bytes = Buffer.from(list);
  const input = { requestKey: randomUUID(), fileName: 'pieces.csv', bytes };
  const shown = await showStockList(here.owner, input);
  if (!shown.ok) throw new Error(shown.refusal.code);
  const { stockListId } = shown.value;
  const { planSha256 } = await db().stockList.findUniqueOrThrow({ where: { id: stockListId } });
  const yes = { requestKey: randomUUID(), stockListId, planSha256, leaveRefusedOut: false };
  const confirmed = await confirmStockList(here.owner, yes);
  if (!confirmed.ok) throw new Error(confirmed.refusal.code);
  ternId = (await findByCode(here.owner.actor, 'tern-10-cel'))?.id ?? '';
});

test.each([
  ['a whole SKU in small letters', 'tern-10-moo', ['TERN-10-MOO']],
  ['a barcode', '2000000000015', ['TERN-10-CEL']],
  ['the beginning of a SKU', 'tern-', ['TERN-10-CEL', 'TERN-10-MOO']],
  ['three letters', 'her', ['HERON-P-MOO']],
  ['words of title and colour in any order', 'moon tern', ['TERN-10-MOO']],
  ['a kind', 'plaque', ['HERON-P-MOO']],
  ['two letters swapped', 'hreon', ['HERON-P-MOO']],
  ['a letter too many', 'sword ferrn', ['FERN-5-COP']],
  ['a sign that means something to SQL', '%', []],
  ['an underscore', 'TERN_10', []],
  ['nothing', '  ', []],
])('a piece is found by %s', async (_label, typed, codes) => {
  const found = await findPieces(here.gallery.actor, typed);
  expect(found.map((piece) => piece.code)).toEqual(codes);
});

test('what is found says what it costs, how many are here and how many elsewhere', async () => {
  const fair = await db().place.create({ data: { name: 'Fair' } });
  await inTransaction(async (tx) => {
    const arrival = { skuId: ternId, placeId: fair.id, quantity: 3, unitCostCents: null };
    await bringIntoStock(tx, here.owner, [{ ...arrival, reason: 'made' }]);
    return ok(null);
  });
  expect(await findByCode(here.gallery.actor, 'TERN-10-CEL')).toMatchObject({
    ...{ title: 'Tern over Shoals', what: 'relief tile, Celadon', priceCents: 13_800n },
    ...{ onHand: 4, elsewhere: 3, picture: null, pictureUrl: null },
  });
});

test('the stock room lists by title, counts kinds, and a page past the end is the last', async () => {
  const room = await listStock(here.maker.actor, { letters: '', kind: 'relief_tile', page: 99 });
  const codes = room.pieces.map((piece) => piece.code);
  expect(codes).toEqual(['FERN-5-COP', 'TERN-10-CEL', 'TERN-10-MOO']);
  expect(room).toMatchObject({ page: 1, pages: 1, total: 3 });
  expect(room.kinds).toEqual([
    { kind: 'relief_tile', count: 3 },
    { kind: 'plaque', count: 1 },
  ]);
});

const correction = (reason: 'broken' | 'counted' | 'made', pieces: number) => ({
  ...{ requestKey: randomUUID(), skuId: ternId, reason, pieces, note: 'fell off its hook' },
});

test('a broken piece goes, is told in its history, and the last broken twice is refused', async () => {
  const broken = await correctStock(here.gallery, correction('broken', 3));
  expect(broken).toEqual({ ok: true, value: { code: 'TERN-10-CEL', onHand: 1 } });
  const both = await Promise.all([
    correctStock(here.gallery, correction('broken', 1)),
    correctStock(here.owner, correction('broken', 1)),
  ]);
  expect(both.map((each) => each.ok).sort()).toEqual([false, true]);
  expect(both.find((each) => !each.ok)).toMatchObject({ refusal: { code: 'fewer_here' } });
  const { told } = await readStory(here.maker.actor, ternId, { page: 1 });
  expect(told.map((each) => [each.quantity, each.standing])).toEqual([
    [-1, 3],
    [-3, 4],
    [3, 7],
    [4, 4],
  ]);
  expect(told[0]).toMatchObject({ reason: 'broken', note: 'fell off its hook' });
});

test('a correction sent twice happens once, and a maker may not correct', async () => {
  const made = correction('made', 2);
  const first = await correctStock(here.gallery, made);
  expect(await correctStock(here.gallery, made)).toEqual(first);
  const [level] = await sql(
    'select "onHand" from "StockLevel" where "skuId" = $1 and "placeId" = $2',
    [ternId, here.floorId],
  );
  expect(level).toEqual({ onHand: 2 });
  const refused = await correctStock(here.maker, correction('made', 1));
  expect(refused).toMatchObject({ refusal: { code: 'not_allowed' } });
});

test('the database itself refuses stock below zero', async () => {
  const taking = inTransaction(async (tx) => {
    const gone = { skuId: ternId, placeId: here.floorId, quantity: -50, unitCostCents: null };
    await bringIntoStock(tx, here.owner, [{ ...gone, reason: 'missing' }]);
    return ok(null);
  });
  const failure: unknown = await taking.catch((error: unknown) => error);
  expect(constraintOf(failure)).toBe('stock_never_below_zero');
});
