import { randomUUID } from 'node:crypto';
import { beforeAll, describe, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { constraintOf } from '@/lib/platform/db/errors';
import { inTransaction } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';
import { movePiecesInput } from '@/lib/stock/input/places';
import { findMove, listMoves } from '@/lib/stock/reads/moves/papers';
import { listPlaces, listStanding } from '@/lib/stock/reads/moves/places';
import { readStory } from '@/lib/stock/reads/moves/story';
import { storySentence } from '@/lib/stock/rules/moves/story';
import { bringIntoStock } from '@/lib/stock/writes';
import { movePieces } from '@/lib/stock/writes/move';
import { addPlace, closePlace, renamePlace } from '@/lib/stock/writes/places';
import { sql } from '@/tests/helpers/database';
import {
  aPieceHere,
  doing,
  noon,
  openGallery,
  type OpenGallery,
  type TestPiece,
} from '../sales/open-gallery';

let gallery: OpenGallery;
let tern: TestPiece;
let heron: TestPiece;

beforeAll(async () => {
  gallery = await openGallery();
  const title = 'Tern over Shoals';
  tern = await aPieceHere(gallery, { sku: 'TS-10-CI', title, priceCents: 18_000n, here: 6 });
  heron = await aPieceHere(gallery, {
    ...{ sku: 'HR-14-MO', title: 'Heron', priceCents: 38_000n, here: 0 },
  });
  await db().sku.update({ where: { id: heron.skuId }, data: { making: 'edition' } });
  await db().edition.create({
    data: { skuId: heron.skuId, size: 30, statedOn: new Date('2026-01-01') },
  });
  await inTransaction(async (tx) => {
    const came = { skuId: heron.skuId, placeId: gallery.counterId, quantity: 1 };
    const numbers = [3, 7].map((editionNumber) => ({
      ...{ ...came, editionNumber, reason: 'made' as const, unitCostCents: 9_000n },
    }));
    await bringIntoStock(tx, doing(gallery.maker), numbers);
    return ok(null);
  });
});

const aMove = (ready: string, over: Record<string, string> = {}) =>
  movePiecesInput.parse({
    ...{ requestKey: randomUUID(), fromId: gallery.counterId, toId: gallery.backRoomId },
    ...{ ready, note: '' },
    ...over,
  });

async function onHand(piece: TestPiece, placeId: string): Promise<number> {
  const rows = await sql<{ n: number }>(
    'select "onHand" as n from "StockLevel" where "skuId" = $1 and "placeId" = $2',
    [piece.skuId, placeId],
  );
  return rows[0]?.n ?? 0;
}

describe('a move', () => {
  test('takes pieces from a place to another as one paper, told once in the story', async () => {
    const move = aMove('TS-10-CI*2.HR-14-MO~7', { note: 'for the autumn wall' });
    const moved = await movePieces(doing(gallery.maker), move);
    expect(moved).toMatchObject({ ok: true, value: { pieces: 3 } });
    if (!moved.ok) return;
    expect(await movePieces(doing(gallery.maker), move)).toEqual(moved);
    expect([await onHand(tern, gallery.counterId), await onHand(tern, gallery.backRoomId)]).toEqual(
      [4, 2],
    );

    const paper = await findMove(gallery.clerk, moved.value.number);
    expect(paper).toMatchObject({
      ...{ from: 'Gallery floor', to: 'Back room', by: 'Tobias Fenn', movedOn: '2026-11-20' },
      ...{ note: 'for the autumn wall', pieces: 3, consignmentNote: null },
    });
    expect(paper?.lines.map((line) => [line.piece.code, line.quantity, line.numbers])).toEqual([
      ['HR-14-MO', 1, [7]],
      ['TS-10-CI', 2, []],
    ]);
    const [listed] = await listMoves(gallery.clerk, { placeId: gallery.backRoomId });
    expect(listed).toMatchObject({ number: moved.value.number, pieces: 3 });

    const { told } = await readStory(gallery.clerk, tern.skuId, { page: 1 });
    expect(told.map((each) => [storySentence(each), each.standing])).toEqual([
      [
        `2 moved from Gallery floor to Back room, move ${moved.value.number}: for the autumn wall.`,
        6,
      ],
      ['6 came from the studio (Ines).', 6],
    ]);
    const standing = await listStanding(gallery.clerk, gallery.backRoomId, {
      ...{ letters: 'her', page: 1 },
    });
    expect(standing.pieces.map((piece) => [piece.code, piece.there, piece.numbers])).toEqual([
      ['HR-14-MO', 1, [7]],
    ]);
  });

  test('two at once with the last of them: one goes, the other is told what is left', async () => {
    const both = await Promise.all([
      movePieces(doing(gallery.clerk), aMove('TS-10-CI*3')),
      movePieces(doing(gallery.second), aMove('TS-10-CI*3')),
    ]);
    expect(both.map((each) => each.ok).sort()).toEqual([false, true]);
    const refused = both.find((each) => !each.ok);
    expect(refused).toMatchObject({ refusal: { code: 'not_there', onHand: 1 } });
    expect(await onHand(tern, gallery.counterId)).toBe(1);
  });

  test('what is held stays, and says for whom', async () => {
    const place = gallery.counterId;
    await sql(
      `insert into "Hold" (id, "skuId", "placeId", quantity, "forWhom", "untilAt", "staffId", at)
       values (gen_random_uuid(), $1, $2, 1, 'Wren Alder', now() + interval '1 day', $3, now())`,
      [tern.skuId, place, gallery.clerk.id],
    );
    const refused = await movePieces(doing(gallery.clerk), aMove('TS-10-CI'));
    expect(refused).toMatchObject({ refusal: { code: 'held', heldFor: ['Wren Alder'], free: 0 } });
  });

  test('is for those who move pieces, and a key serves one move', async () => {
    const books = await movePieces(doing(gallery.books), aMove('TS-10-CI'));
    expect(books).toMatchObject({ refusal: { code: 'not_allowed' } });
    const back = aMove('HR-14-MO~7', { fromId: gallery.backRoomId, toId: gallery.counterId });
    expect(await movePieces(doing(gallery.clerk), back)).toMatchObject({ ok: true });
    const other = { ...aMove('TS-10-CI'), requestKey: back.requestKey };
    const refused = await movePieces(doing(gallery.clerk), other);
    expect(refused).toMatchObject({ refusal: { code: 'key_used_for_something_else' } });
  });

  test.each([
    ['nothing', ''],
    ['no place', 'TS-10-CI'],
  ])('with %s is refused, and leaves no paper behind', async (_label, ready) => {
    const before = await db().stockTransfer.count();
    const refused = await movePieces(doing(gallery.clerk), aMove(ready, { toId: '' }));
    expect(refused.ok).toBe(false);
    expect(await db().stockTransfer.count()).toBe(before);
  });

  test('that loses a piece on the way is refused by the database', async () => {
    const broken = inTransaction(async (tx) => {
      const paper = await tx.stockTransfer.create({
        data: {
          ...{ fromId: gallery.backRoomId, toId: gallery.counterId, staffId: gallery.clerk.id },
          ...{ movedOn: noon, at: noon },
        },
      });
      await tx.stockMovement.create({
        data: {
          ...{ skuId: tern.skuId, placeId: gallery.backRoomId, quantity: -1, reason: 'moved' },
          ...{ transferId: paper.id, at: noon },
        },
      });
      return ok(null);
    });
    const failure: unknown = await broken.catch((error: unknown) => error);
    expect(constraintOf(failure)).toBe('transfer_loses_nothing');
  });
});

describe('a place', () => {
  const key = () => ({ requestKey: randomUUID() });

  test('is added, renamed and closed when nothing stands there any more', async () => {
    const clerk = doing(gallery.clerk);
    const added = await addPlace(clerk, { ...key(), name: 'Loft', kind: 'storeroom' });
    if (!added.ok) throw new Error(added.refusal.code);
    const { placeId } = added.value;
    const twice = await addPlace(clerk, { ...key(), name: 'LOFT', kind: 'gallery' });
    expect(twice).toMatchObject({ refusal: { code: 'name_taken' } });
    const renamed = { ...key(), placeId, name: 'Upper loft', kind: 'studio' } as const;
    expect(await renamePlace(clerk, renamed)).toMatchObject({ ok: true });
    const taken = await renamePlace(clerk, { ...key(), placeId, name: 'back ROOM' });
    expect(taken).toMatchObject({ refusal: { code: 'name_taken' } });

    const up = aMove('HR-14-MO~3', { toId: placeId });
    expect(await movePieces(clerk, up)).toMatchObject({ ok: true });
    const full = await closePlace(clerk, { ...key(), placeId });
    expect(full).toMatchObject({ refusal: { code: 'not_empty', pieces: 1 } });
    const [listed] = await listPlaces(gallery.maker, { id: placeId });
    expect(listed).toMatchObject({
      ...{ name: 'Upper loft', kind: 'studio', pieces: 1, retailCents: 38_000n },
    });
    const down = aMove('HR-14-MO~3', { fromId: placeId, toId: gallery.counterId });
    expect(await movePieces(clerk, down)).toMatchObject({ ok: true });
    expect(await closePlace(clerk, { ...key(), placeId })).toMatchObject({ ok: true });

    const closed = await movePieces(clerk, aMove('HR-14-MO~3', { toId: placeId }));
    expect(closed).toMatchObject({ refusal: { code: 'place_closed' } });
    const again = await renamePlace(clerk, { ...key(), placeId, name: 'Attic' });
    expect(again).toMatchObject({ refusal: { code: 'place_closed' } });
    const nowhere = await renamePlace(clerk, { ...key(), placeId: randomUUID(), name: 'Attic' });
    expect(nowhere).toMatchObject({ refusal: { code: 'unknown_place' } });
  });

  test('of the counter stays open, and the books do not add places', async () => {
    const counter = { ...key(), placeId: gallery.counterId };
    const refused = await closePlace(doing(gallery.owner), counter);
    expect(refused).toMatchObject({ refusal: { code: 'counters_place' } });
    const books = await addPlace(doing(gallery.books), { ...key(), name: 'Shed', kind: 'studio' });
    expect(books).toMatchObject({ refusal: { code: 'not_allowed' } });
  });

  test('comes first in the list when the counter sells from it, last when it is closed', async () => {
    const names = (await listPlaces(gallery.books)).map((place) => place.name);
    expect(names).toEqual(['Gallery floor', 'Back room', 'Upper loft']);
  });
});

test.each([
  ['a long note', { note: 'a'.repeat(501) }],
  ['the number of a card in the note', { note: 'paid 4111-1111-1111-1111' }],
  ['a place that is no id', { toId: 'Back room' }],
])('the form that moves pieces tells of %s', (_label, over) => {
  const form = { requestKey: randomUUID(), fromId: '', toId: '', ready: 'TS-10-CI' };
  expect(movePiecesInput.safeParse({ ...form, ...over }).success).toBe(false);
});
