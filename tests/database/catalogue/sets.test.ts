import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { keepSetInput } from '@/lib/catalogue/input/sets';
import { readSetByCode, readSetsOf } from '@/lib/catalogue/reads';
import { findPieceFacts, listNames } from '@/lib/catalogue/reads/piece-facts';
import { findSet, listSets } from '@/lib/catalogue/reads/sets';
import { addPiece, changePieceFacts, endColourway } from '@/lib/catalogue/writes/pieces';
import { endSet, keepSet } from '@/lib/catalogue/writes/sets';
import { db } from '@/lib/platform/db/client';
import {
  aPieceHere,
  doing,
  openGallery,
  type OpenGallery,
  type TestPiece,
} from '@/tests/database/sales/open-gallery';

let gallery: OpenGallery;
let tern: TestPiece;
let fern: TestPiece;
beforeAll(async () => {
  gallery = await openGallery();
  const piece = { sku: 'TERN-10', title: 'Tern over Shoals', priceCents: 13_800n, here: 5 };
  tern = await aPieceHere(gallery, piece);
  fern = await aPieceHere(gallery, { ...piece, sku: 'FERN-10', title: 'Sword Fern', here: 3 });
});

const clerk = () => doing(gallery.clerk);
const aSet = (over: object = {}) =>
  keepSetInput.parse({
    ...{ requestKey: randomUUID(), code: 'shore-set', title: 'The Shore', priceCents: '360' },
    ...{ maySplit: 'split_at_single_price', members: 'TERN-10 2\nFERN-10', ...over },
  });

test('refused, in this order: not allowed, unknown, a code that is taken, unknown pieces, too few', async () => {
  const refusals = [
    await keepSet(doing(gallery.maker), aSet({ code: 'TERN-10' })),
    await keepSet(clerk(), aSet({ setId: randomUUID(), code: 'TERN-10' })),
    await keepSet(clerk(), aSet({ code: 'TERN-10', members: 'TERN-99 2' })),
    await keepSet(clerk(), aSet({ members: 'TERN-99 2' })),
    await keepSet(clerk(), aSet({ members: 'TERN-10' })),
  ];
  expect(refusals.map((each) => !each.ok && each.refusal.code)).toEqual([
    ...['not_allowed', 'unknown_set', 'code_of_a_piece', 'unknown_code', 'too_few_pieces'],
  ]);
  expect(await db().pieceSet.count()).toBe(0);
});

test('a set is put together once, however often the form is sent', async () => {
  const form = aSet();
  const both = await Promise.all([keepSet(clerk(), form), keepSet(clerk(), form)]);
  expect(both).toEqual([1, 2].map(() => ({ ok: true, value: { code: 'SHORE-SET' } })));
  expect(await findSet(gallery.maker, 'shore-set', '2026-11-20')).toMatchObject({
    ...{ title: 'The Shore', priceCents: 36_000n, singleCents: 41_400n, whole: 2 },
    members: [
      { code: 'FERN-10', quantity: 1, priceCents: 13_800n, free: 3 },
      { code: 'TERN-10', quantity: 2, priceCents: 13_800n, free: 5 },
    ],
  });
  expect(await keepSet(clerk(), aSet())).toMatchObject({ refusal: { code: 'code_of_a_set' } });
});

test('the counter finds it by its code and by its pieces', async () => {
  const kept = await readSetByCode(db(), ' shore-SET ');
  expect(kept).toMatchObject({ maySplit: 'split_at_single_price', priceCents: 36_000n });
  expect(kept?.members).toHaveLength(2);
  expect(await readSetsOf(db(), [fern.skuId])).toEqual([kept]);
  const facts = await findPieceFacts(gallery.maker, tern.skuId, '2026-11-20');
  expect(facts?.sets).toEqual([{ code: 'SHORE-SET', title: 'The Shore' }]);
});

test('a set is changed, and ended; what was ended is found no more', async () => {
  const setId = (await readSetByCode(db(), 'SHORE-SET'))?.setId ?? '';
  const changed = aSet({ setId, priceCents: '', members: 'TERN-10 3' });
  expect((await keepSet(clerk(), changed)).ok).toBe(true);
  expect(await listSets(gallery.books, '2026-11-20')).toMatchObject([
    { priceCents: null, singleCents: 41_400n, whole: 1, members: [{ quantity: 3 }] },
  ]);
  const ending = () => ({ requestKey: randomUUID(), setId });
  expect(await endSet(doing(gallery.maker), ending())).toMatchObject({ ok: false });
  expect((await endSet(clerk(), ending())).ok).toBe(true);
  expect(await endSet(clerk(), ending())).toMatchObject({ refusal: { code: 'unknown_set' } });
  expect(await listSets(gallery.books, '2026-11-20')).toEqual([]);
  expect(await readSetByCode(db(), 'SHORE-SET')).toBeNull();
});

const aPiece = (over: object = {}) => ({
  ...{ requestKey: randomUUID(), code: 'OTTER-8', title: 'Otter Resting', kind: 'plaque' as const },
  ...{ colourway: 'Celadon over iron slip', widthUm: 203_200, heightUm: 254_000, depthUm: null },
  ...{ weightG: null, priceCents: 17_600n, costCents: null, making: 'open_stock' as const },
  ...{ gtin: '2000000000015', ...over },
});

test('a piece is written down by hand, its design made and its colourway found', async () => {
  const form = aPiece();
  const both = await Promise.all([addPiece(clerk(), form), addPiece(clerk(), form)]);
  expect(both).toEqual([1, 2].map(() => ({ ok: true, value: { code: 'OTTER-8' } })));
  expect(await listNames(gallery.clerk)).toEqual({
    titles: ['Otter Resting', 'Sword Fern', 'Tern over Shoals'],
    colourways: ['celadon over iron slip'],
  });
  const refusals = [
    await addPiece(doing(gallery.maker), aPiece()),
    await addPiece(clerk(), aPiece()),
    await addPiece(clerk(), aPiece({ code: 'SHORE-SET', gtin: null })),
    await addPiece(clerk(), aPiece({ code: 'OTTER-9' })),
  ];
  expect(refusals.map((each) => !each.ok && each.refusal.code)).toEqual([
    ...['not_allowed', 'sku_taken', 'sku_taken', 'gtin_taken'],
  ]);
});

test('what a label says is changed, and a colourway ends and is taken up again', async () => {
  const label = {
    ...{ requestKey: randomUUID(), skuId: tern.skuId, foodUse: 'decorative_only' as const },
    ...{ madeInYear: 2026, medium: 'stoneware, layered glazes', flaw: 'not kept for a first' },
  };
  expect((await changePieceFacts(clerk(), label)).ok).toBe(true);
  const facts = await findPieceFacts(gallery.maker, tern.skuId, '2026-11-20');
  expect(facts).toMatchObject({ foodUse: 'decorative_only', madeInYear: 2026, flaw: '' });
  const unknown = { ...label, requestKey: randomUUID(), skuId: randomUUID() };
  expect(await changePieceFacts(clerk(), unknown)).toMatchObject({ ok: false });
  const colourwayId = facts?.colourway.id ?? '';
  const ending = (endedOn: '2026-11-01' | null) => ({
    ...{ requestKey: randomUUID(), colourwayId, endedOn },
  });
  expect(await endColourway(doing(gallery.maker), ending(null))).toMatchObject({ ok: false });
  expect((await endColourway(clerk(), ending('2026-11-01'))).ok).toBe(true);
  const ended = await findPieceFacts(gallery.maker, tern.skuId, '2026-11-20');
  expect(ended?.colourway.endedOn).toBe('2026-11-01');
  expect((await endColourway(clerk(), ending(null))).ok).toBe(true);
});
