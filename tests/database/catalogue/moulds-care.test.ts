import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { findEdition } from '@/lib/catalogue/reads/editions';
import { readMouldsOf } from '@/lib/catalogue/reads/mould-rows';
import { findMould } from '@/lib/catalogue/reads/moulds';
import { stateEdition } from '@/lib/catalogue/writes/editions';
import { changeMould, lookAtMould } from '@/lib/catalogue/writes/mould-care';
import { addMould, recordCasts, retireMould, type MouldToAdd } from '@/lib/catalogue/writes/moulds';
import { readBefore } from '@/lib/orders/reads/before';
import { db } from '@/lib/platform/db/client';
import { constraintOf } from '@/lib/platform/db/errors';
import {
  aPieceHere,
  doing,
  openGallery,
  type OpenGallery,
} from '@/tests/database/sales/open-gallery';
import { sql } from '@/tests/helpers/database';

let gallery: OpenGallery;
let skuId: string;
let designId: string;
let fernDesignId: string;
beforeAll(async () => {
  gallery = await openGallery();
  const piece = { title: 'Heron at Low Water', priceCents: 40_000n, here: 0 };
  skuId = (await aPieceHere(gallery, { ...piece, sku: 'HERON-W' })).skuId;
  const fern = await aPieceHere(gallery, { ...piece, sku: 'FERN-5', title: 'Sword Fern' });
  const designOf = async (id: string) =>
    (await db().sku.findUniqueOrThrow({ where: { id } })).designId;
  designId = await designOf(skuId);
  fernDesignId = await designOf(fern.skuId);
});

const clerk = () => doing(gallery.clerk);
const maker = () => doing(gallery.maker);
const code = (result: { ok: boolean; refusal?: { code: string } }) =>
  result.ok ? 'ok' : result.refusal?.code;
const aMould = (over: Partial<MouldToAdd> & { code: string }): MouldToAdd => ({
  ...{ requestKey: randomUUID(), designId, lifeCasts: 100, begunWith: 20, note: '' },
  ...{ madeOn: '2026-03-01' as const, ...over },
});
const idOf = async (named: string) => (await findMould(gallery.owner, named))?.id ?? '';

test('a mould says what it was made from; refused in order', async () => {
  const added = [
    await addMould(clerk(), aMould({ code: 'HERON-P', kind: 'model' })),
    await addMould(clerk(), aMould({ code: 'FERN-P', kind: 'model', designId: fernDesignId })),
  ];
  expect(added.map(code)).toEqual(['ok', 'ok']);
  const fromId = await idOf('HERON-P');
  const master = aMould({ code: 'HERON-A', kind: 'master', fromId });
  expect(code(await addMould(clerk(), master))).toBe('ok');
  const masterId = await idOf('HERON-A');
  const refused = [
    await addMould(clerk(), {
      ...aMould({ code: 'X', fromId: randomUUID() }),
      madeOn: '2027-01-01',
    }),
    await addMould(clerk(), aMould({ code: 'X', fromId: randomUUID() })),
    await addMould(clerk(), aMould({ code: 'X', fromId: await idOf('FERN-P') })),
    await addMould(clerk(), aMould({ code: 'X', kind: 'master', fromId: masterId })),
  ];
  expect(refused.map(code)).toEqual([
    ...['day_to_come', 'unknown_source', 'source_of_another_design', 'not_made_from_that'],
  ]);
  const working = aMould({ code: 'HERON-M1', fromId: masterId, slipMl: 660 });
  expect(code(await addMould(clerk(), working))).toBe('ok');
  expect(await findMould(gallery.maker, 'HERON-A')).toMatchObject({
    ...{ kind: 'master', from: 'HERON-P', made: ['HERON-M1'], left: 0, wear: 'not_cast' },
  });
  expect(await findMould(gallery.maker, 'HERON-M1')).toMatchObject({
    ...{ kind: 'working', from: 'HERON-A', slipMl: 660, face: null, left: 80 },
  });
});

test('what is known of a mould changes, and never comes round to itself; refused in order', async () => {
  const changing = async (over: object = {}) => ({
    ...{ requestKey: randomUUID(), mouldId: await idOf('HERON-P'), kind: 'model' as const },
    ...{ fromId: null, slipMl: null, lifeCasts: 40, note: 'plaster', ...over },
  });
  const itself = { fromId: await idOf('HERON-A') };
  const refused = [
    await changeMould(maker(), await changing({ mouldId: randomUUID() })),
    await changeMould(clerk(), await changing({ mouldId: randomUUID() })),
    await changeMould(clerk(), await changing({ fromId: await idOf('HERON-M1') })),
    await changeMould(clerk(), await changing(itself)),
  ];
  expect(refused.map(code)).toEqual([
    ...['not_allowed', 'unknown_mould', 'not_made_from_that', 'made_from_itself'],
  ]);
  expect(code(await changeMould(clerk(), await changing()))).toBe('ok');
  expect(await findMould(gallery.owner, 'HERON-P')).toMatchObject({
    lifeCasts: 40,
    note: 'plaster',
  });
});

const looking = async (over: object = {}) => ({
  ...{ requestKey: randomUUID(), mouldId: await idOf('HERON-M1'), face: 'softening' as const },
  ...{ lookedOn: '2026-11-18' as const, note: 'the eye', ...over },
});

test('the last look says whether casts may be promised; refused in order', async () => {
  const refused = [
    await lookAtMould(doing(gallery.books), await looking({ mouldId: randomUUID() })),
    await lookAtMould(maker(), await looking({ mouldId: randomUUID() })),
    await lookAtMould(maker(), await looking({ lookedOn: '2026-12-24' })),
    await lookAtMould(maker(), await looking({ lookedOn: '2026-02-28' })),
  ];
  expect(refused.map(code)).toEqual([
    ...['not_allowed', 'unknown_mould', 'day_to_come', 'before_it_was_made'],
  ]);
  const form = await looking();
  const both = await Promise.all([lookAtMould(maker(), form), lookAtMould(maker(), form)]);
  expect(both.map(code)).toEqual(['ok', 'ok']);
  expect(await sql(`SELECT count(*)::int AS looks FROM "MouldLook"`)).toEqual([{ looks: 1 }]);
  expect(await findMould(gallery.maker, 'HERON-M1')).toMatchObject({
    ...{ face: 'softening', faceNote: 'the eye', lookedOn: '2026-11-18', left: 80 },
  });
});

const ordering = async () => {
  const { colourwayId } = await db().sku.findUniqueOrThrow({ where: { id: skuId } });
  const wanted = { designId, colourwayId, quantity: 6, technique: null, wantedOn: null };
  const before = await readBefore(db(), { ...wanted, kind: 'relief_tile' }, '2026-11-20');
  return before?.said.find(({ about }) => about === 'mould');
};

test('an order and an edition are told what a mould may still promise, and why not', async () => {
  const stating = async (mould: string) =>
    stateEdition(clerk(), {
      ...{ requestKey: randomUUID(), skuId, size: 50, artistProofs: 0 },
      mouldId: await idOf(mould),
    });
  expect(code(await stating('HERON-A'))).toBe('mould_of_another_design');
  expect(code(await stating('HERON-M1'))).toBe('ok');
  expect(await ordering()).toMatchObject({ mind: false });
  expect(code(await lookAtMould(maker(), await looking({ face: 'worn' })))).toBe('ok');
  const told = await ordering();
  expect(told).toMatchObject({ mind: true });
  expect(told?.words).toMatch(/has 0 casts left.*Its face is worn: nothing more is promised/);
  const edition = await findEdition(gallery.owner, skuId);
  expect(edition).toMatchObject({ castsLeft: 0 });
  expect(edition?.mouldSaid).toMatch(/face is worn/);
  expect((await readMouldsOf(db(), designId)).map((mould) => mould.code)).toEqual(['HERON-M1']);
});

test('nothing is cast from a model, nor from a mould that broke until it was looked at again', async () => {
  const casting = async (mould: string) =>
    recordCasts(maker(), {
      ...{ requestKey: randomUUID(), mouldId: await idOf(mould), casts: 3 },
      on: '2026-11-19' as const,
    });
  expect(code(await casting('HERON-P'))).toBe('not_cast_from');
  expect(code(await casting('HERON-M1'))).toBe('ok');
  const broken = await looking({ face: 'broken', lookedOn: '2026-11-19' });
  expect(code(await lookAtMould(maker(), broken))).toBe('ok');
  expect(code(await casting('HERON-M1'))).toBe('mould_is_broken');
  const mended = await looking({ face: 'sharp', lookedOn: '2026-11-20' });
  expect(code(await lookAtMould(maker(), mended))).toBe('ok');
  expect(code(await casting('HERON-M1'))).toBe('ok');
  const mouldId = await idOf('HERON-M1');
  expect(code(await retireMould(clerk(), { requestKey: randomUUID(), mouldId }))).toBe('ok');
  expect(code(await lookAtMould(maker(), await looking()))).toBe('retired_already');
});

test('the database keeps looks as they were, and no mould is its own model', async () => {
  const held = async (statement: string) =>
    sql(statement).then(
      () => null,
      (error: unknown) => constraintOf(error),
    );
  expect(await held(`UPDATE "MouldLook" SET face = 'sharp'`)).toBe('never_changed');
  expect(await held(`DELETE FROM "MouldLook"`)).toBe('never_changed');
  expect(await held(`UPDATE "Mould" SET "fromId" = id`)).toBe('mould_is_not_its_own_model');
  expect(await held(`UPDATE "Mould" SET "slipMl" = 0`)).toBe('mould_takes_slip');
});
