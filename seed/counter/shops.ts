import type { Doer } from '@/lib/access/rules';
import { collectorFields } from '@/lib/collectors/input';
import { addCollector } from '@/lib/collectors/writes';
import { addDays, dateFromDay, instantOf, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok } from '@/lib/platform/result';
import { settleAccountInput } from '@/lib/sales/input/settling';
import { settleAccount } from '@/lib/sales/writes/settle-account';
import { keepOrderInput, promiseTownInput, shipOrderInput } from '@/lib/wholesale/input';
import { usualWords } from '@/lib/wholesale/rules';
import { keepShopOrder } from '@/lib/wholesale/writes';
import { promiseTown } from '@/lib/wholesale/writes/promises';
import { shipShopOrder } from '@/lib/wholesale/writes/ship';
import { done } from '@/seed/done';
import { gallery } from '@/seed/scenario/gallery';
import { shops } from '@/seed/scenario/outside';
import type { SetUp } from '@/seed/set-up';

type Demo = { today: Day; setUp: SetUp };

/**
 * Two shops: one whose order left six weeks ago, is late by some days and paid in part, and whose
 * town is promised to it; one that has just ordered for the first time.
 */
export async function playShops({ today, setUp }: Demo): Promise<void> {
  const at = (day: Day, time: string): Doer => ({
    actor: setUp.owner,
    at: instantOf(day, time, gallery.timeZone),
  });
  const asked = addDays(today, -60);
  const driftline = await addShop(at(addDays(today, -400), '15:00'), shops.driftline, '3319');
  const thistle = await addShop(at(addDays(today, -20), '12:00'), shops.tideAndThistle, '5180');
  const codes = await codesOnFloor(setUp.floorId);

  const order = await takeOrder(at(asked, '10:30'), {
    ...{ shopId: driftline, pieces: codes.slice(0, 4).map((code) => `${code} 2`) },
    ...{ shipOn: addDays(asked, 20), theirNumber: 'DG-208', netDays: '30' },
  });
  const shipped = addDays(asked, 18);
  const freight = { freight: '28.40', paidBy: '', reference: '' };
  const sending = { requestKey: newId(), orderId: order, fromId: setUp.floorId, ...freight };
  done(await shipShopOrder(at(shipped, '14:10'), shipOrderInput.parse(sending)));
  const { saleId } = await db().wholesaleOrder.findUniqueOrThrow({ where: { id: order } });
  const receivedOn = addDays(shipped, 24);
  const money = { requestKey: newId(), saleId, amount: '150', kind: 'cheque', receivedOn };
  done(await settleAccount(at(receivedOn, '11:45'), settleAccountInput.parse(money)));

  const town = { town: shops.driftline.city, state: shops.driftline.state, untilOn: '' };
  const promise = { requestKey: newId(), shopId: driftline, ...town, fromOn: asked };
  done(await promiseTown(at(asked, '10:40'), promiseTownInput.parse(promise)));

  await takeOrder(at(addDays(today, -6), '16:20'), {
    ...{ shopId: thistle, pieces: codes.slice(1, 6).map((code) => `${code} 2`) },
    ...{ shipOn: addDays(today, 26), theirNumber: '', netDays: '0' },
  });
}

type ShopWords = (typeof shops)[keyof typeof shops];

async function addShop(doer: Doer, words: ShopWords, permitNumber: string): Promise<string> {
  const added = await inTransaction<string, never>(async (tx) => {
    const collectorId = await addCollector(tx, doer, collectorFields.parse(words));
    await tx.resaleCertificate.create({
      data: {
        ...{ collectorId, permitNumber, legalName: words.name, state: words.state },
        ...{ buys: 'relief tiles and ware for resale', staffId: doer.actor.id, at: doer.at },
        fromOn: dateFromDay('2020-01-01'),
      },
    });
    return ok(collectorId);
  });
  return done(added);
}

async function codesOnFloor(placeId: string): Promise<string[]> {
  const levels = await db().stockLevel.findMany({
    where: {
      ...{ placeId, onHand: { gte: 3 }, held: 0 },
      sku: { making: 'open_stock', grade: 'first' },
    },
    select: { sku: { select: { code: true } } },
    orderBy: [{ onHand: 'desc' }, { sku: { code: 'desc' } }],
    take: 8,
  });
  return levels.map(({ sku }) => sku.code);
}

type OrderWords = {
  shopId: string;
  pieces: readonly string[];
  shipOn: Day;
  theirNumber: string;
  netDays: string;
};

async function takeOrder(doer: Doer, words: OrderWords): Promise<string> {
  const pieces = words.pieces.join('\n');
  const terms = { pricePercent: '50', terms: usualWords };
  const input = keepOrderInput.parse({ ...words, ...terms, pieces, requestKey: newId() });
  return done(await keepShopOrder(doer, input)).orderId;
}
