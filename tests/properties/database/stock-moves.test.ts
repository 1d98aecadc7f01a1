import { randomUUID } from 'node:crypto';
import { fc, test } from '@fast-check/vitest';
import { beforeAll, expect } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';
import { priceSlip } from '@/lib/sales/rules/pricing';
import { recordSales } from '@/lib/sales/writes/record-sales';
import { bookCountInput } from '@/lib/stock/input/counts';
import { movePiecesInput } from '@/lib/stock/input/places';
import { readStockWorth } from '@/lib/stock/reads/worth';
import { hashDifferences, readDifferences } from '@/lib/stock/reads/moves/differences';
import { decideTakings } from '@/lib/stock/rules';
import { bringIntoStock } from '@/lib/stock/writes';
import { beginCount, bookCount } from '@/lib/stock/writes/count';
import { movePieces } from '@/lib/stock/writes/move';
import { scanInCount } from '@/lib/stock/writes/scan';
import { aPieceHere, doing, noon, openGallery } from '../../database/sales/open-gallery';
import type { OpenGallery, TestPiece } from '../../database/sales/open-gallery';
import { sql } from '../../helpers/database';

let gallery: OpenGallery;
let tern: TestPiece;
let heron: TestPiece;
let places: string[];

beforeAll(async () => {
  gallery = await openGallery();
  tern = await aPieceHere(gallery, {
    ...{ sku: 'TS-10-CI', title: 'Tern over Shoals', priceCents: 18_000n, here: 8 },
  });
  heron = await aPieceHere(gallery, {
    ...{ sku: 'HR-14-MO', title: 'Heron', priceCents: 38_000n, here: 0 },
  });
  await db().sku.update({ where: { id: heron.skuId }, data: { making: 'edition' } });
  const edition = { skuId: heron.skuId, size: 9, statedOn: new Date('2026-01-01') };
  await db().edition.create({ data: edition });
  const fair = await db().place.create({ data: { name: 'Alder Fair', kind: 'fair' } });
  places = [gallery.counterId, gallery.backRoomId, fair.id];
  for (const number of [1, 2, 3, 4, 5]) await bring(0, number);
});

const wish = fc.record({
  what: fc.constantFrom('move', 'move', 'number', 'sell', 'count', 'make', 'make'),
  from: fc.nat(2),
  to: fc.nat(2),
  pieces: fc.integer({ min: 1, max: 4 }),
  number: fc.integer({ min: 1, max: 9 }),
});
type Wish = { what: string; from: number; to: number; pieces: number; number: number };

async function bring(at: number, number: number | null): Promise<void> {
  const piece = number === null ? tern : heron;
  const arrival = { skuId: piece.skuId, placeId: places[at] ?? '', quantity: 1 };
  await inTransaction(async (tx) => {
    const numbered = number === null ? {} : { editionNumber: number };
    const made = { ...arrival, ...numbered, reason: 'made' as const, unitCostCents: 1_000n };
    await bringIntoStock(tx, doing(gallery.maker), [made]);
    return ok(null);
  });
}

async function moveIt({ from, to }: Wish, ready: string): Promise<void> {
  const form = { requestKey: randomUUID(), fromId: places[from], toId: places[to], ready };
  await movePieces(doing(gallery.clerk), movePiecesInput.parse(form));
}

/** A sale from any place, refused in words when the pieces are not there. */
async function sell({ from, pieces }: Wish): Promise<void> {
  const placeId = places[from] ?? '';
  const line = {
    ...{ kind: 'piece' as const, skuId: tern.skuId, designId: null, title: 'Tern', what: '' },
    ...{ quantity: pieces, unitPriceCents: 100n, taxable: false, unitCostCents: null },
  };
  const priced = priceSlip([line], [], 'invoice');
  const tender = { kind: 'card' as const, givenCents: null, reference: '' };
  await inTransaction(async (tx) => {
    const levels = await tx.stockLevel.findMany({ where: { skuId: tern.skuId, placeId } });
    const taking = { skuId: tern.skuId, placeId, quantity: pieces, saleLineId: '' };
    const decided = decideTakings(levels, [{ ...taking, unitCostCents: null }]);
    if (!decided.ok) return decided;
    await recordSales(tx, doing(gallery.clerk), [
      {
        ...{ ...priced, tenders: [{ ...tender, amountCents: priced.totalCents }], placeId },
        ...{ channel: 'counter', taxPlaceId: gallery.taxPlaceId, collectorId: null },
        soldOn: '2026-11-20',
      },
    ]);
    return ok(null);
  });
}

/** Counts some terns and one number at a place, and books it with whatever reason fits all. */
async function countIt({ from, pieces, number }: Wish): Promise<void> {
  const placeId = places[from] ?? '';
  const maker = doing(gallery.maker);
  const begun = await beginCount(maker, { requestKey: randomUUID(), placeId, how: 'part' });
  if (!begun.ok) return;
  const count = await db().stockCount.findUniqueOrThrow({ where: { number: begun.value.number } });
  const codes = [...Array.from({ length: pieces }, () => 'TS-10-CI'), `HR-14-MO ${number}`];
  for (const code of codes) {
    await scanInCount(maker, { requestKey: randomUUID(), countId: count.id, code });
  }
  const shownSha256 = hashDifferences(await readDifferences(db(), count));
  const form = { requestKey: randomUUID(), countId: count.id, shownSha256, whyForAll: 'counted' };
  const booked = await bookCount(maker, bookCountInput.parse(form));
  if (booked.ok) return;
  await db().stockCount.update({ where: { id: count.id }, data: { leftAt: noon } });
}

async function fulfil(each: Wish): Promise<void> {
  switch (each.what) {
    case 'number':
      return moveIt(each, `HR-14-MO~${each.number}`);
    case 'sell':
      return sell(each);
    case 'count':
      return countIt(each);
    case 'make':
      return bring(each.to, null);
    default:
      return moveIt(each, `TS-10-CI*${each.pieces}`);
  }
}

/** Everything that the database holds of it, by SQL that knows none of our code. */
async function looked() {
  const [levels] = await sql<{ wrong: number }>(
    `select count(*)::int as wrong from "StockLevel" level
     where level."onHand" <> coalesce((select sum(quantity) from "StockMovement" m
       where m."skuId" = level."skuId" and m."placeId" = level."placeId"), 0)
       or level."onHand" < 0`,
  );
  const [lost] = await sql<{ wrong: number }>(
    `select count(*)::int as wrong from (select "transferId" from "StockMovement"
     where "transferId" is not null group by "transferId", "skuId", "editionNumber"
     having sum(quantity) <> 0) broken`,
  );
  const [numbers] = await sql<{ wrong: number }>(
    `select count(*)::int as wrong from "EditionPiece" piece where (piece."placeId" is not null)
     <> ((select coalesce(sum(quantity), 0) from "StockMovement" m where m."skuId" = piece."skuId"
       and m."editionNumber" = piece.number and m."placeId" = piece."placeId") = 1)`,
  );
  const [whole] = await sql<{ units: number }>(
    'select coalesce(sum(quantity), 0)::int as units from "StockMovement"',
  );
  const wrong = [levels?.wrong, lost?.wrong, numbers?.wrong];
  return { wrong, units: whole?.units };
}

test.prop([fc.array(wish, { minLength: 6, maxLength: 16 })], { numRuns: 6, endOnFailure: true })(
  'whatever is moved, sold, made and counted at once, no piece is lost and none is in two places',
  async (wishes) => {
    for (let at = 0; at < wishes.length; at += 3) {
      await Promise.all(wishes.slice(at, at + 3).map(fulfil));
    }
    const { wrong, units } = await looked();
    expect(wrong).toEqual([0, 0, 0]);
    expect((await readStockWorth(gallery.books)).whole.units).toBe(units);
  },
  120_000,
);
