import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { idsOf, livingId } from '@/lib/collectors/reads/group';
import { dateFromDay, dayFromDate, type Day } from '@/lib/dates/rules';
import type { ShopRefusal } from '../rules';

/** A shop: a business among the people, with where it is. */
export type Shop = {
  id: string;
  name: string;
  street: string | null;
  city: string | null;
  state: string | null;
  postcode: string | null;
  email: string | null;
  phone: string | null;
};

/** A shop by its id, or by one found to be the same; null for nobody and for who is no business. */
export async function findShop(
  from: Prisma.TransactionClient,
  shopId: string,
): Promise<Shop | null> {
  const id = await livingId(from, shopId);
  if (id === null) return null;
  return from.collector.findUnique({
    where: { id, kind: 'business' },
    select: {
      ...{ id: true, name: true, street: true, city: true, state: true },
      ...{ postcode: true, email: true, phone: true },
    },
  });
}

/**
 * The promise that keeps our pieces from a shop on a day, because its town is promised to another.
 *
 * @returns null when the shop's town is free, its own, or not known
 */
export async function promiseInTheWay(
  from: Prisma.TransactionClient,
  shop: Pick<Shop, 'id' | 'city' | 'state'>,
  on: Day,
): Promise<Extract<ShopRefusal, { code: 'town_is_promised' }> | null> {
  const { city, state } = shop;
  if (city === null || state === null) return null;
  const ids = await idsOf(from, shop.id);
  const promise = await from.townPromise.findFirst({
    where: {
      town: { equals: city.trim(), mode: 'insensitive' },
      state: { equals: state.trim(), mode: 'insensitive' },
      collectorId: { notIn: [...ids] },
      fromOn: { lte: dateFromDay(on) },
      OR: [{ untilOn: null }, { untilOn: { gt: dateFromDay(on) } }],
    },
    select: { town: true, untilOn: true, collector: { select: { name: true } } },
  });
  if (!promise) return null;
  const { town, untilOn, collector } = promise;
  const until = untilOn && dayFromDate(untilOn);
  return { code: 'town_is_promised', town, shop: collector.name, untilOn: until };
}
