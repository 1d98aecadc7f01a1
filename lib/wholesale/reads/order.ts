import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { isPieceKind, kindWords } from '@/lib/catalogue/rules';
import { idsOf } from '@/lib/collectors/reads/group';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import type { MoneyKind, TenderKind } from '@/lib/ledger/rules';
import { isMoney } from '@/lib/ledger/rules/sale-entry';
import { sumCents, type Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';
import { owedForSale } from '@/lib/sales/rules/settling';
import { formatSize } from '@/lib/units/rules';
import { orderStanding, type OrderStanding } from '../rules';

/** One line of an order; money in cents. */
export type OrderLineTold = {
  sku: string;
  title: string;
  what: string;
  quantity: number;
  unitPriceCents: Cents;
  amountCents: Cents;
  /** Free to go at the counter's place today. */
  free: number;
};

/** Money that came for an invoice. */
export type PaymentTold = {
  number: number;
  receivedOn: Day;
  kind: TenderKind;
  reference: string;
  amountCents: Cents;
};

/** The invoice of an order that left. */
export type InvoiceTold = {
  saleId: string;
  number: number;
  soldOn: Day;
  dueOn: Day;
  deliverTo: string;
  exemptWhy: string;
  totalCents: Cents;
  /** Paid before it left, and by what. */
  paidFirst: { kind: MoneyKind; cents: Cents } | null;
  owedCents: Cents;
  payments: PaymentTold[];
};

/** A shop's order, whole. */
export type OrderSheet = {
  id: string;
  number: number;
  standing: OrderStanding;
  shop: { id: string; name: string; city: string | null; state: string | null };
  /** The first that the shop ever ordered. */
  isFirst: boolean;
  askedOn: Day;
  shipOn: Day | null;
  pricePercent: string;
  netDays: number;
  freightCents: Cents;
  theirNumber: string;
  terms: string;
  endedWhy: string;
  lines: OrderLineTold[];
  piecesCents: Cents;
  invoice: InvoiceTold | null;
};

const orderColumns = {
  lines: {
    orderBy: { position: 'asc' },
    select: {
      ...{ quantity: true, unitPriceCents: true },
      sku: {
        select: {
          ...{ code: true, kind: true, widthUm: true, heightUm: true, depthUm: true },
          design: { select: { title: true } },
          colourway: { select: { name: true } },
          levels: { select: { placeId: true, onHand: true, held: true } },
        },
      },
    },
  },
  collector: { select: { id: true, name: true, city: true, state: true } },
  sale: {
    select: {
      ...{ id: true, number: true, soldOn: true, deliverTo: true, exemptWhy: true },
      ...{ totalCents: true },
      tenders: {
        select: { kind: true, amountCents: true, refunds: { where: { kind: 'on_account' } } },
      },
      settlements: { orderBy: { number: 'asc' } },
    },
  },
} as const;

/** One order by its number; null when there is none. */
export async function findShopOrder(actor: Actor, number: number): Promise<OrderSheet | null> {
  assertAllowed(actor, 'outside.keep');
  const order = await db().wholesaleOrder.findUnique({ where: { number }, include: orderColumns });
  if (!order) return null;
  const ids = await idsOf(db(), order.collectorId);
  const earlier = await db().wholesaleOrder.count({
    where: { collectorId: { in: [...ids] }, number: { lt: number }, endedAt: null },
  });
  const { counterId, lengthUnit } = await getGallery();
  const lines = order.lines.map(({ sku, quantity, unitPriceCents }) => {
    const level = sku.levels.find((each) => each.placeId === counterId);
    const kind = isPieceKind(sku.kind) ? kindWords(sku.kind) : sku.kind;
    return {
      ...{ sku: sku.code, title: sku.design.title, quantity, unitPriceCents },
      what: `${kind}, ${sku.colourway.name} · ${formatSize(sku, lengthUnit)}`,
      amountCents: unitPriceCents * BigInt(quantity),
      free: (level?.onHand ?? 0) - (level?.held ?? 0),
    };
  });
  const { sale, collector, askedOn, shipOn, pricePercent, dueOn, endedWhy } = order;
  const { id, netDays, freightCents, theirNumber, terms } = order;
  return {
    ...{ id, number, netDays, freightCents, theirNumber, terms, endedWhy, lines },
    standing: orderStanding(order),
    shop: collector,
    isFirst: earlier === 0,
    askedOn: dayFromDate(askedOn),
    shipOn: shipOn && dayFromDate(shipOn),
    pricePercent: pricePercent.toString(),
    piecesCents: sumCents(lines.map((line) => line.amountCents)),
    invoice: sale && invoiceOf(sale, dayFromDate(dueOn ?? sale.soldOn)),
  };
}

type SaleRow = {
  id: string;
  number: number;
  soldOn: Date;
  deliverTo: string;
  exemptWhy: string;
  totalCents: Cents;
  tenders: { kind: TenderKind; amountCents: Cents; refunds: { amountCents: Cents }[] }[];
  settlements: {
    number: number;
    receivedOn: Date;
    kind: TenderKind;
    reference: string;
    amountCents: Cents;
  }[];
};

function invoiceOf(sale: SaleRow, dueOn: Day): InvoiceTold {
  const { id: saleId, number, deliverTo, exemptWhy, totalCents, tenders, settlements } = sale;
  const open = tenders.filter((tender) => tender.kind === 'on_account');
  const money = tenders.find((tender) => isMoney(tender.kind));
  const payments = settlements.map(({ receivedOn, kind, reference, amountCents, ...each }) => ({
    ...{ number: each.number, kind, reference, amountCents, receivedOn: dayFromDate(receivedOn) },
  }));
  return {
    ...{ saleId, number, deliverTo, exemptWhy, totalCents, dueOn, payments },
    soldOn: dayFromDate(sale.soldOn),
    paidFirst: money && isMoney(money.kind) ? { kind: money.kind, cents: money.amountCents } : null,
    owedCents: owedForSale({
      onAccountCents: sumCents(open.map((tender) => tender.amountCents)),
      takenOffCents: sumCents(
        open.flatMap(({ refunds }) => refunds.map((each) => each.amountCents)),
      ),
      settledCents: sumCents(payments.map((payment) => payment.amountCents)),
    }),
  };
}
