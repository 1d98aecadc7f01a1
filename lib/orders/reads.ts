import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { addDays, dateFromDay, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { orderColumns, orderOf, type OrderShown } from './reads/order';

/** The most orders that the list shows of each sort. */
export const ordersListed = 200;
/** How long an order that is over stays on the list, in days. */
const overShownDays = 60;

/** The special orders that run, and those that are over since a short while. */
export type OrderList = { open: OrderShown[]; over: OrderShown[] };

/** All special orders in sight: those that run by their day, late first; then those that are over. */
export async function listOrders(actor: Actor, todayOn: Day, zone: string): Promise<OrderList> {
  assertAllowed(actor, 'orders.see');
  const since = dateFromDay(addDays(todayOn, -overShownDays));
  const handedOver = { saleLines: { some: { kind: 'piece' as const } } };
  const [running, ended] = await Promise.all([
    read({ endedAt: null, NOT: handedOver }, { on: todayOn, zone }),
    read(
      { OR: [{ endedAt: { gte: since } }, { endedAt: null, ...handedOver }] },
      { on: todayOn, zone, newestFirst: true },
    ),
  ]);
  const all = [...running, ...ended];
  const isOver = ({ standing }: OrderShown) =>
    standing.where === 'ended' || standing.where === 'handed_over';
  return { open: all.filter((each) => !isOver(each)).toSorted(byDay), over: all.filter(isOver) };
}

function byDay(one: OrderShown, other: OrderShown): number {
  return one.readyAboutOn.localeCompare(other.readyAboutOn) || one.number - other.number;
}

async function read(
  where: Prisma.SpecialOrderWhereInput,
  told: { on: Day; zone: string; newestFirst?: boolean },
): Promise<OrderShown[]> {
  const rows = await db().specialOrder.findMany({
    where,
    select: orderColumns,
    orderBy: told.newestFirst ? { number: 'desc' } : [{ readyAboutOn: 'asc' }, { number: 'asc' }],
    take: ordersListed,
  });
  return rows.map((row) => orderOf(row, told.on, told.zone));
}

/** One order by its number; null when there is none. */
export async function findOrder(
  actor: Actor,
  number: number,
  told: { on: Day; zone: string },
): Promise<OrderShown | null> {
  assertAllowed(actor, 'orders.see');
  const row = await db().specialOrder.findUnique({ where: { number }, select: orderColumns });
  return row && orderOf(row, told.on, told.zone);
}
