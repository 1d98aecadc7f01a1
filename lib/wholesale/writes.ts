import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { findTypedPieces } from '@/lib/catalogue/reads/typed-pieces';
import { dateFromDay, dayOf, type Day } from '@/lib/dates/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import { readPiecesForSale } from '@/lib/sales/reads';
import type { CancelOrderInput, KeepOrderInput } from './input';
import { findShop, promiseInTheWay } from './reads/towns';
import { orderStanding, wholesalePriceCents, type ShopRefusal } from './rules';

/** Everything that keeps a command about a shop from being done. */
export type ShopAnswer<Value> = Result<Value, ShopRefusal | NotAllowed | KeyRefusal>;

/** An order that was written down. */
export type KeptOrder = { orderId: string; number: number };

/**
 * Writes a shop's order down, or changes one that has not left: each piece at its share of the
 * price of the day. A piece that was on it before keeps its price while the share stays the same.
 *
 * @returns the order's number; refuses, in this order: not allowed, a key used for something else,
 *   a shop that is no business among the people, a town that is promised to another, an order
 *   nobody knows, that has left or was cancelled, a code nobody knows, a piece without a price
 */
export async function keepShopOrder(
  doer: Doer,
  input: KeepOrderInput,
): Promise<ShopAnswer<KeptOrder>> {
  const allowed = allow(doer.actor, 'outside.keep');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...said } = input;
  const command = { key, name: 'keepShopOrder', staffId: doer.actor.id, input: said, at: doer.at };
  return onceOnly<KeptOrder, ShopRefusal>(command, (tx) => keepOrder(tx, doer, input));
}

async function keepOrder(
  tx: Tx,
  doer: Doer,
  input: KeepOrderInput,
): Promise<Result<KeptOrder, ShopRefusal>> {
  const { timeZone } = await getGallery(tx);
  const askedOn = dayOf(doer.at, timeZone);
  const shop = await findShop(tx, input.shopId);
  if (!shop) return refuse({ code: 'unknown_shop' });
  const on = input.shipOn !== null && input.shipOn > askedOn ? input.shipOn : askedOn;
  const promised = await promiseInTheWay(tx, shop, on);
  if (promised) return refuse(promised);
  const before = await orderBefore(tx, input.orderId);
  if (!before.ok) return before;
  const lines = await linesOf(tx, input, { on: askedOn, before: before.value });
  if (!lines.ok) return lines;

  const id = before.value?.id ?? newId();
  const fields = {
    ...{ collectorId: shop.id, pricePercent: input.pricePercent, netDays: input.netDays },
    ...{ theirNumber: input.theirNumber, terms: input.terms },
    shipOn: input.shipOn && dateFromDay(input.shipOn),
  };
  const asked = { askedOn: dateFromDay(askedOn), staffId: doer.actor.id, at: doer.at };
  const { number } = before.value
    ? await tx.wholesaleOrder.update({ where: { id }, data: fields, select: { number: true } })
    : await tx.wholesaleOrder.create({
        data: { id, ...fields, ...asked },
        select: { number: true },
      });
  await tx.wholesaleLine.deleteMany({ where: { orderId: id } });
  await tx.wholesaleLine.createMany({
    data: lines.value.map((line, at) => ({ orderId: id, position: at + 1, ...line })),
  });
  const totalCents = sumCents(
    lines.value.map((line) => line.unitPriceCents * BigInt(line.quantity)),
  );
  const facts = { number, shop: shop.name, totalCents };
  const did = before.value ? 'changed a shop’s order' : 'took an order of a shop';
  await recordAudit(tx, doer, { did, subject: 'WholesaleOrder', subjectId: id, facts });
  return ok({ orderId: id, number });
}

type Before = { id: string; pricePercent: string; prices: ReadonlyMap<string, Cents> };

async function orderBefore(
  tx: Tx,
  orderId: string | null,
): Promise<Result<Before | null, ShopRefusal>> {
  if (orderId === null) return ok(null);
  const open = await openOrder(tx, orderId);
  if (!open.ok) return open;
  const { pricePercent, lines } = open.value;
  const prices = new Map(lines.map((line) => [line.skuId, line.unitPriceCents]));
  return ok({ id: orderId, pricePercent: pricePercent.toString(), prices });
}

/** An order that has neither left nor ended; refuses any other. */
export async function openOrder(tx: Tx, orderId: string) {
  const order = await tx.wholesaleOrder.findUnique({
    where: { id: orderId },
    include: { lines: { orderBy: { position: 'asc' } } },
  });
  if (!order) return refuse({ code: 'unknown_order' } as const);
  const { number } = order;
  const standing = orderStanding(order);
  if (standing === 'shipped') return refuse({ code: 'order_is_shipped', number } as const);
  if (standing === 'cancelled') return refuse({ code: 'order_is_cancelled', number } as const);
  return ok(order);
}

type LineToKeep = { skuId: string; quantity: number; unitPriceCents: Cents };

async function linesOf(
  tx: Tx,
  input: KeepOrderInput,
  { on, before }: { on: Day; before: Before | null },
): Promise<Result<LineToKeep[], ShopRefusal>> {
  const known = await findTypedPieces(tx, input.pieces);
  if (!known.ok) return known;
  const wanted = new Map<string, number>();
  for (const { skuId, quantity } of known.value) {
    wanted.set(skuId, (wanted.get(skuId) ?? 0) + quantity);
  }
  const { counterId: placeId, lengthUnit } = await getGallery(tx);
  const pieces = await readPiecesForSale(tx, [...wanted.keys()], { placeId, on, lengthUnit });
  const keepsPrices = before !== null && isSamePercent(before.pricePercent, input.pricePercent);
  const lines: LineToKeep[] = [];
  for (const [skuId, quantity] of wanted) {
    const piece = pieces.get(skuId);
    if (!piece) return refuse({ code: 'unknown_code', typed: skuId });
    const { title, sku, priceCents } = piece;
    const kept = keepsPrices ? before.prices.get(skuId) : undefined;
    const unitPriceCents = kept ?? wholesalePriceCents(priceCents, input.pricePercent);
    if (unitPriceCents === 0n) return refuse({ code: 'no_price', title, sku });
    lines.push({ skuId, quantity, unitPriceCents });
  }
  return ok(lines);
}

function isSamePercent(one: string, other: string): boolean {
  return Number(one) === Number(other);
}

/**
 * Ends an order that will not leave; why is kept.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, an order nobody
 *   knows, that has left or was cancelled already
 */
export async function cancelShopOrder(
  doer: Doer,
  input: CancelOrderInput,
): Promise<ShopAnswer<KeptOrder>> {
  const allowed = allow(doer.actor, 'outside.keep');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...said } = input;
  const name = 'cancelShopOrder';
  const command = { key, name, staffId: doer.actor.id, input: said, at: doer.at };
  return onceOnly<KeptOrder, ShopRefusal>(command, async (tx) => {
    const { orderId, why } = input;
    const order = await openOrder(tx, orderId);
    if (!order.ok) return order;
    const data = { endedAt: doer.at, endedWhy: why };
    await tx.wholesaleOrder.update({ where: { id: orderId }, data, select: { id: true } });
    const { number } = order.value;
    const did = 'cancelled a shop’s order';
    const facts = { number, why };
    await recordAudit(tx, doer, { did, subject: 'WholesaleOrder', subjectId: orderId, facts });
    return ok({ orderId, number });
  });
}
