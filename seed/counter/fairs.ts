import { addDays, instantOf, type Day } from '@/lib/dates/rules';
import { keepFairInput, takeToFairInput } from '@/lib/fairs/input';
import { keepFair, setFairPrice } from '@/lib/fairs/writes';
import { countFairBack } from '@/lib/fairs/writes/count';
import { takeToFair } from '@/lib/fairs/writes/take';
import type { Doer } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { newId } from '@/lib/platform/new-id';
import { ok } from '@/lib/platform/result';
import { readPiecesForSale, readTaxParts } from '@/lib/sales/reads';
import { pieceLine } from '@/lib/sales/rules';
import { priceSlip } from '@/lib/sales/rules/pricing';
import { recordSales } from '@/lib/sales/writes/record-sales';
import { done } from '@/seed/done';
import { gallery, taxPlaces } from '@/seed/scenario/gallery';
import { fairs } from '@/seed/scenario/outside';
import type { SetUp } from '@/seed/set-up';

type Demo = { today: Day; setUp: SetUp };
type Shelved = { skuId: string; code: string; onHand: number };

/**
 * One fair that is over and counted back in, and one that comes in nine days with its take list.
 */
export async function playFairs({ today, setUp }: Demo): Promise<void> {
  const shelf = await fullShelves(setUp.floorId);
  invariant(shelf.length >= 8, 'There is enough in the gallery to take to a fair.');
  const at = (day: Day, time: string): Doer => ({
    actor: setUp.seller,
    at: instantOf(day, time, gallery.timeZone),
  });

  const past = addDays(today, -37);
  const first = await openFair(at(addDays(past, -20), '11:00'), {
    ...{ ...fairs.past, fromOn: past, untilOn: addDays(past, 1), taxPlace: taxPlaces[1].name },
  });
  const took = shelf.slice(0, 6);
  const van = at(addDays(past, -1), '16:30');
  await takeAlong(van, { fairId: first, setUp, pieces: took.map(({ code }) => `${code} 3`) });
  await sellThere(first, { setUp, took, days: [past, addDays(past, 1)] });
  await countHome(at(addDays(past, 2), '10:15'), { fairId: first, setUp });

  const coming = addDays(today, 9);
  const next = await openFair(at(addDays(today, -12), '14:00'), {
    ...{ ...fairs.coming, fromOn: coming, untilOn: addDays(coming, 2) },
    taxPlace: taxPlaces[0].name,
  });
  const along = shelf.slice(2, 8);
  const packing = at(addDays(today, -1), '17:00');
  await takeAlong(packing, { fairId: next, setUp, pieces: along.map(({ code }) => `${code} 1`) });
  const [dearer] = along;
  if (!dearer) return;
  const price = { requestKey: newId(), fairId: next, skuId: dearer.skuId, price: 14_000n };
  done(await setFairPrice(packing, price));
}

/** What stands on the floor in numbers, of open stock: the most first. */
async function fullShelves(placeId: string): Promise<Shelved[]> {
  const levels = await db().stockLevel.findMany({
    where: {
      ...{ placeId, onHand: { gte: 4 }, held: 0 },
      sku: { making: 'open_stock', grade: 'first' },
    },
    select: { skuId: true, onHand: true, sku: { select: { code: true } } },
    orderBy: [{ onHand: 'desc' }, { sku: { code: 'asc' } }],
    take: 10,
  });
  return levels.map(({ skuId, onHand, sku }) => ({ skuId, onHand, code: sku.code }));
}

type FairWords = {
  name: string;
  town: string;
  fee: string;
  travel: string;
  other: string;
  hours: string;
  note: string;
  fromOn: Day;
  untilOn: Day;
  taxPlace: string;
};

async function openFair(doer: Doer, words: FairWords): Promise<string> {
  const { fee, travel, other, hours, taxPlace, ...said } = words;
  const { id } = await db().taxPlace.findUniqueOrThrow({ where: { name: taxPlace } });
  const costs = { feeCents: fee, travelCents: travel, otherCents: other, minutes: hours };
  const input = { ...said, ...costs, taxPlaceId: id, requestKey: newId() };
  return done(await keepFair(doer, keepFairInput.parse(input))).fairId;
}

type Along = { fairId: string; setUp: SetUp; pieces: readonly string[] };

async function takeAlong(doer: Doer, { fairId, setUp, pieces }: Along): Promise<void> {
  const input = { requestKey: newId(), fairId, fromId: setUp.floorId, pieces: pieces.join('\n') };
  done(await takeToFair(doer, takeToFairInput.parse(input)));
}

type Selling = { setUp: SetUp; took: readonly Shelved[]; days: readonly Day[] };

/** Two days of selling: of six designs eleven of eighteen pieces go. */
async function sellThere(fairId: string, { setUp, took, days }: Selling): Promise<void> {
  const fair = await db().fair.findUniqueOrThrow({ where: { id: fairId } });
  const ids = took.map((piece) => piece.skuId);
  await inTransaction<true, never>(async (tx) => {
    for (const [place, soldOn] of days.entries()) {
      const { placeId, taxPlaceId } = fair;
      const { parts } = await readTaxParts(taxPlaceId, soldOn, tx);
      const pieces = await readPiecesForSale(tx, ids, { placeId, on: soldOn, lengthUnit: 'in' });
      const lines = ids.map((id) => pieces.get(id)).filter((piece) => piece !== undefined);
      const sales = lines.slice(place).map((piece, at) => {
        const priced = priceSlip([pieceLine(piece, 1)], parts, 'invoice');
        const amountCents = priced.totalCents;
        return {
          ...{ ...priced, channel: 'fair' as const, placeId, taxPlaceId, collectorId: null },
          ...{ soldOn, fairId, soldAt: instantOf(soldOn, `1${at}:20`, gallery.timeZone) },
          tenders: [{ kind: 'card' as const, amountCents, givenCents: null, reference: '' }],
        };
      });
      const at = instantOf(soldOn, '18:00', gallery.timeZone);
      await recordSales(tx, { actor: setUp.seller, at }, sales);
    }
    return ok(true);
  });
}

async function countHome(
  doer: Doer,
  { fairId, setUp }: { fairId: string; setUp: SetUp },
): Promise<void> {
  const { placeId } = await db().fair.findUniqueOrThrow({ where: { id: fairId } });
  const levels = await db().stockLevel.findMany({
    where: { placeId, onHand: { gt: 0 } },
    orderBy: { sku: { code: 'asc' } },
  });
  const rows = levels.map(({ skuId, onHand }, at) => {
    const broken = at === 0 ? 1 : 0;
    const nothing = { missing: 0, soldUnwritten: 0 };
    return { key: skuId, seen: onHand, back: onHand - broken, broken, ...nothing };
  });
  done(await countFairBack(doer, { requestKey: newId(), fairId, toId: setUp.floorId, rows }));
}
