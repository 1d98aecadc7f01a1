import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { readGroup } from '@/lib/collectors/reads/group';
import { dateFromDay, dayFromDate, dayOf, type Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';
import { now } from '@/lib/platform/clock';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';

/** The most shops that the list shows, and the most orders of one shop. */
export const shopsListed = 200;
const ordersListed = 100;

/** A shop in the list: what is open, what is owed, and which town is its own today. */
export type ShopListed = {
  id: string;
  name: string;
  city: string | null;
  state: string | null;
  openOrders: number;
  owedCents: Cents;
  promisedTown: string | null;
  /** It ordered before, or has a promise or a certificate; other businesses may yet. */
  isShop: boolean;
};

const shopRow = z.object({
  id: z.string(),
  name: z.string(),
  city: z.string().nullable(),
  state: z.string().nullable(),
  openOrders: z.number(),
  owedCents: z.bigint(),
  promisedTown: z.string().nullable(),
  isShop: z.boolean(),
});

/** Every business among the people, shops that owe or wait first; at most {@link shopsListed}. */
export async function listShops(actor: Actor): Promise<ShopListed[]> {
  assertAllowed(actor, 'outside.keep');
  const { timeZone } = await getGallery();
  const today = dayOf(now(), timeZone);
  const found = await db().$queryRaw`
    SELECT shop.id, shop.name, shop.city, shop.state,
      (SELECT count(*) FROM "WholesaleOrder" o WHERE o."collectorId" = ANY(every.ids)
        AND o."saleId" IS NULL AND o."endedAt" IS NULL)::int AS "openOrders",
      (SELECT coalesce(sum(t."amountCents"), 0) FROM "WholesaleOrder" o
        JOIN "Tender" t ON t."saleId" = o."saleId" AND t.kind = 'on_account'
        WHERE o."collectorId" = ANY(every.ids))::bigint
      - (SELECT coalesce(sum(r."amountCents"), 0) FROM "WholesaleOrder" o
        JOIN "Tender" t ON t."saleId" = o."saleId" AND t.kind = 'on_account'
        JOIN "Refund" r ON r."tenderId" = t.id AND r.kind = 'on_account'
        WHERE o."collectorId" = ANY(every.ids))::bigint
      - (SELECT coalesce(sum(s."amountCents"), 0) FROM "WholesaleOrder" o
        JOIN "SettlementPayment" s ON s."saleId" = o."saleId"
        WHERE o."collectorId" = ANY(every.ids))::bigint AS "owedCents",
      (SELECT min(p.town) FROM "TownPromise" p WHERE p."collectorId" = ANY(every.ids)
        AND p."fromOn" <= ${today}::date
        AND (p."untilOn" IS NULL OR p."untilOn" > ${today}::date)) AS "promisedTown",
      (EXISTS (SELECT 1 FROM "WholesaleOrder" o WHERE o."collectorId" = ANY(every.ids))
        OR EXISTS (SELECT 1 FROM "TownPromise" p WHERE p."collectorId" = ANY(every.ids))
        OR EXISTS (SELECT 1 FROM "ResaleCertificate" c WHERE c."collectorId" = ANY(every.ids)))
        AS "isShop"
    FROM "Collector" shop CROSS JOIN LATERAL (
      SELECT array_agg(id) AS ids FROM "Collector" entry
      WHERE entry.id = shop.id OR entry."mergedIntoId" = shop.id) AS every
    WHERE shop.kind = 'business' AND shop."mergedIntoId" IS NULL AND shop."erasedAt" IS NULL
    ORDER BY 8 DESC, 6 DESC, 5 DESC, shop.name LIMIT ${shopsListed}`;
  return z.array(shopRow).parse(found);
}

/** A promise of a town; `untilOn` is the first day on which it no longer holds. */
export type PromiseTold = {
  id: string;
  town: string;
  state: string;
  fromOn: Day;
  untilOn: Day | null;
};

/** A shop's order in its list, in cents. */
export type OrderListed = {
  id: string;
  number: number;
  askedOn: Day;
  shipOn: Day | null;
  saleId: string | null;
  invoice: number | null;
  endedAt: Date | null;
  dueOn: Day | null;
  totalCents: Cents;
  owedCents: Cents;
};

/** A shop with its orders, the latest first, and its promises that have not ended. */
export type ShopSheet = {
  shop: { id: string; name: string; city: string | null; state: string | null; note: string };
  orders: OrderListed[];
  promises: PromiseTold[];
};

/** One shop by its id, under any of its names; null for nobody, and for who is no business. */
export async function findShopSheet(actor: Actor, shopId: string): Promise<ShopSheet | null> {
  assertAllowed(actor, 'outside.keep');
  const group = await readGroup(db(), shopId);
  if (!group) return null;
  const { timeZone } = await getGallery();
  const today = dateFromDay(dayOf(now(), timeZone));
  const shop = await db().collector.findUnique({
    where: { id: group.livingId, kind: 'business' },
    select: { id: true, name: true, city: true, state: true, note: true },
  });
  if (!shop) return null;
  const townPromises = await db().townPromise.findMany({
    where: {
      collectorId: { in: [...group.ids] },
      OR: [{ untilOn: null }, { untilOn: { gt: today } }],
    },
    orderBy: { fromOn: 'asc' },
    take: 50,
  });
  const promises = townPromises.map(({ id, town, state, fromOn, untilOn }) => ({
    ...{ id, town, state, fromOn: dayFromDate(fromOn), untilOn: untilOn && dayFromDate(untilOn) },
  }));
  return { shop, orders: await listOrders(group.ids), promises };
}

const orderRow = z.object({
  id: z.string(),
  number: z.number(),
  askedOn: z.date(),
  shipOn: z.date().nullable(),
  saleId: z.string().nullable(),
  invoice: z.number().nullable(),
  endedAt: z.date().nullable(),
  dueOn: z.date().nullable(),
  totalCents: z.bigint(),
  owedCents: z.bigint(),
});

async function listOrders(ids: readonly string[]): Promise<OrderListed[]> {
  const found = await db().$queryRaw`
    SELECT o.id, o.number, o."askedOn", o."shipOn", o."saleId", sale.number AS invoice,
      o."endedAt", o."dueOn",
      coalesce(sale."totalCents", (SELECT sum(l."unitPriceCents" * l.quantity)
        FROM "WholesaleLine" l WHERE l."orderId" = o.id), 0)::bigint AS "totalCents",
      ((SELECT coalesce(sum(t."amountCents"), 0) FROM "Tender" t
        WHERE t."saleId" = o."saleId" AND t.kind = 'on_account')
      - (SELECT coalesce(sum(r."amountCents"), 0) FROM "Refund" r
        JOIN "Tender" t ON t.id = r."tenderId" AND t.kind = 'on_account'
        WHERE t."saleId" = o."saleId" AND r.kind = 'on_account')
      - (SELECT coalesce(sum(s."amountCents"), 0) FROM "SettlementPayment" s
        WHERE s."saleId" = o."saleId"))::bigint AS "owedCents"
    FROM "WholesaleOrder" o LEFT JOIN "Sale" sale ON sale.id = o."saleId"
    WHERE o."collectorId" = ANY(${[...ids]}::uuid[])
    ORDER BY o.number DESC LIMIT ${ordersListed}`;
  return z
    .array(orderRow)
    .parse(found)
    .map(({ askedOn, shipOn, dueOn, ...row }) => ({
      ...row,
      askedOn: dayFromDate(askedOn),
      shipOn: shipOn && dayFromDate(shipOn),
      dueOn: dueOn && dayFromDate(dueOn),
    }));
}
