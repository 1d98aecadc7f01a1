import { beforeEach, expect, test } from 'vitest';
import { labelsPdf } from '@/lib/documents/labels/sheet';
import { findLabels, labelsMost } from '@/lib/documents/reads/labels';
import { listPlacesWithPieces } from '@/lib/documents/reads/label-places';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';
import { startAfresh } from '@/tests/helpers/database';
import { aPieceHere, openGallery, type OpenGallery } from '../sales/open-gallery';

let gallery: OpenGallery;

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
  await aPieceHere(gallery, { sku: 'TS-10-CI', title: 'Tern', priceCents: 18_000n, here: 3 });
  await aPieceHere(gallery, { sku: 'SF-08-MW', title: 'Fern', priceCents: 9_650n, here: 2 });
});

const typed = (code: string, quantity = 1) => ({ code, number: null, quantity });

test('a place gives a label for each piece that stands there', async () => {
  const { pieces } = await findLabels(gallery.maker, { placeId: gallery.counterId });
  expect(pieces.map((piece) => piece.sku)).toEqual([
    ...['SF-08-MW', 'SF-08-MW', 'TS-10-CI', 'TS-10-CI', 'TS-10-CI'],
  ]);
  const places = await listPlacesWithPieces(gallery.maker);
  expect(places).toEqual([{ id: gallery.counterId, words: 'Gallery floor (5 pieces)' }]);
});

test('typed pieces come in their order with their copies; what nobody knows is said', async () => {
  const asked = { typed: [typed('TS-10-CI', 2), typed('XX-1'), typed('SF-08-MW')] };
  const found = await findLabels(gallery.clerk, asked);
  expect(found.unknown).toEqual(['XX-1']);
  expect(found.pieces.map((piece) => piece.sku)).toEqual(['TS-10-CI', 'TS-10-CI', 'SF-08-MW']);
});

test('a label tells the price of the day', async () => {
  const { id: skuId } = await db().sku.findUniqueOrThrow({ where: { code: 'TS-10-CI' } });
  const change = { skuId, fromOn: new Date('2020-01-01'), priceCents: 21_000n };
  const by = { staffId: gallery.owner.id, at: new Date('2020-01-01T12:00:00Z') };
  await db().priceChange.create({ data: { ...change, beforeCents: 18_000n, ...by } });
  const { pieces } = await findLabels(gallery.clerk, { typed: [typed('TS-10-CI')] });
  expect(pieces[0]?.priceCents).toBe(21_000n);
});

test('more labels than are printed at once are cut off, and said to be', async () => {
  const found = await findLabels(gallery.clerk, { typed: [typed('TS-10-CI', 999)] });
  expect(found).toMatchObject({ isCutOff: true });
  expect(found.pieces).toHaveLength(labelsMost);
  const print = { kind: 'price_tag', sheet: 'letter-30', codes: 'none', firstAt: 1 } as const;
  const bytes = await labelsPdf(found.pieces.slice(0, 61), await getGallery(), print);
  const pages = Buffer.from(bytes)
    .toString('latin1')
    .match(/\/Type \/Page\b(?!s)/g);
  expect(pages).toHaveLength(3);
});
