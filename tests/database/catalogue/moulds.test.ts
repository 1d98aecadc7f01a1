import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { findEdition, listEditions } from '@/lib/catalogue/reads/editions';
import { findMould, listCasts, listMoulds } from '@/lib/catalogue/reads/moulds';
import { stateEdition } from '@/lib/catalogue/writes/editions';
import { addMould, recordCasts, retireMould } from '@/lib/catalogue/writes/moulds';
import { db } from '@/lib/platform/db/client';
import { constraintOf } from '@/lib/platform/db/errors';
import { correctStock } from '@/lib/stock/writes/correct-stock';
import {
  aPieceHere,
  doing,
  openGallery,
  type OpenGallery,
  type TestPiece,
} from '@/tests/database/sales/open-gallery';
import { sql } from '@/tests/helpers/database';

let gallery: OpenGallery;
let heron: TestPiece;
let fern: TestPiece;
let designId: string;
beforeAll(async () => {
  gallery = await openGallery();
  const piece = { sku: 'HERON-W', title: 'Heron at Low Water', priceCents: 40_000n, here: 0 };
  heron = await aPieceHere(gallery, piece);
  fern = await aPieceHere(gallery, { ...piece, sku: 'FERN-5', title: 'Sword Fern', here: 3 });
  designId = (await db().sku.findUniqueOrThrow({ where: { id: heron.skuId } })).designId;
});

const clerk = () => doing(gallery.clerk);
const aMould = (over: object = {}) => ({
  ...{ requestKey: randomUUID(), code: 'HERON-M1', designId, lifeCasts: 100, begunWith: 60 },
  ...{ madeOn: '2026-03-01' as const, note: '', ...over },
});
const mouldId = async () => (await findMould(gallery.owner, 'heron-m1'))?.id ?? '';
const casting = async (over: object = {}) => ({
  ...{ requestKey: randomUUID(), mouldId: await mouldId(), casts: 9 },
  ...{ on: '2026-11-18' as const, ...over },
});

test('a mould is written down once; refused in order', async () => {
  const refusals = [
    await addMould(doing(gallery.maker), aMould({ designId: randomUUID() })),
    await addMould(clerk(), aMould({ designId: randomUUID(), madeOn: '2027-01-01' })),
    await addMould(clerk(), aMould({ madeOn: '2027-01-01' })),
  ];
  expect(refusals.map((each) => !each.ok && each.refusal.code)).toEqual([
    ...['not_allowed', 'unknown_design', 'day_to_come'],
  ]);
  const form = aMould();
  const both = await Promise.all([addMould(clerk(), form), addMould(clerk(), form)]);
  expect(both).toEqual([1, 2].map(() => ({ ok: true, value: { code: 'HERON-M1' } })));
  expect(await addMould(clerk(), aMould())).toMatchObject({
    refusal: { code: 'mould_code_taken' },
  });
});

test('casts are counted on; refused in order', async () => {
  const refusals = [
    await recordCasts(doing(gallery.books), await casting()),
    await recordCasts(clerk(), await casting({ mouldId: randomUUID() })),
    await recordCasts(clerk(), await casting({ on: '2026-12-24' })),
    await recordCasts(clerk(), await casting({ on: '2026-02-28' })),
  ];
  expect(refusals.map((each) => !each.ok && each.refusal.code)).toEqual([
    ...['not_allowed', 'unknown_mould', 'day_to_come', 'before_it_was_made'],
  ]);
  const two = await Promise.all([
    recordCasts(doing(gallery.maker), await casting()),
    recordCasts(clerk(), await casting()),
  ]);
  expect(two.every((each) => each.ok)).toBe(true);
  expect(await findMould(gallery.maker, 'HERON-M1')).toMatchObject({
    ...{ soFar: 78, left: 22, wear: 'good', lastCastOn: '2026-11-18', editions: [] },
  });
  expect(await listCasts(gallery.maker, await mouldId())).toHaveLength(2);
});

const stating = (over: object = {}) => ({
  ...{ requestKey: randomUUID(), skuId: heron.skuId, size: 50, artistProofs: 2, mouldId: null },
  ...over,
});

test('an edition is stated once, before its first piece comes; refused in order', async () => {
  const other = await db().sku.findUniqueOrThrow({ where: { id: fern.skuId } });
  const ofFern = aMould({ code: 'FERN-M1', designId: other.designId });
  expect((await addMould(clerk(), ofFern)).ok).toBe(true);
  const fernMould = await findMould(gallery.owner, 'FERN-M1');
  const refusals = [
    await stateEdition(doing(gallery.maker), stating()),
    await stateEdition(clerk(), stating({ skuId: randomUUID() })),
    await stateEdition(clerk(), stating({ skuId: fern.skuId })),
    await stateEdition(clerk(), stating({ mouldId: fernMould?.id })),
  ];
  expect(refusals.map((each) => !each.ok && each.refusal.code)).toEqual([
    ...['not_allowed', 'unknown_piece', 'pieces_came_before', 'mould_of_another_design'],
  ]);
  const stated = await stateEdition(clerk(), stating({ mouldId: await mouldId() }));
  expect(stated).toEqual({ ok: true, value: { code: 'HERON-W' } });
  expect(await stateEdition(clerk(), stating())).toMatchObject({
    refusal: { code: 'stated_already', size: 50 },
  });
});

test('where each number is, is told: here, sold or gone, and what the mould still gives', async () => {
  const coming = (over: object) => ({
    ...{ requestKey: randomUUID(), skuId: heron.skuId, reason: 'made' as const, note: '' },
    ...{ pieces: 1, ...over },
  });
  await correctStock(clerk(), coming({ pieces: 3 }));
  await correctStock(clerk(), coming({ reason: 'broken', number: '2/50' }));
  expect(await findEdition(gallery.maker, heron.skuId)).toMatchObject({
    ...{ size: 50, came: 3, standing: 2, mould: 'HERON-M1', castsLeft: 22, toCome: 49 },
    ...{ places: [{ place: 'Gallery floor', numbers: [1, 3] }], sold: [], gone: [2] },
  });
  expect(await findEdition(gallery.maker, fern.skuId)).toBeNull();
  expect(await listEditions(gallery.books)).toHaveLength(1);
});

test('a retired mould gives nothing more', async () => {
  const retiring = { requestKey: randomUUID(), mouldId: await mouldId() };
  expect(await retireMould(doing(gallery.maker), retiring)).toMatchObject({ ok: false });
  expect((await retireMould(clerk(), retiring)).ok).toBe(true);
  expect(await recordCasts(clerk(), await casting())).toMatchObject({
    refusal: { code: 'retired_already', retiredOn: '2026-11-20' },
  });
  expect((await listMoulds(gallery.books)).map((each) => each.code)).toEqual([
    ...['FERN-M1', 'HERON-M1'],
  ]);
});

test.each([
  ['casts are counted, not taken back', `UPDATE "MouldCast" SET casts = 0`],
  ['an edition is never deleted', `DELETE FROM "Edition"`],
  [
    'an edition is stated first',
    `INSERT INTO "Edition" ("skuId", size, "statedOn")
    SELECT id, 5, '2026-11-20' FROM "Sku" WHERE code = 'FERN-5'`,
  ],
])('by SQL: %s', async (_label, statement) => {
  const error = await sql(statement).catch((reason: unknown) => reason);
  expect(error).toBeInstanceOf(Error);
  expect(constraintOf(error) ?? String(error)).toMatch(/cast_is_counted|edition_|never|changed/);
});
