import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { constraintOf } from '@/lib/platform/db/errors';
import { findByCode } from '@/lib/stock/reads';
import { correctStock } from '@/lib/stock/writes/correct-stock';
import { markAsSecond } from '@/lib/stock/writes/mark-as-second';
import { readNumbersAt } from '@/lib/stock/reads/numbers';
import {
  aPieceHere,
  doing,
  openGallery,
  type OpenGallery,
  type TestPiece,
} from '@/tests/database/sales/open-gallery';
import { sql } from '@/tests/helpers/database';

let gallery: OpenGallery;
let tern: TestPiece;
let heron: TestPiece;
beforeAll(async () => {
  gallery = await openGallery();
  const piece = { sku: 'TERN-10-CI', title: 'Tern over Shoals', priceCents: 13_801n, here: 5 };
  tern = await aPieceHere(gallery, piece);
  heron = await aPieceHere(gallery, { ...piece, sku: 'HERON-W', title: 'Heron', here: 0 });
  await db().sku.update({ where: { id: heron.skuId }, data: { making: 'edition' } });
  const statedOn = new Date('2026-11-01');
  await db().edition.create({
    data: { skuId: heron.skuId, size: 3, artistProofs: 1, statedOn },
  });
});

const marking = (over: object = {}) => ({
  ...{ requestKey: randomUUID(), skuId: tern.skuId, quantity: 1, grade: 'second' as const },
  ...{ flaw: 'pinholes lower left', priceCents: null, editionNumber: null },
  ...over,
});
const coming = (over: object = {}) => ({
  ...{ requestKey: randomUUID(), skuId: heron.skuId, reason: 'made' as const, pieces: 1, note: '' },
  ...over,
});

test('a second leaves the first and has a SKU of its own, for half the price, with its flaw', async () => {
  const marked = await markAsSecond(doing(gallery.clerk), marking({ quantity: 2 }));
  expect(marked).toMatchObject({ ok: true, value: { code: 'TERN-10-CI-S', firstCode: tern.sku } });
  expect((await findByCode(gallery.clerk, 'TERN-10-CI'))?.onHand).toBe(3);
  const second = await findByCode(gallery.clerk, 'TERN-10-CI-S');
  expect(second).toMatchObject({ onHand: 2, priceCents: 6_901n, grade: 'second' });
});

test('the same flaw joins what is there, another flaw and another grade do not', async () => {
  const same = await markAsSecond(doing(gallery.clerk), marking({ flaw: 'Pinholes lower left.' }));
  const other = await markAsSecond(
    doing(gallery.clerk),
    marking({ flaw: 'warped', priceCents: 5_000n }),
  );
  expect([same, other].map((each) => each.ok && each.value.code)).toEqual([
    'TERN-10-CI-S',
    'TERN-10-CI-S2',
  ]);
  expect(await findByCode(gallery.clerk, 'TERN-10-CI-S2')).toMatchObject({ priceCents: 5_000n });
});

test('the same form twice marks once', async () => {
  const form = marking({ grade: 'irregular', flaw: 'lighter than the tile' });
  const first = await markAsSecond(doing(gallery.clerk), form);
  expect(await markAsSecond(doing(gallery.clerk), form)).toEqual(first);
  expect((await findByCode(gallery.clerk, 'TERN-10-CI-I'))?.onHand).toBe(1);
  expect((await findByCode(gallery.clerk, 'TERN-10-CI'))?.onHand).toBe(0);
});

test('refused, in this order: not allowed, unknown, a second already, more than are here', async () => {
  const second = await db().sku.findUniqueOrThrow({ where: { code: 'TERN-10-CI-S' } });
  const refusals = [
    await markAsSecond(doing(gallery.maker), marking({ skuId: randomUUID() })),
    await markAsSecond(doing(gallery.clerk), marking({ skuId: randomUUID() })),
    await markAsSecond(doing(gallery.clerk), marking({ skuId: second.id, quantity: 99 })),
    await markAsSecond(doing(gallery.clerk), marking()),
  ];
  expect(refusals.map((each) => !each.ok && each.refusal.code)).toEqual([
    ...['not_allowed', 'unknown_piece', 'second_already', 'not_enough_here'],
  ]);
});

test('pieces of an edition come by the next numbers, and no more than it has', async () => {
  const two = await correctStock(doing(gallery.clerk), coming({ pieces: 2 }));
  expect(two).toMatchObject({ ok: true, value: { onHand: 2 } });
  const beyond = await correctStock(doing(gallery.clerk), coming({ pieces: 2 }));
  expect(beyond).toMatchObject({ refusal: { code: 'beyond_edition', size: 3, came: 2 } });
  const proof = await correctStock(doing(gallery.clerk), coming({ number: 'AP 1/1' }));
  expect(proof.ok).toBe(true);
  const where = { skuIds: [heron.skuId], placeId: gallery.counterId };
  expect((await readNumbersAt(db(), where)).get(heron.skuId)).toEqual([1, 2, 4]);
});

test('two who bring the last number at once bring it once', async () => {
  const both = await Promise.all([
    correctStock(doing(gallery.clerk), coming()),
    correctStock(doing(gallery.second), coming()),
  ]);
  expect(both.map((each) => each.ok).sort()).toEqual([false, true]);
  const where = { skuIds: [heron.skuId], placeId: gallery.counterId };
  expect((await readNumbersAt(db(), where)).get(heron.skuId)).toEqual([1, 2, 3, 4]);
});

test('what breaks leaves its number empty, and a second of an edition is numbered no more', async () => {
  const broken = coming({ reason: 'broken', number: '1' });
  expect((await correctStock(doing(gallery.clerk), broken)).ok).toBe(true);
  const again = await correctStock(doing(gallery.clerk), coming({ number: '1' }));
  expect(again).toMatchObject({ refusal: { code: 'number_came_before' } });
  const unnumbered = await markAsSecond(doing(gallery.clerk), marking({ skuId: heron.skuId }));
  expect(unnumbered).toMatchObject({ refusal: { code: 'which_number' } });
  const gone = marking({ skuId: heron.skuId, editionNumber: 1 });
  expect(await markAsSecond(doing(gallery.clerk), gone)).toMatchObject({
    refusal: { code: 'number_not_here' },
  });
  const marked = marking({ skuId: heron.skuId, editionNumber: 2 });
  expect((await markAsSecond(doing(gallery.clerk), marked)).ok).toBe(true);
  const where = { skuIds: [heron.skuId], placeId: gallery.counterId };
  expect((await readNumbersAt(db(), where)).get(heron.skuId)).toEqual([3, 4]);
  expect(await db().edition.count()).toBe(1);
});

test.each([
  [
    'a second is never a first again',
    `UPDATE "Sku" SET grade = 'first', "firstSkuId" = NULL WHERE code = 'TERN-10-CI-S'`,
    'second_keeps_its_mark',
  ],
  [
    'a second is no edition',
    `UPDATE "Sku" SET making = 'edition' WHERE code = 'TERN-10-CI-S'`,
    'second_is_no_edition',
  ],
  [
    'the size of an edition is never changed',
    `UPDATE "Edition" SET size = 9`,
    'edition_size_is_never_changed',
  ],
])('by SQL: %s', async (_label, statement, rule) => {
  const error = await sql(statement).catch((reason: unknown) => reason);
  expect(constraintOf(error)).toBe(rule);
});
