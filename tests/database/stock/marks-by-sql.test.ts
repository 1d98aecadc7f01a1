import { beforeAll, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import type { Tx } from '@/lib/platform/db/transaction';
import {
  aPieceHere,
  noon,
  openGallery,
  type OpenGallery,
  type TestPiece,
} from '@/tests/database/sales/open-gallery';
import { ruleMetBy } from '@/tests/database/sales/rule-met';
import { startAfresh } from '@/tests/helpers/database';

let gallery: OpenGallery;
let fern: TestPiece;
let oneOff: TestPiece;
let edition: TestPiece;
let unstated: TestPiece;
let second: TestPiece;
let otherGalleryId: string;
let holdId: string;

beforeAll(async () => {
  await startAfresh();
  gallery = await openGallery();
  const piece = async (sku: string, here: number) =>
    aPieceHere(gallery, { sku, title: `A piece named ${sku}`, priceCents: 9_650n, here });
  fern = await piece('SF-08', 5);
  oneOff = await piece('OP-01', 1);
  edition = await piece('ED-01', 0);
  unstated = await piece('ED-02', 0);
  second = await piece('SF-08-S', 2);
  const making = { where: { id: oneOff.skuId }, data: { making: 'one_off' } } as const;
  await db().sku.update(making);
  const grade = { grade: 'second', firstSkuId: fern.skuId } as const;
  await db().sku.update({ where: { id: second.skuId }, data: grade });
  const numbered = { making: 'edition' } as const;
  const ids = [edition.skuId, unstated.skuId];
  await db().sku.updateMany({ where: { id: { in: ids } }, data: numbered });
  await db().edition.create({
    data: { skuId: edition.skuId, size: 3, artistProofs: 1, statedOn: noon },
  });
  const place = { name: 'Lantern Point', kind: 'consignee' } as const;
  otherGalleryId = (await db().place.create({ data: place })).id;
  await move(db(), edition, 1, { editionNumber: 1 });
  holdId = (await hold(db(), fern, 2)).id;
});

type More = { editionNumber?: number; placeId?: string; transferId?: string };

async function move(tx: Tx, piece: TestPiece, quantity: number, more: More = {}) {
  const { skuId } = piece;
  const reason = more.transferId ? 'moved' : 'counted';
  const placeId = gallery.counterId;
  await tx.stockMovement.create({ data: { skuId, placeId, quantity, reason, at: noon, ...more } });
}

async function hold(tx: Tx, piece: TestPiece, quantity: number, placeId = gallery.counterId) {
  const who = { forWhom: 'Odile Sefton', staffId: gallery.clerk.id };
  const data = { skuId: piece.skuId, placeId, quantity, untilAt: noon, at: noon, ...who };
  return tx.hold.create({ data });
}

async function transfer(tx: Tx, moves: readonly [TestPiece, number, string][]) {
  const { counterId: fromId, backRoomId: toId, clerk } = gallery;
  const paper = await tx.stockTransfer.create({
    data: { fromId, toId, staffId: clerk.id, movedOn: noon, at: noon },
  });
  for (const [piece, quantity, placeId] of moves) {
    await move(tx, piece, quantity, { placeId, transferId: paper.id });
  }
}

test.each<[string, string, (tx: Tx) => Promise<unknown>]>([
  ['more held than is here', 'holds_never_exceed_on_hand', (tx) => hold(tx, fern, 4)],
  [
    'held where nothing ever stood',
    'holds_never_exceed_on_hand',
    (tx) => hold(tx, fern, 1, gallery.backRoomId),
  ],
  ['a held piece leaves', 'holds_never_exceed_on_hand', (tx) => move(tx, fern, -4)],
  ['a hold of nothing', 'hold_has_pieces', (tx) => hold(tx, fern, 0)],
  [
    'a hold grows',
    'hold_ends_once',
    (tx) => tx.hold.update({ where: { id: holdId }, data: { quantity: 3 } }),
  ],
  [
    'a hold that ended begins again',
    'hold_ends_once',
    async (tx) => {
      const ended = { endedAt: noon, endedHow: 'released' } as const;
      await tx.hold.update({ where: { id: holdId }, data: ended });
      const again = { endedAt: null, endedHow: null };
      await tx.hold.update({ where: { id: holdId }, data: again });
    },
  ],
  ['a hold is deleted', 'never_changed', (tx) => tx.hold.delete({ where: { id: holdId } })],
  [
    'what is held is written over',
    'level_only_by_movement',
    (tx) => tx.stockLevel.updateMany({ data: { held: 0 } }),
  ],
  ['a second one-off', 'one_off_exists_once', (tx) => move(tx, oneOff, 1)],
  [
    'a second one-off elsewhere',
    'one_off_exists_once',
    (tx) => move(tx, oneOff, 1, { placeId: gallery.backRoomId }),
  ],
  ['an edition without a number', 'edition_moves_by_number', (tx) => move(tx, edition, 1)],
  [
    'two pieces under one number',
    'numbered_piece_moves_alone',
    (tx) => move(tx, edition, 2, { editionNumber: 2 }),
  ],
  [
    'a number beyond the edition and its proofs',
    'number_belongs_to_edition',
    (tx) => move(tx, edition, 1, { editionNumber: 5 }),
  ],
  [
    'a number that is here already',
    'number_exists_once',
    (tx) => move(tx, edition, 1, { editionNumber: 1, placeId: gallery.backRoomId }),
  ],
  [
    'a number that is not here',
    'number_leaves_where_it_is',
    async (tx) => {
      await move(tx, edition, 1, { editionNumber: 2, placeId: gallery.backRoomId });
      await move(tx, edition, -1, { editionNumber: 2 });
    },
  ],
  [
    'where a number is, is written over',
    'level_only_by_movement',
    (tx) => tx.editionPiece.updateMany({ data: { placeId: null } }),
  ],
  [
    'an edition is made larger',
    'edition_size_is_never_changed',
    (tx) => tx.edition.updateMany({ data: { size: 4 } }),
  ],
  [
    'an edition is stated after its first piece',
    'edition_is_stated_first',
    async (tx) => {
      await move(tx, unstated, 1);
      await tx.edition.create({ data: { skuId: unstated.skuId, size: 9, statedOn: noon } });
    },
  ],
  [
    'an edition of open stock',
    'edition_is_stated_first',
    (tx) => tx.edition.create({ data: { skuId: fern.skuId, size: 9, statedOn: noon } }),
  ],
  [
    'a second becomes a first',
    'second_keeps_its_mark',
    (tx) =>
      tx.sku.update({ where: { id: second.skuId }, data: { grade: 'first', firstSkuId: null } }),
  ],
  [
    'a second joins an edition',
    'second_is_no_edition',
    (tx) => tx.sku.update({ where: { id: second.skuId }, data: { making: 'edition' } }),
  ],
  [
    'a second goes to another gallery',
    'seconds_are_not_consigned',
    (tx) => move(tx, second, 1, { placeId: otherGalleryId }),
  ],
  [
    'a transfer loses one on the way',
    'transfer_loses_nothing',
    (tx) =>
      transfer(tx, [
        [fern, -2, gallery.counterId],
        [fern, 1, gallery.backRoomId],
      ]),
  ],
  [
    'a transfer turns one piece into another',
    'transfer_loses_nothing',
    (tx) =>
      transfer(tx, [
        [fern, -1, gallery.counterId],
        [second, 1, gallery.backRoomId],
      ]),
  ],
  ['a transfer of nothing', 'transfer_loses_nothing', (tx) => transfer(tx, [])],
  [
    'a place is closed with pieces in it',
    'closed_place_holds_nothing',
    (tx) => tx.place.update({ where: { id: gallery.counterId }, data: { closedAt: noon } }),
  ],
  [
    'pieces come to a place that is closed',
    'closed_place_holds_nothing',
    async (tx) => {
      await tx.place.update({ where: { id: gallery.backRoomId }, data: { closedAt: noon } });
      await move(tx, fern, 1, { placeId: gallery.backRoomId });
    },
  ],
])('%s: %s', async (_label, rule, work) => {
  expect(await ruleMetBy(work)).toBe(rule);
});

test('and nothing of all that was kept', async () => {
  const levels = await db().stockLevel.findMany({
    where: { OR: [{ onHand: { gt: 0 } }, { held: { gt: 0 } }] },
    orderBy: { sku: { code: 'asc' } },
    select: { sku: { select: { code: true } }, onHand: true, held: true },
  });
  expect(levels.map(({ sku, onHand, held }) => `${sku.code} ${onHand} ${held}`)).toEqual([
    'ED-01 1 0',
    'OP-01 1 0',
    'SF-08 5 2',
    'SF-08-S 2 0',
  ]);
  const pieces = await db().editionPiece.findMany({ orderBy: { number: 'asc' } });
  expect(pieces).toEqual([{ skuId: edition.skuId, number: 1, placeId: gallery.counterId }]);
});

test('a hold that ends gives its pieces free, and an edition’s number can come back', async () => {
  await db().hold.update({
    where: { id: holdId },
    data: { endedAt: noon, endedHow: 'lapsed', endedById: gallery.clerk.id },
  });
  await move(db(), edition, -1, { editionNumber: 1 });
  await move(db(), edition, 1, { editionNumber: 1, placeId: gallery.backRoomId });
  const level = await db().stockLevel.findFirst({ where: { skuId: fern.skuId } });
  expect(level).toMatchObject({ onHand: 5, held: 0 });
  const piece = await db().editionPiece.findFirst({ where: { skuId: edition.skuId } });
  expect(piece?.placeId).toBe(gallery.backRoomId);
});
