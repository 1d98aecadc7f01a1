import { beforeEach, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { listPiecesToMake } from '@/lib/studio/reads';
import { listSoldOut } from '@/lib/studio/reads/make-next';
import { loseJobPieces, moveJobOn, openJob } from '@/lib/studio/writes';
import { startAfresh } from '../../helpers/database';
import {
  aPieceHere,
  aSale,
  doing,
  openGallery,
  type OpenGallery,
  sellNow,
} from '../sales/open-gallery';
import { aKey } from './a-studio';

let gallery: OpenGallery;

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
});

async function soldHere(
  sku: string,
  title: string,
  { here, sold }: { here: number; sold: number },
) {
  const piece = await aPieceHere(gallery, { sku, title, priceCents: 4_000n, here });
  const sale = await sellNow(doing(gallery.clerk), aSale([{ piece, quantity: sold }]));
  if (!sale.ok) throw new Error(`The sale was refused: ${sale.refusal.code}`);
  return piece.skuId;
}

function soldOutOn(todayOn: '2026-11-20' | '2026-12-19' | '2026-12-20') {
  return listSoldOut(gallery.maker, { floorId: gallery.counterId, todayOn, most: 6 });
}

test('what sold lately and is gone is told, what sold most first', async () => {
  await soldHere('TERN-5', 'Tern over Shoals', { here: 2, sold: 2 });
  await soldHere('FERN-5', 'Sword Fern', { here: 5, sold: 5 });
  await soldHere('STAR-5', 'Tide Pool Star', { here: 3, sold: 2 });
  await aPieceHere(gallery, { sku: 'FOG-5', title: 'Fog & Firs', priceCents: 4_000n, here: 0 });
  const told = (await soldOutOn('2026-11-20')).map((one) => [one.code, one.sold, one.what]);
  expect(told).toEqual([
    ['FERN-5', 5, 'relief tile, celadon over iron slip'],
    ['TERN-5', 2, 'relief tile, celadon over iron slip'],
  ]);
});

test('a sale counts for thirty days', async () => {
  await soldHere('TERN-5', 'Tern over Shoals', { here: 1, sold: 1 });
  expect(await soldOutOn('2026-12-19')).toHaveLength(1);
  expect(await soldOutOn('2026-12-20')).toHaveLength(0);
});

test('a one-off is meant to be gone', async () => {
  const skuId = await soldHere('OTTER-1', 'Otter’s Wake', { here: 1, sold: 1 });
  await db().sku.update({ where: { id: skuId }, data: { making: 'one_off' } });
  expect(await soldOutOn('2026-11-20')).toEqual([]);
});

test('what is in the making is counted without what is finished or lost', async () => {
  const skuId = await soldHere('TERN-5', 'Tern over Shoals', { here: 1, sold: 1 });
  const maker = doing(gallery.maker);
  await db().place.create({ data: { name: 'Kiln shed', kind: 'studio' } });
  const job = { title: 'Terns', technique: 'thrown', pieces: 8, skuId } as const;
  const opened = await inTransaction((tx) => openJob(tx, maker, job));
  if (!opened.ok) throw new Error('The job was not opened.');
  for (let fromPosition = 0; fromPosition <= 7; fromPosition += 1) {
    const touch = { requestKey: aKey(), jobId: opened.value.id, fromPosition, pieces: 3 };
    expect((await moveJobOn(maker, touch)).ok).toBe(true);
  }
  const lost = { cause: 'handling', note: '', requestKey: aKey(), fromPosition: 1 } as const;
  const moved = { requestKey: aKey(), jobId: opened.value.id, fromPosition: 0, pieces: 1 };
  expect((await moveJobOn(maker, moved)).ok).toBe(true);
  const gone = await loseJobPieces(maker, { ...lost, jobId: opened.value.id, pieces: 1 });
  expect(gone).toMatchObject({ ok: true, value: { begunAnew: 1 } });
  const [told] = await soldOutOn('2026-11-20');
  expect(told).toMatchObject({ code: 'TERN-5', sold: 1, inMaking: 5 });
});

test('a maker chooses what to make from the stock list, by title', async () => {
  await aPieceHere(gallery, { sku: 'TERN-5', title: 'Tern', priceCents: 4_000n, here: 0 });
  await aPieceHere(gallery, { sku: 'FERN-5', title: 'Fern', priceCents: 4_000n, here: 0 });
  const words = (await listPiecesToMake(gallery.maker)).map((one) => one.words);
  expect(words).toEqual([
    'Fern, celadon over iron slip · FERN-5',
    'Tern, celadon over iron slip · TERN-5',
  ]);
  await expect(listPiecesToMake(gallery.books)).rejects.toThrow();
});
