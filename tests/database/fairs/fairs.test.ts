import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, test } from 'vitest';
import { findFair, listFairs } from '@/lib/fairs/reads';
import { standingRows } from '@/lib/fairs/reads/standing';
import { keepFairInput, takeToFairInput } from '@/lib/fairs/input';
import { keepFair, setFairPrice } from '@/lib/fairs/writes';
import { countFairBack } from '@/lib/fairs/writes/count';
import { takeToFair } from '@/lib/fairs/writes/take';
import { takeListPdf } from '@/lib/documents/outside/take-list';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { getGallery } from '@/lib/platform/settings';
import { ok } from '@/lib/platform/result';
import { readPiecesForSale } from '@/lib/sales/reads';
import { pieceLine } from '@/lib/sales/rules';
import { priceSlip } from '@/lib/sales/rules/pricing';
import { recordSales } from '@/lib/sales/writes/record-sales';
import { sql, startAfresh } from '@/tests/helpers/database';
import {
  aPieceHere,
  doing,
  later,
  openGallery,
  type OpenGallery,
  type TestPiece,
} from '../sales/open-gallery';

let gallery: OpenGallery;
let tern: TestPiece;
let fairId: string;

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
  const names = { sku: 'TS-10-CI', title: 'Tern over Shoals', priceCents: 18_000n };
  tern = await aPieceHere(gallery, { ...names, here: 6 });
  const kept = await keepFair(doing(gallery.clerk), aFair());
  if (!kept.ok) expect.unreachable('A fair is written down.');
  fairId = kept.value.fairId;
});

function aFair(over: Record<string, unknown> = {}) {
  return keepFairInput.parse({
    ...{ requestKey: randomUUID(), name: 'Rain Market', town: 'Cedar Reach' },
    ...{ taxPlaceId: gallery.taxPlaceId, fromOn: '2026-11-20', untilOn: '2026-11-21' },
    ...{ feeCents: '100', minutes: '10', ...over },
  });
}

function along(pieces: string, over: Record<string, unknown> = {}) {
  const from = { fromId: gallery.counterId, fairId };
  return takeToFairInput.parse({ requestKey: randomUUID(), ...from, pieces, ...over });
}

async function standing(): Promise<Record<string, number>> {
  const rows = await sql<{ name: string; n: number }>(
    `select p.name, l."onHand" as n from "StockLevel" l join "Place" p on p.id = l."placeId"
     where l."skuId" = $1 and l."onHand" > 0 order by 1`,
    [tern.skuId],
  );
  return Object.fromEntries(rows.map((row) => [row.name, row.n]));
}

const place = 'Rain Market, Cedar Reach, 20 Nov 2026';

async function sheet() {
  const found = await findFair(gallery.owner, 1);
  return found ?? expect.unreachable('The fair is found.');
}

async function sellThere(quantity: number): Promise<void> {
  const { placeId } = (await sheet()).fair;
  await inTransaction<true, never>(async (tx) => {
    const asked = { placeId, on: '2026-11-20', lengthUnit: 'in' } as const;
    const piece = (await readPiecesForSale(tx, [tern.skuId], asked)).get(tern.skuId);
    if (!piece) return expect.unreachable('The piece is in the catalogue.');
    const priced = priceSlip([pieceLine(piece, quantity)], [], 'invoice');
    const tender = { kind: 'card' as const, amountCents: priced.totalCents, givenCents: null };
    await recordSales(tx, doing(gallery.clerk), [
      {
        ...{ ...priced, tenders: [{ ...tender, reference: '' }], channel: 'fair', placeId, fairId },
        ...{ taxPlaceId: gallery.taxPlaceId, collectorId: null, soldOn: '2026-11-20' },
      },
    ]);
    return ok(true);
  });
}

async function count(over: Partial<{ back: number; broken: number; missing: number }>) {
  const rows = standingRows((await sheet()).list).map(({ key, there }) => ({
    ...{ key, seen: there, back: 0, broken: 0, missing: 0, soldUnwritten: 0, ...over },
  }));
  return { requestKey: randomUUID(), fairId, toId: gallery.counterId, rows };
}

test('pieces go, are sold at the fair’s price, are counted back, and the fair closes', async () => {
  expect(await takeToFair(doing(gallery.clerk), along('ts-10-ci 4'))).toMatchObject({
    value: { pieces: 4 },
  });
  expect(await standing()).toEqual({ 'Gallery floor': 2, [place]: 4 });
  const price = { requestKey: randomUUID(), fairId, skuId: tern.skuId, price: 20_000n };
  expect(await setFairPrice(doing(gallery.clerk), price)).toMatchObject({ ok: true });
  await sellThere(2);

  const counted = await countFairBack(doing(gallery.clerk), await count({ back: 1, broken: 1 }));
  expect(counted).toMatchObject({ ok: true, value: { isClosed: true } });
  expect(await standing()).toEqual({ 'Gallery floor': 3 });
  const { fair, list, money, earning } = await sheet();
  expect(fair.closedAt).toEqual(later(0));
  expect(list).toMatchObject([{ out: 4, sold: 2, back: 1, lost: 1, there: 0 }]);
  expect(money).toMatchObject({ soldCents: 40_000n, makingCents: 9_000n, minutes: 600 });
  expect(earning).toMatchObject({ afterMakingCents: 21_000n, perHourCents: 2_100n });
  expect(await listFairs(gallery.owner)).toMatchObject([{ soldCents: 40_000n, standing: 0 }]);
  expect(await sql('select name from "Place" where "closedAt" is not null')).toEqual([
    { name: place },
  ]);
});

test('the take list is a paper', async () => {
  await takeToFair(doing(gallery.clerk), along('TS-10-CI 4'));
  const bytes = await takeListPdf(await sheet(), await getGallery());
  expect(Buffer.from(bytes).toString('latin1').startsWith('%PDF-')).toBe(true);
});

test('what still stands there keeps the fair open', async () => {
  await takeToFair(doing(gallery.clerk), along('TS-10-CI 4'));
  const counted = await countFairBack(doing(gallery.clerk), await count({ back: 3 }));
  expect(counted).toMatchObject({ value: { isClosed: false } });
  expect(await standing()).toEqual({ 'Gallery floor': 5, [place]: 1 });
});

test('a piece of an edition goes by its number and comes back by it', async () => {
  const fern = await aPieceHere(gallery, {
    ...{ sku: 'FN-12', title: 'Fern', priceCents: 30_000n, here: 0 },
  });
  await db().sku.update({ where: { id: fern.skuId }, data: { making: 'edition' } });
  const stated = { skuId: fern.skuId, size: 5, statedOn: new Date('2026-01-01') };
  await db().edition.create({ data: stated });
  for (const number of [1, 2]) {
    const moved = { skuId: fern.skuId, placeId: gallery.counterId, quantity: 1, reason: 'made' };
    await sql(
      `insert into "StockMovement" ("skuId", "placeId", quantity, reason, "editionNumber", at)
       values ($1, $2, $3, $4::"MovementReason", $5, now())`,
      [moved.skuId, moved.placeId, moved.quantity, moved.reason, number],
    );
  }
  const clerk = doing(gallery.clerk);
  expect(await takeToFair(clerk, along('FN-12'))).toMatchObject({
    refusal: { code: 'which_number', here: [1, 2] },
  });
  expect(await takeToFair(clerk, along('FN-12#5'))).toMatchObject({
    refusal: { code: 'number_elsewhere', number: 5 },
  });
  expect(await takeToFair(clerk, along('FN-12#2'))).toMatchObject({ ok: true });
  expect((await sheet()).list).toMatchObject([{ sku: 'FN-12', numbers: [2], there: 1 }]);
  expect(await countFairBack(clerk, await count({ back: 1 }))).toMatchObject({
    value: { isClosed: true },
  });
});

describe('refused, and nothing is written:', () => {
  async function moves(): Promise<number> {
    const rows = await sql<{ n: number }>('select count(*)::int as n from "StockTransfer"');
    return rows[0]?.n ?? 0;
  }

  test('each in its order', async () => {
    const asked = (over: Record<string, unknown>, pieces = 'TS-10-CI 99') => along(pieces, over);
    const nobody = randomUUID();
    const { maker, clerk } = gallery;
    const fairPlace = (await sheet()).fair.placeId;
    const refusals = [
      await takeToFair(doing(maker), asked({ fairId: nobody })),
      await takeToFair(doing(clerk), asked({ fairId: nobody, fromId: nobody })),
      await takeToFair(doing(clerk), asked({ fromId: fairPlace })),
      await takeToFair(doing(clerk), asked({}, 'XX-99')),
      await takeToFair(doing(clerk), asked({})),
    ].map((each) => (each.ok ? 'ok' : each.refusal.code));
    expect(refusals).toEqual([
      ...['not_allowed', 'unknown_fair', 'unknown_place', 'unknown_code', 'not_enough'],
    ]);
    expect(await moves()).toBe(0);
  });

  test('more back than stand there, and a count of a page that is older', async () => {
    await takeToFair(doing(gallery.clerk), along('TS-10-CI 4'));
    const [tooMany, older] = [await count({ back: 5 }), await count({ back: 4 })];
    await sellThere(1);
    expect(await countFairBack(doing(gallery.clerk), older)).toMatchObject({
      refusal: { code: 'fair_has_changed' },
    });
    expect(await countFairBack(doing(gallery.clerk), tooMany)).toMatchObject({ ok: false });
    expect(await standing()).toEqual({ 'Gallery floor': 2, [place]: 3 });
  });

  test('the same fair twice, a tax place nobody keeps, and a fair that is closed', async () => {
    const owner = doing(gallery.owner);
    expect(await keepFair(owner, aFair())).toMatchObject({ refusal: { code: 'fair_is_known' } });
    const nowhere = aFair({ taxPlaceId: randomUUID(), name: 'Elsewhere' });
    expect(await keepFair(owner, nowhere)).toMatchObject({
      refusal: { code: 'unknown_tax_place' },
    });
    expect(await countFairBack(owner, await count({}))).toMatchObject({ ok: true });
    expect(await takeToFair(owner, along('TS-10-CI'))).toMatchObject({
      refusal: { code: 'fair_is_closed' },
    });
    const price = { requestKey: randomUUID(), fairId, skuId: tern.skuId, price: null };
    expect(await setFairPrice(owner, price)).toMatchObject({ ok: false });
  });
});

test('the same list sent twice goes once, and two vans at once never take what is not there', async () => {
  const list = along('TS-10-CI 4');
  const clerk = doing(gallery.clerk);
  const [once, again] = [await takeToFair(clerk, list), await takeToFair(clerk, list)];
  expect(again).toEqual(once);
  const both = await Promise.all([
    takeToFair(clerk, along('TS-10-CI 2')),
    takeToFair(doing(gallery.second), along('TS-10-CI 2')),
  ]);
  expect(both.filter((each) => each.ok)).toHaveLength(1);
  expect(await standing()).toEqual({ [place]: 6 });
});

test('after it is closed its costs may still be written down, and its name stays', async () => {
  const owner = doing(gallery.owner);
  await countFairBack(owner, await count({}));
  const changed = aFair({ fairId, name: 'Other', feeCents: '75.50', minutes: '8:30' });
  expect(await keepFair(owner, changed)).toMatchObject({ ok: true });
  const { fair } = await sheet();
  expect(fair).toMatchObject({ name: 'Rain Market', feeCents: 7_550n, minutes: 510 });
});

test('the database keeps a fair’s days in order and its costs above nought', async () => {
  const change = (set: string) => sql(`update "Fair" set ${set} where id = $1`, [fairId]);
  await expect(change(`"untilOn" = '2026-11-19'`)).rejects.toThrow('fair_ends_after_it_begins');
  await expect(change('"feeCents" = -1')).rejects.toThrow('fair_costs_are_not_negative');
});
