import type { Doer } from '@/lib/access/rules';
import { stateEdition } from '@/lib/catalogue/writes/editions';
import { addMould, recordCasts } from '@/lib/catalogue/writes/moulds';
import { addPiece } from '@/lib/catalogue/writes/pieces';
import { changePrice } from '@/lib/catalogue/writes/prices';
import { keepSet } from '@/lib/catalogue/writes/sets';
import { putOnSlip, sellSlip } from '@/lib/counter/writes';
import { addDays, instantOf, type Day } from '@/lib/dates/rules';
import { bringInMade, tellReady } from '@/lib/orders/writes';
import { takeOrder } from '@/lib/orders/writes/take-order';
import { db } from '@/lib/platform/db/client';
import { invariant } from '@/lib/platform/invariant';
import { newId } from '@/lib/platform/new-id';
import { correctStock } from '@/lib/stock/writes/correct-stock';
import { markAsSecond } from '@/lib/stock/writes/mark-as-second';
import { done } from '@/seed/done';
import { lengthOf, type DemoSku } from '@/seed/catalogue';
import {
  editionPiece,
  flaws,
  moulds,
  orders,
  prices,
  shoreSet,
  type DemoOrder,
} from '@/seed/scenario/catalogue-and-orders';
import { gallery } from '@/seed/scenario/gallery';
import type { SetUp } from '@/seed/set-up';

type Demo = {
  today: Day;
  setUp: SetUp;
  skus: readonly DemoSku[];
  /** The ids of collectors. */
  collectors: ReadonlyMap<string, string>;
};

/** Marks, moulds, an edition, a set, prices and special orders, through the product's own writes. */
export async function playCatalogueAndOrders(demo: Demo): Promise<void> {
  await playMoulds(demo);
  await playEdition(demo);
  await playSet(demo);
  await playFlaws(demo);
  await playPrices(demo);
  for (const [at, order] of orders.entries()) await playOrder(demo, order, at);
}

function doerAt({ today, setUp }: Demo, who: 'owner' | 'seller' | 'maker', daysAgo: number): Doer {
  const day = addDays(today, -daysAgo);
  return { actor: setUp[who], at: instantOf(day, '11:00', gallery.timeZone) };
}

function skuOf({ skus }: Demo, design: string, form: string): DemoSku {
  const found = skus.find((sku) => sku.design === design && sku.form === form);
  invariant(found, `${design} is made in ${form}.`);
  return found;
}

async function playMoulds(demo: Demo): Promise<void> {
  for (const { code, design, lifeCasts, begunWith, madeDaysAgo, casts } of moulds) {
    const sku = demo.skus.find((each) => each.design === design);
    invariant(sku, 'A mould gives a design that is made.');
    const madeOn = addDays(demo.today, -madeDaysAgo);
    const mould = { code, designId: sku.designId, lifeCasts, begunWith, madeOn, note: '' };
    done(await addMould(doerAt(demo, 'owner', 60), { requestKey: newId(), ...mould }));
    const { id: mouldId } = await db().mould.findUniqueOrThrow({ where: { code } });
    for (const { daysAgo, count } of casts) {
      const cast = { mouldId, casts: count, on: addDays(demo.today, -daysAgo) };
      const maker = doerAt(demo, 'maker', daysAgo);
      done(await recordCasts(maker, { requestKey: newId(), ...cast }));
    }
  }
}

async function playEdition(demo: Demo): Promise<void> {
  const { mould, size, artistProofs, came, width, height, colourwayOf, ...piece } = editionPiece;
  const like = skuOf(demo, colourwayOf.design, colourwayOf.form);
  const { colourway, pictureId } = await db().sku.findUniqueOrThrow({
    where: { id: like.id },
    select: { colourway: { select: { name: true } }, pictureId: true },
  });
  const owner = doerAt(demo, 'owner', 40);
  const measures = { widthUm: lengthOf(width), heightUm: lengthOf(height), depthUm: null };
  done(
    await addPiece(owner, {
      ...{ requestKey: newId(), ...piece, ...measures, colourway: colourway.name },
      ...{ weightG: 2_700, making: 'edition', gtin: null },
    }),
  );
  const { id: skuId } = await db().sku.update({
    where: { code: piece.code },
    data: { pictureId },
    select: { id: true },
  });
  const { id: mouldId } = await db().mould.findUniqueOrThrow({ where: { code: mould } });
  const stating = { requestKey: newId(), skuId, size, artistProofs, mouldId };
  done(await stateEdition(owner, stating));
  const note = 'the first out of the mould';
  const coming = { requestKey: newId(), skuId, reason: 'made' as const, pieces: came, note };
  done(await correctStock(doerAt(demo, 'seller', 20), coming));
}

async function playSet(demo: Demo): Promise<void> {
  const { members, ...set } = shoreSet;
  const pieces = [];
  for (const { design, form } of members) {
    const where = { id: skuOf(demo, design, form).id };
    const { code } = await db().sku.findUniqueOrThrow({ where, select: { code: true } });
    pieces.push({ code, number: null, quantity: 1 });
  }
  const kept = { requestKey: newId(), setId: null, ...set, members: pieces };
  done(await keepSet(doerAt(demo, 'owner', 30), kept));
}

async function playFlaws(demo: Demo): Promise<void> {
  for (const [at, { design, form, grade, flaw }] of flaws.entries()) {
    const { id: skuId } = skuOf(demo, design, form);
    const where = { skuId_placeId: { skuId, placeId: demo.setUp.floorId } };
    const shelf = await db().stockLevel.findUnique({ where });
    if (!shelf || shelf.onHand <= shelf.held) continue;
    const marking = { requestKey: newId(), skuId, quantity: 1, grade, flaw };
    const rest = { priceCents: null, editionNumber: null };
    done(await markAsSecond(doerAt(demo, 'seller', 12 - at * 3), { ...marking, ...rest }));
  }
}

async function playPrices(demo: Demo): Promise<void> {
  for (const { design, form, priceCents, setDaysAgo, inDays, reason } of prices) {
    const skuId = skuOf(demo, design, form).id;
    const fromOn = addDays(demo.today, inDays);
    const setting = { requestKey: newId(), skuId, priceCents, fromOn, reason };
    done(await changePrice(doerAt(demo, 'owner', setDaysAgo), setting));
  }
}

async function playOrder(demo: Demo, order: DemoOrder, at: number): Promise<void> {
  const { design, form, quantity, technique, wish, askedDaysAgo, readyInDays, sendTo } = order;
  const base = skuOf(demo, design, form);
  const collectorId = [...demo.collectors.values()][at * 3 + 2] ?? null;
  const seller = doerAt(demo, 'seller', askedDaysAgo);
  const taken = done(
    await takeOrder(seller, {
      ...{ requestKey: newId(), skuId: base.id, colourwayId: null, size: null, quantity },
      ...{ technique, collectorId, newName: '', newPhone: '', newEmail: '', wish, sendTo },
      ...{ unitPriceCents: null, depositCents: null, said: 'yes' },
      goes: sendTo === '' ? 'collected' : 'sent',
      readyAboutOn: addDays(demo.today, readyInDays),
    }),
  );
  const { orderId, deposit } = taken;
  if (order.reached === 'asked') return;
  await payDeposit(seller, orderId, BigInt(deposit));
  if (order.reached === 'paid') return;
  const later = doerAt(demo, 'seller', 3);
  done(await bringInMade(later, { requestKey: newId(), orderId, pieces: quantity + 1 }));
  if (order.reached === 'told') {
    done(await tellReady(doerAt(demo, 'seller', 2), { requestKey: newId(), orderId }));
  }
}

async function payDeposit(seller: Doer, orderId: string, cents: bigint): Promise<void> {
  const line = { kind: 'order_deposit', orderId, cents } as const;
  const put = done(await putOnSlip(seller, { requestKey: newId(), slipId: null, line }));
  const where = { id: put.slipId };
  const { version } = await db().slip.findUniqueOrThrow({ where, select: { version: true } });
  const slip = { slipId: put.slipId, slipVersion: version, expectedTotalCents: cents };
  const tenders = [{ kind: 'card', amountCents: cents, reference: '' }] as const;
  done(await sellSlip(seller, { requestKey: newId(), ...slip, tenders }));
}
