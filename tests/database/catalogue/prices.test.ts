import { randomUUID } from 'node:crypto';
import { beforeAll, expect, test } from 'vitest';
import { listPricesToCome, listTagsToRewrite, previewRaise } from '@/lib/catalogue/reads/prices';
import type { RaiseWish } from '@/lib/catalogue/input/prices';
import { callOffPrice, changePrice, raisePrices, tickTags } from '@/lib/catalogue/writes/prices';
import { addDays, dayOf } from '@/lib/dates/rules';
import { now } from '@/lib/platform/clock';
import { db } from '@/lib/platform/db/client';
import { constraintOf } from '@/lib/platform/db/errors';
import { readPiecesForSale } from '@/lib/sales/reads';
import { confirmStockList, showStockList } from '@/lib/stock/writes/stock-list';
import {
  aPieceHere,
  doing,
  openGallery,
  type OpenGallery,
  type TestPiece,
} from '@/tests/database/sales/open-gallery';
import { sql } from '@/tests/helpers/database';

const at = now();
const today = dayOf(at, 'America/Los_Angeles');
const later = addDays(today, 10);
let gallery: OpenGallery;
let tern: TestPiece;
let fern: TestPiece;
beforeAll(async () => {
  gallery = await openGallery();
  const piece = { sku: 'TERN-10-CI', title: 'Tern over Shoals', priceCents: 13_800n, here: 4 };
  tern = await aPieceHere(gallery, piece);
  fern = await aPieceHere(gallery, { ...piece, sku: 'FERN-5', title: 'Sword Fern', here: 0 });
});

const owner = () => doing(gallery.owner, at);
const setting = (over: object = {}) => ({
  ...{ requestKey: randomUUID(), skuId: tern.skuId, priceCents: 15_000n, fromOn: today },
  ...{ reason: 'the glaze costs more', ...over },
});

async function priceOn(on: typeof today, piece = tern): Promise<bigint | undefined> {
  const from = { placeId: gallery.counterId, on, lengthUnit: 'in' as const };
  return (await readPiecesForSale(db(), [piece.skuId], from)).get(piece.skuId)?.priceCents;
}

test('refused, in this order: not allowed, unknown, a day that is over, the same price', async () => {
  const past = { fromOn: addDays(today, -1) };
  const refusals = [
    await changePrice(doing(gallery.clerk, at), setting({ skuId: randomUUID() })),
    await changePrice(owner(), setting({ skuId: randomUUID(), ...past })),
    await changePrice(owner(), setting({ priceCents: 13_800n, ...past })),
    await changePrice(owner(), setting({ priceCents: 13_800n })),
  ];
  expect(refusals.map((each) => !each.ok && each.refusal.code)).toEqual([
    ...['not_allowed', 'unknown_piece', 'in_the_past', 'same_price'],
  ]);
  expect(await db().priceChange.count()).toBe(0);
});

test('a price holds from its day on, and the tag is on the list until it is ticked off', async () => {
  const form = setting();
  expect(await changePrice(owner(), form)).toEqual({ ok: true, value: { code: 'TERN-10-CI' } });
  expect(await changePrice(owner(), form)).toEqual({ ok: true, value: { code: 'TERN-10-CI' } });
  await changePrice(owner(), setting({ priceCents: 16_000n, fromOn: later }));
  expect(await Promise.all([addDays(today, -1), today, later].map((on) => priceOn(on)))).toEqual([
    ...[13_800n, 15_000n, 16_000n],
  ]);
  expect(await listTagsToRewrite(gallery.maker, today)).toMatchObject([
    { code: 'TERN-10-CI', tagCents: 13_800n, priceCents: 15_000n, pieces: 4 },
  ]);
  expect(await listPricesToCome(gallery.maker, today)).toMatchObject([
    { code: 'TERN-10-CI', beforeCents: 15_000n, priceCents: 16_000n, fromOn: later },
  ]);
  const ticking = { requestKey: randomUUID(), skuIds: [tern.skuId] };
  expect(await tickTags(doing(gallery.books, at), ticking)).toMatchObject({ ok: false });
  expect(await tickTags(doing(gallery.maker, at), ticking)).toMatchObject({ value: { ticked: 1 } });
  expect(await listTagsToRewrite(gallery.maker, today)).toEqual([]);
});

test('a price that is to come can be called off, one that holds cannot', async () => {
  const [coming] = await listPricesToCome(gallery.owner, today);
  const held = await db().priceChange.findFirstOrThrow({
    where: { NOT: { id: coming?.id ?? '' } },
  });
  const off = (changeId: string) => callOffPrice(owner(), { requestKey: randomUUID(), changeId });
  expect(await off(held.id)).toMatchObject({ refusal: { code: 'holds_already' } });
  expect(await off(coming?.id ?? '')).toMatchObject({ ok: true });
  expect(await off(coming?.id ?? '')).toMatchObject({ refusal: { code: 'unknown_piece' } });
  expect(await priceOn(later)).toBe(15_000n);
});

const wish: RaiseWish = {
  ...{ kind: 'relief_tile', designId: null, size: '254000x254000', percent: '10', step: 'whole' },
};
const raising = async (over: object = {}) => {
  const { sha256: shownSha256 } = await previewRaise(gallery.owner, wish, today);
  const rest = { requestKey: randomUUID(), fromOn: today, reason: '', shownSha256 };
  return { ...wish, ...rest, ...over };
};

test('many prices are raised as they were shown, or not at all', async () => {
  const shown = await previewRaise(gallery.owner, wish, today);
  expect(shown.prices.map((each) => [each.code, each.priceCents, each.newCents])).toEqual([
    ['FERN-5', 13_800n, 15_200n],
    ['TERN-10-CI', 15_000n, 16_500n],
  ]);
  const form = await raising();
  await changePrice(owner(), setting({ skuId: fern.skuId, priceCents: 14_000n }));
  expect(await raisePrices(owner(), form)).toMatchObject({ refusal: { code: 'prices_moved' } });
  const both = await raising();
  const twice = await Promise.all([raisePrices(owner(), both), raisePrices(owner(), both)]);
  expect(twice).toEqual([1, 2].map(() => ({ ok: true, value: { changed: 2 } })));
  expect(await Promise.all([priceOn(today), priceOn(today, fern)])).toEqual([16_500n, 15_400n]);
});

test('nobody raises prices but the owner, and nothing is said when nothing would change', async () => {
  const refusals = [
    await raisePrices(doing(gallery.clerk, at), await raising()),
    await raisePrices(owner(), await raising({ fromOn: addDays(today, -1) })),
    await raisePrices(owner(), await raising({ kind: 'lamp' })),
  ];
  expect(refusals.map((each) => !each.ok && each.refusal.code)).toEqual([
    ...['not_allowed', 'in_the_past', 'no_pieces_meant'],
  ]);
});

async function bringIn(text: string) {
  const file = { fileName: 'list.csv', bytes: Buffer.from(text) };
  const shown = await showStockList(owner(), { requestKey: randomUUID(), ...file });
  if (!shown.ok) return shown;
  const { stockListId } = shown.value;
  const { planSha256 } = await db().stockList.findUniqueOrThrow({ where: { id: stockListId } });
  const yes = { requestKey: randomUUID(), stockListId, planSha256, leaveRefusedOut: false };
  return confirmStockList(owner(), yes);
}

test('a list changes a dated price from today, and what it cost before stays known', async () => {
  expect(await bringIn('code,price,here\nTERN-10-CI,170.00,5\n')).toMatchObject({ ok: true });
  expect(await priceOn(today)).toBe(17_000n);
  expect(await priceOn(addDays(today, -1))).toBe(13_800n);
  const sku = await db().sku.findUniqueOrThrow({ where: { code: 'TERN-10-CI' } });
  expect(sku.priceCents).toBe(13_800n);
  expect(await bringIn('code,price\nTERN-10-CI,170.00\n')).toMatchObject({
    refusal: { code: 'nothing_to_do' },
  });
});

test('by SQL: no price is below nothing, and one price holds from a day', async () => {
  const below = await sql(`UPDATE "PriceChange" SET "priceCents" = -1`).catch((e: unknown) => e);
  expect(constraintOf(below)).toBe('new_price_is_not_negative');
  const again = await sql(
    `INSERT INTO "PriceChange" SELECT gen_random_uuid(), "skuId", "fromOn", 1, 1, '', "staffId", at
     FROM "PriceChange" LIMIT 1`,
  ).catch((e: unknown) => e);
  expect(String(again)).toContain('PriceChange_skuId_fromOn_key');
});
