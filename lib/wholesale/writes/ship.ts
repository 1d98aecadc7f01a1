import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { readCertificateFor } from '@/lib/collectors/reads/trade';
import { exemptWords, type Certificate } from '@/lib/collectors/rules/trade';
import { dateFromDay, dayOf, type Day } from '@/lib/dates/rules';
import { looksLikeCardNumber } from '@/lib/money/rules/card-number';
import type { Cents } from '@/lib/money/rules';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery, type Gallery } from '@/lib/platform/settings';
import { readPiecesForSale } from '@/lib/sales/reads';
import { pieceLine, type PieceForSale } from '@/lib/sales/rules';
import { priceSlip, type LineToPrice } from '@/lib/sales/rules/pricing';
import { recordSales, type SaleToRecord } from '@/lib/sales/writes/record-sales';
import { isHomePlace } from '@/lib/stock/reads/home-places';
import { readNumbersAt } from '@/lib/stock/reads/numbers';
import type { ShipOrderInput } from '../input';
import { findShop, promiseInTheWay, type Shop } from '../reads/towns';
import { type ShopRefusal } from '../rules';
import { dueDay } from '../rules/ageing';
import { openOrder, type ShopAnswer } from '../writes';

/** An order that left: the invoice's number is that of its sale. */
export type ShippedAnswer = { orderId: string; number: number; invoice: number; dueOn: Day };

/**
 * Sends a shop its order: the pieces leave, the invoice is written, and what is not paid first is
 * owed from now on. Untaxed for resale, and only with the certificate on file.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, an order nobody
 *   knows, that has left or was cancelled, a place that is not ours, a shop whose state nobody
 *   knows, a town promised to another meanwhile, no good certificate for that state, money that
 *   should have come first, a card's number typed, more than stand free
 */
export async function shipShopOrder(
  doer: Doer,
  input: ShipOrderInput,
): Promise<ShopAnswer<ShippedAnswer>> {
  const allowed = allow(doer.actor, 'outside.keep');
  if (!allowed.ok) return allowed;
  const { requestKey: key, freight, ...said } = input;
  const kept = { ...said, freight: freight.toString() };
  const command = { key, name: 'shipShopOrder', staffId: doer.actor.id, input: kept, at: doer.at };
  return onceOnly<ShippedAnswer, ShopRefusal>(command, (tx) => ship(tx, doer, input));
}

async function ship(
  tx: Tx,
  doer: Doer,
  input: ShipOrderInput,
): Promise<Result<ShippedAnswer, ShopRefusal>> {
  const { orderId, fromId, freight } = input;
  const order = await openOrder(tx, orderId);
  if (!order.ok) return order;
  if (!(await isHomePlace(tx, fromId))) return refuse({ code: 'unknown_place' });
  const gallery = await getGallery(tx);
  const soldOn = dayOf(doer.at, gallery.timeZone);
  const { collectorId, netDays, number } = order.value;
  const certified = await certifiedShop(tx, collectorId, soldOn);
  if (!certified.ok) return certified;
  const paid = paidFirst(netDays, input);
  if (!paid.ok) return paid;
  const lines = await linesToSell(tx, order.value.lines, { fromId, soldOn, gallery });
  if (!lines.ok) return lines;

  const slip = priceSlip([...lines.value, ...freightLine(freight)], [], gallery.roundTaxBy);
  const { shop, certificate } = certified.value;
  const { kind, reference } = paid.value;
  const tender = { kind, reference, amountCents: slip.totalCents, givenCents: null };
  const [sale] = await recordSales(tx, doer, [
    {
      ...{ ...slip, tenders: [tender], channel: 'wholesale', placeId: fromId, soldOn, collectorId },
      ...{ taxPlaceId: gallery.taxPlaceId, certificateId: certificate.id },
      ...{ delivery: 'sent', deliverTo: addressOf(shop), exemptWhy: exemptWords(certificate) },
    },
  ]);
  invariant(sale, 'An order that was decided to leave is recorded.');
  const dueOn = dueDay(soldOn, netDays);
  const left = { saleId: sale.saleId, dueOn: dateFromDay(dueOn), freightCents: freight };
  await tx.wholesaleOrder.update({ where: { id: orderId }, data: left, select: { id: true } });
  const facts = { number, invoice: sale.number, totalCents: slip.totalCents, dueOn };
  const did = 'sent a shop its order';
  await recordAudit(tx, doer, { did, subject: 'WholesaleOrder', subjectId: orderId, facts });
  return ok({ orderId, number, invoice: sale.number, dueOn });
}

async function certifiedShop(
  tx: Tx,
  shopId: string,
  on: Day,
): Promise<Result<{ shop: Shop; certificate: Certificate }, ShopRefusal>> {
  const shop = await findShop(tx, shopId);
  if (!shop) return refuse({ code: 'unknown_shop' });
  const { state, name } = shop;
  if (state === null) return refuse({ code: 'no_state', shop: name });
  const promised = await promiseInTheWay(tx, shop, on);
  if (promised) return refuse(promised);
  const standing = await readCertificateFor(tx, { collectorId: shopId, state, on });
  if (standing.kind !== 'good') return refuse({ code: 'no_certificate', shop: name, standing });
  return ok({ shop, certificate: standing.certificate });
}

type Paid = Pick<SaleToRecord['tenders'][number], 'kind' | 'reference'>;

/** Money that came before the pieces leave; otherwise all of it is owed. */
function paidFirst(
  netDays: number,
  { paidBy, reference }: ShipOrderInput,
): Result<Paid, ShopRefusal> {
  if (paidBy === '' && netDays === 0) return refuse({ code: 'paid_first' });
  if (looksLikeCardNumber(reference)) return refuse({ code: 'card_number_typed' });
  return ok({ kind: paidBy === '' ? 'on_account' : paidBy, reference });
}

type OrderLine = { skuId: string; quantity: number; unitPriceCents: Cents };
type Leaving = { fromId: string; soldOn: Day; gallery: Gallery };

async function linesToSell(
  tx: Tx,
  ordered: readonly OrderLine[],
  { fromId: placeId, soldOn: on, gallery }: Leaving,
): Promise<Result<LineToPrice[], ShopRefusal>> {
  const skuIds = ordered.map((line) => line.skuId);
  const { lengthUnit } = gallery;
  const pieces = await readPiecesForSale(tx, skuIds, { placeId, on, lengthUnit });
  const numbersAt = await readNumbersAt(tx, { skuIds, placeId });
  const lines: LineToPrice[] = [];
  for (const { skuId, quantity, unitPriceCents } of ordered) {
    const piece = pieces.get(skuId);
    invariant(piece, 'A piece of an order stays in the catalogue.');
    const free = piece.onHand - piece.held;
    if (quantity > free) return refuse(notEnough(piece, quantity));
    const numbers = (numbersAt.get(skuId) ?? []).slice(0, quantity);
    const line = pieceLine(piece, quantity);
    const untaxed = { taxable: false, taxKind: 'goods', unitPriceCents } as const;
    lines.push({ ...line, ...untaxed, ...(numbers.length > 0 ? { numbers } : {}) });
  }
  return ok(lines);
}

function notEnough({ title, sku, onHand, held }: PieceForSale, wanted: number): ShopRefusal {
  return { code: 'not_enough', title, sku, wanted, free: onHand - held, held };
}

function freightLine(freightCents: Cents): LineToPrice[] {
  if (freightCents === 0n) return [];
  return [
    {
      ...{ kind: 'shipping', taxKind: 'shipping', taxable: false, quantity: 1 },
      ...{ skuId: null, designId: null, title: 'Freight', what: 'at what it costs' },
      ...{ unitPriceCents: freightCents, unitCostCents: null },
    },
  ];
}

function addressOf({ name, street, city, state, postcode }: Shop): string {
  const region = [state, postcode].filter(Boolean).join(' ');
  const place = [city, region].filter(Boolean).join(', ');
  return [name, street, place].filter(Boolean).join('\n');
}
