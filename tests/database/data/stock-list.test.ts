import { randomUUID } from 'node:crypto';
import { beforeEach, expect, test } from 'vitest';
import { findLoad } from '@/lib/data/reads';
import { askToStop } from '@/lib/data/writes';
import { beginStockList, carryStockList } from '@/lib/data/writes/carry-stock-list';
import { db } from '@/lib/platform/db/client';
import { showStockList } from '@/lib/stock/writes/stock-list';
import { sql, startAfresh } from '../../helpers/database';
import { aGallery, type TestGallery } from '../stock/a-gallery';
import { bytesOf } from './a-load';

let gallery: TestGallery;

beforeEach(async () => {
  await startAfresh();
  gallery = await aGallery();
});

const heading = 'code,title,kind,width,height,colourway,price,here';

async function begunList(lines: number) {
  const rows = Array.from(
    { length: lines },
    (_, at) => `TILE-${1_000 + at},Tile ${at % 50},relief tile,5,5,Moon white,44.00,2`,
  );
  const bytes = bytesOf([heading, ...rows].join('\n'));
  const shown = await showStockList(gallery.gallery, {
    ...{ requestKey: randomUUID(), fileName: 'stock.csv', bytes },
  });
  if (!shown.ok) throw new Error(shown.refusal.code);
  const { stockListId } = shown.value;
  const { planSha256 } = await db().stockList.findUniqueOrThrow({ where: { id: stockListId } });
  const begun = await beginStockList(gallery.gallery, { requestKey: randomUUID(), stockListId });
  if (!begun.ok) throw new Error(begun.refusal.code);
  return { ...begun.value, stockListId, planSha256, leaveRefusedOut: false };
}

const skus = () => sql('select 1 from "Sku"');
const told = (loadId: string) => findLoad(gallery.gallery.actor, loadId, gallery.gallery.at);

test('a stock list is brought in under the eyes of the gallery, and told when it is', async () => {
  const agreed = await begunList(3);
  expect(await told(agreed.loadId)).toMatchObject({ kind: 'stock', standing: 'going' });
  expect(await carryStockList(gallery.gallery, agreed)).toMatchObject({ ok: true });
  expect(await skus()).toHaveLength(3);
  expect(await told(agreed.loadId)).toMatchObject({
    ...{ standing: 'kept', rowsTotal: 3, rowsDone: 3 },
    outcome: 'It was brought in: 3 new, 0 changed, 0 the same, 0 refused.',
  });
});

test('a wish to stop leaves nothing of a list in stock, and it may be begun again', async () => {
  const agreed = await begunList(2_500);
  expect(await askToStop(gallery.gallery, agreed)).toMatchObject({ ok: true });
  expect(await told(agreed.loadId)).toMatchObject({ standing: 'stopping' });
  expect(await carryStockList(gallery.gallery, agreed)).toMatchObject({
    refusal: { code: 'stopped' },
  });
  expect(await skus()).toEqual([]);
  expect(await told(agreed.loadId)).toMatchObject({ standing: 'not_kept' });
  const { stockListId } = agreed;
  const again = await beginStockList(gallery.gallery, { requestKey: randomUUID(), stockListId });
  if (!again.ok) throw new Error(again.refusal.code);
  expect(await carryStockList(gallery.gallery, { ...agreed, ...again.value })).toMatchObject({
    ok: true,
  });
  expect(await skus()).toHaveLength(2_500);
});

test('the maker brings no list in and stops none, and the gallery sees no file of people', async () => {
  const agreed = await begunList(1);
  const request = { requestKey: randomUUID(), stockListId: agreed.stockListId };
  expect(await beginStockList(gallery.maker, request)).toMatchObject({
    refusal: { code: 'not_allowed' },
  });
  expect(await askToStop(gallery.maker, agreed)).toMatchObject({
    refusal: { code: 'not_allowed' },
  });
  await db().dataLoad.updateMany({ data: { kind: 'people' } });
  expect(await told(agreed.loadId)).toBeNull();
  expect(await askToStop(gallery.gallery, agreed)).toMatchObject({
    refusal: { code: 'not_allowed' },
  });
});

test('a list that is not here cannot be begun', async () => {
  const unknown = { requestKey: randomUUID(), stockListId: randomUUID() };
  expect(await beginStockList(gallery.gallery, unknown)).toMatchObject({
    refusal: { code: 'unknown_load' },
  });
});
