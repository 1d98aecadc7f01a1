import { randomUUID } from 'node:crypto';
import { beforeEach, describe, expect, test } from 'vitest';
import { shopInvoicePdf } from '@/lib/documents/outside/shop-invoice';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';
import { findShopSheet, listShops } from '@/lib/wholesale/reads';
import { findShopOrder } from '@/lib/wholesale/reads/order';
import { cancelShopOrder, keepShopOrder } from '@/lib/wholesale/writes';
import { shipShopOrder } from '@/lib/wholesale/writes/ship';
import { sql, startAfresh } from '@/tests/helpers/database';
import {
  aPieceHere,
  doing,
  openGallery,
  type OpenGallery,
  type TestPiece,
} from '../sales/open-gallery';
import { anOrder, aShipping, aShop } from './a-shop';

let gallery: OpenGallery;
let tern: TestPiece;
let shop: string;

beforeEach(async () => {
  await startAfresh();
  gallery = await openGallery();
  const names = { sku: 'TS-10-CI', title: 'Tern over Shoals', priceCents: 9_965n };
  tern = await aPieceHere(gallery, { ...names, here: 6 });
  shop = await aShop(gallery);
});

async function anOpenOrder(pieces = 'TS-10-CI 4', over: Record<string, unknown> = {}) {
  const kept = await keepShopOrder(doing(gallery.clerk), anOrder(shop, pieces, over));
  if (!kept.ok) return expect.unreachable(`The order is taken: ${kept.refusal.code}.`);
  return kept.value;
}

test('an order at half the price is sent, owed, and told on its invoice', async () => {
  const { orderId, number } = await anOpenOrder('TS-10-CI 4', { theirNumber: 'DG-208' });
  const shipping = aShipping(gallery, orderId, { freight: '28.40' });
  const shipped = await shipShopOrder(doing(gallery.clerk), shipping);
  expect(shipped).toMatchObject({ ok: true, value: { number, dueOn: '2026-12-20' } });

  const order = await findShopOrder(gallery.owner, number);
  expect(order).toMatchObject({
    ...{ standing: 'shipped', isFirst: true, theirNumber: 'DG-208', piecesCents: 19_932n },
    lines: [{ sku: 'TS-10-CI', quantity: 4, unitPriceCents: 4_983n }],
    invoice: { totalCents: 22_772n, owedCents: 22_772n, dueOn: '2026-12-20', paidFirst: null },
  });
  const sale = await db().sale.findFirstOrThrow({ include: { lines: true, tenders: true } });
  expect(sale).toMatchObject({
    ...{ channel: 'wholesale', taxCents: 0n, collectorId: shop, delivery: 'sent' },
    exemptWhy: 'For resale: certificate 3319 of Driftline Goods, WA',
    deliverTo: 'Driftline Goods\n40 Wharf Stairs\nCedar Reach, WA',
  });
  expect(sale.certificateId).not.toBeNull();
  expect(sale.tenders).toMatchObject([{ kind: 'on_account', amountCents: 22_772n }]);
  const postings = await sql(
    `select "accountCode" as account, "amountCents"::int as cents, "collectorId" as whose
     from "Posting" order by id`,
  );
  expect(postings).toEqual([
    { account: '1100', cents: 22_772, whose: shop },
    { account: '4000', cents: -19_932, whose: null },
    { account: '4020', cents: -2_840, whose: null },
  ]);
  expect(await sql('select "onHand" from "StockLevel"')).toEqual([{ onHand: 2 }]);
  if (!order?.invoice) return expect.unreachable('What left has its invoice.');
  const bytes = await shopInvoicePdf(order, order.invoice, await getGallery());
  expect(Buffer.from(bytes).toString('latin1').startsWith('%PDF-')).toBe(true);
  expect(await listShops(gallery.clerk)).toMatchObject([{ owedCents: 22_772n, openOrders: 0 }]);
});

test('an order that is paid first asks how, and nothing is owed after', async () => {
  const { orderId, number } = await anOpenOrder('TS-10-CI 1', { netDays: '0' });
  const clerk = doing(gallery.clerk);
  expect(await shipShopOrder(clerk, aShipping(gallery, orderId))).toMatchObject({
    refusal: { code: 'paid_first' },
  });
  const paid = { paidBy: 'bank_transfer', reference: 'TR 5501' };
  expect(await shipShopOrder(clerk, aShipping(gallery, orderId, paid))).toMatchObject({ ok: true });
  expect((await findShopOrder(gallery.owner, number))?.invoice).toMatchObject({
    ...{ owedCents: 0n, paidFirst: { kind: 'bank_transfer', cents: 4_983n } },
  });
});

test('a changed order keeps the price of what was on it, unless the share changes', async () => {
  const { orderId, number } = await anOpenOrder('TS-10-CI 1');
  await db().sku.update({ where: { id: tern.skuId }, data: { priceCents: 20_000n } });
  const clerk = doing(gallery.clerk);
  await keepShopOrder(clerk, anOrder(shop, 'TS-10-CI 3', { orderId }));
  const lines = async () => (await findShopOrder(gallery.owner, number))?.lines;
  expect(await lines()).toMatchObject([{ quantity: 3, unitPriceCents: 4_983n }]);
  await keepShopOrder(clerk, anOrder(shop, 'TS-10-CI 3', { orderId, pricePercent: '45' }));
  expect(await lines()).toMatchObject([{ quantity: 3, unitPriceCents: 9_000n }]);
});

describe('taking an order refuses, in this order:', () => {
  test('whoever may not, no shop, no such order, no such piece, no price', async () => {
    const clerk = doing(gallery.clerk);
    const person = await db().collector.create({ data: { name: 'Wren', createdAt: clerk.at } });
    await aPieceHere(gallery, { sku: 'ZZ-1', title: 'Study', priceCents: 0n, here: 1 });
    const tries = [
      await keepShopOrder(doing(gallery.maker), anOrder(randomUUID(), 'XX-1')),
      await keepShopOrder(clerk, anOrder(person.id, 'XX-1')),
      await keepShopOrder(clerk, anOrder(shop, 'XX-1', { orderId: randomUUID() })),
      await keepShopOrder(clerk, anOrder(shop, 'XX-1')),
      await keepShopOrder(clerk, anOrder(shop, 'ZZ-1')),
    ].map((each) => (each.ok ? 'ok' : each.refusal.code));
    expect(tries).toEqual([
      ...['not_allowed', 'unknown_shop', 'unknown_order', 'unknown_code', 'no_price'],
    ]);
    expect(await db().wholesaleOrder.count()).toBe(0);
  });
});

describe('sending one refuses, and nothing leaves:', () => {
  test('each in its order', async () => {
    const clerk = doing(gallery.clerk);
    const bare = await aShop(gallery, { name: 'No Paper', city: 'Elsewhere', certified: false });
    const nowhere = await aShop(gallery, { name: 'Nowhere', state: null });
    const card = { paidBy: 'card', reference: '4111 1111 1111 1111' };
    const many = (await anOpenOrder('TS-10-CI 7')).orderId;
    const of = async (shopId: string) => {
      const kept = await keepShopOrder(clerk, anOrder(shopId, 'TS-10-CI 1'));
      return kept.ok ? kept.value.orderId : '';
    };
    const fair = await db().place.create({ data: { name: 'A fair', kind: 'fair' } });
    const tries = [
      await shipShopOrder(doing(gallery.maker), aShipping(gallery, many)),
      await shipShopOrder(clerk, aShipping(gallery, randomUUID())),
      await shipShopOrder(clerk, aShipping(gallery, many, { fromId: fair.id })),
      await shipShopOrder(clerk, aShipping(gallery, await of(nowhere))),
      await shipShopOrder(clerk, aShipping(gallery, await of(bare))),
      await shipShopOrder(clerk, aShipping(gallery, many, card)),
      await shipShopOrder(clerk, aShipping(gallery, many)),
    ].map((each) => (each.ok ? 'ok' : each.refusal.code));
    expect(tries).toEqual([
      ...['not_allowed', 'unknown_order', 'unknown_place', 'no_state', 'no_certificate'],
      ...['card_number_typed', 'not_enough'],
    ]);
    expect(await db().sale.count()).toBe(0);
  });

  test('a certificate that was withdrawn or has run out', async () => {
    const { orderId } = await anOpenOrder('TS-10-CI 1');
    await db().resaleCertificate.updateMany({ data: { untilOn: new Date('2026-11-19') } });
    const shipped = await shipShopOrder(doing(gallery.clerk), aShipping(gallery, orderId));
    expect(shipped).toMatchObject({
      refusal: { code: 'no_certificate', standing: { kind: 'ran_out' } },
    });
  });

  test('one that has left, and one that was cancelled', async () => {
    const [clerk, first, second] = [doing(gallery.clerk), await anOpenOrder(), await anOpenOrder()];
    const why = 'They pushed the day twice.';
    await shipShopOrder(clerk, aShipping(gallery, first.orderId));
    const cancel = { requestKey: randomUUID(), orderId: second.orderId, why };
    expect(await cancelShopOrder(clerk, cancel)).toMatchObject({ ok: true });
    const tries = [
      await shipShopOrder(clerk, aShipping(gallery, first.orderId)),
      await cancelShopOrder(clerk, { ...cancel, requestKey: randomUUID(), orderId: first.orderId }),
      await shipShopOrder(clerk, aShipping(gallery, second.orderId)),
    ].map((each) => (each.ok ? 'ok' : each.refusal.code));
    expect(tries).toEqual(['order_is_shipped', 'order_is_shipped', 'order_is_cancelled']);
    expect((await findShopOrder(gallery.owner, second.number))?.endedWhy).toBe(why);
  });
});

test('sent twice it leaves once; two people sending it at once send it once', async () => {
  const { orderId } = await anOpenOrder('TS-10-CI 2');
  const shipping = aShipping(gallery, orderId);
  const tries = await Promise.all([
    shipShopOrder(doing(gallery.clerk), shipping),
    shipShopOrder(doing(gallery.clerk), shipping),
    shipShopOrder(doing(gallery.second), aShipping(gallery, orderId)),
  ]);
  expect(tries.filter((each) => each.ok).length).toBeGreaterThan(0);
  expect(await db().sale.count()).toBe(1);
  expect(await sql('select "onHand" from "StockLevel"')).toEqual([{ onHand: 4 }]);
  const sheet = await findShopSheet(gallery.owner, shop);
  expect(sheet?.orders).toMatchObject([{ owedCents: 9_966n, totalCents: 9_966n }]);
});

test('the database keeps shares and counts of an order in their bounds', async () => {
  const { orderId } = await anOpenOrder();
  await expect(
    sql(`update "WholesaleOrder" set "pricePercent" = 101 where id = $1`, [orderId]),
  ).rejects.toThrow('wholesale_share_is_a_share');
  await expect(sql('update "WholesaleLine" set quantity = 0')).rejects.toThrow(
    'wholesale_line_has_pieces',
  );
});
