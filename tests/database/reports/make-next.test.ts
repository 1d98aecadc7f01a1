import { beforeEach, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { listMakeNext } from '@/lib/reports/reads/make-next';
import { startAfresh } from '../../helpers/database';
import {
  aPieceHere,
  aSale,
  doing,
  openGallery,
  type OpenGallery,
  sellNow,
} from '../sales/open-gallery';

let gallery: OpenGallery;

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
});

const zone = 'America/Los_Angeles';

function list(todayOn: '2026-11-20' | '2026-11-30' = '2026-11-20') {
  return listMakeNext(gallery.owner, { floorId: gallery.counterId, todayOn, zone });
}

async function sold(sku: string, { here, taken }: { here: number; taken: number }) {
  const piece = await aPieceHere(gallery, { sku, title: sku, priceCents: 4_000n, here });
  if (taken === 0) return piece;
  const sale = await sellNow(doing(gallery.clerk), aSale([{ piece, quantity: taken }]));
  if (!sale.ok) throw new Error(`The sale was refused: ${sale.refusal.code}`);
  return piece;
}

test('an empty gallery has nothing to reckon', async () => {
  expect(await list()).toEqual({ pieces: [], toBegin: 0, lookedAt: 0 });
});

test('what sold out comes first, what is there in plenty not at all', async () => {
  await sold('TERN-5', { here: 6, taken: 6 });
  await sold('FERN-5', { here: 3, taken: 2 });
  await sold('STAR-5', { here: 60, taken: 0 });
  const { pieces, lookedAt } = await list();
  expect(lookedAt).toBe(3);
  expect(pieces.map((piece) => piece.code)).toEqual(['TERN-5', 'FERN-5']);
  expect(pieces[0]).toMatchObject({ here: 0, sold: 6, daysOnOffer: 1, technique: 'press_moulded' });
});

test('days without one do not count against it', async () => {
  await sold('TERN-5', { here: 2, taken: 2 });
  const { pieces } = await list('2026-11-30');
  expect(pieces[0]).toMatchObject({ sold: 2, daysOnOffer: 1 });
});

test('holds, orders and other places are in the reckoning', async () => {
  const piece = await sold('TERN-5', { here: 4, taken: 3 });
  const elsewhere = { skuId: piece.skuId, placeId: gallery.backRoomId, at: new Date('2026-11-21') };
  await db().stockMovement.create({ data: { ...elsewhere, quantity: 2, reason: 'made' } });
  const away = await db().place.create({ data: { name: 'Another gallery', kind: 'consignee' } });
  const given = { ...elsewhere, placeId: away.id };
  await db().stockMovement.create({ data: { ...given, quantity: 5, reason: 'made' } });
  const { id: collectorId } = await db().collector.create({
    data: { name: 'Wren Alder', createdAt: elsewhere.at },
  });
  await db().specialOrder.create({
    data: {
      ...{ collectorId, skuId: piece.skuId, quantity: 7, unitPriceCents: 4_000n },
      ...{
        depositCents: 0n,
        readyAboutOn: new Date('2026-12-20'),
        askedOn: new Date('2026-11-20'),
      },
      ...{ staffId: gallery.clerk.id, at: elsewhere.at },
    },
  });
  const [told] = (await list()).pieces;
  expect(told).toMatchObject({ here: 1, elsewhere: 2, ordered: 7, free: -4 });
});

test('one-offs and seconds are not made again', async () => {
  const gone = await sold('OTTER-1', { here: 1, taken: 1 });
  await db().sku.update({ where: { id: gone.skuId }, data: { making: 'one_off' } });
  const flawed = await sold('FERN-2', { here: 1, taken: 1 });
  await db().sku.update({
    where: { id: flawed.skuId },
    data: { grade: 'irregular', flaw: 'a glaze skip at the foot' },
  });
  expect((await list()).pieces).toEqual([]);
});

test('everyone who sees the stock sees it', async () => {
  await expect(
    listMakeNext(gallery.maker, { floorId: gallery.counterId, todayOn: '2026-11-20', zone }),
  ).resolves.toMatchObject({ lookedAt: 0 });
});
