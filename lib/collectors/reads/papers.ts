import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import { allow, type Actor } from '@/lib/access/rules';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { idsOf } from './group';
import { openOrders } from './still-open/open';

const papersListed = 30;

/** One paper that is open in somebody's name, by number; money in cents, null for who may not see. */
export type PaperOpen = {
  key: string;
  number: number;
  /** The title of the piece, or of the first of them. */
  title: string;
  /** The instant or the day on which it ends or is due; null when it has none. */
  untilAt: Date | null;
  untilOn: Day | null;
  totalCents: bigint | null;
};

/** A voucher or a store credit with money on it. */
export type CreditOpen = {
  code: string;
  kind: 'voucher' | 'store_credit';
  balanceCents: bigint;
  expiresOn: Day | null;
};

/** What is open in a collector's name; what their reader may not see is left out. */
export type OpenPapers = {
  holds: PaperOpen[];
  layaways: PaperOpen[];
  approvals: PaperOpen[];
  orders: PaperOpen[];
  credits: CreditOpen[];
};

const title = { sku: { select: { design: { select: { title: true } } } } } as const;

/**
 * Everything that is held, laid away, tried at home, ordered or left on a voucher for somebody,
 * under any of their names.
 */
export async function listOpenPapers(actor: Actor, collectorId: string): Promise<OpenPapers> {
  assertAllowed(actor, 'collectors.see');
  const ids = [...(await idsOf(db(), collectorId))];
  const seesHolds = allow(actor, 'stock.hold').ok;
  const seesOrders = allow(actor, 'orders.see').ok;
  const seesMoney = allow(actor, 'receipts.see').ok;
  const [holds, layaways, approvals, orders, credits] = await Promise.all([
    seesHolds ? holdsOf(ids) : [],
    seesHolds ? layawaysOf(ids) : [],
    seesHolds ? approvalsOf(ids) : [],
    seesOrders ? ordersOf(ids, seesMoney) : [],
    allow(actor, 'counter.sell').ok ? creditsOf(ids) : [],
  ]);
  return { holds, layaways, approvals, orders, credits };
}

async function holdsOf(ids: string[]): Promise<PaperOpen[]> {
  const rows = await db().hold.findMany({
    where: { collectorId: { in: ids }, endedAt: null, layawayId: null, orderId: null },
    select: { id: true, number: true, untilAt: true, ...title },
    orderBy: { number: 'desc' },
    take: papersListed,
  });
  return rows.map(({ id: key, number, untilAt, sku }) => ({
    ...{ key, number, title: sku.design.title, untilAt, untilOn: null, totalCents: null },
  }));
}

async function layawaysOf(ids: string[]): Promise<PaperOpen[]> {
  const rows = await db().layaway.findMany({
    where: { collectorId: { in: ids }, endedAt: null },
    select: {
      ...{ id: true, number: true, finalOn: true, totalCents: true },
      lines: { select: title, orderBy: { position: 'asc' }, take: 1 },
    },
    orderBy: { number: 'desc' },
    take: papersListed,
  });
  return rows.map(({ id: key, number, finalOn, totalCents, lines }) => ({
    ...{ key, number, title: lines[0]?.sku.design.title ?? '', untilAt: null, totalCents },
    untilOn: dayFromDate(finalOn),
  }));
}

async function approvalsOf(ids: string[]): Promise<PaperOpen[]> {
  const rows = await db().onApproval.findMany({
    where: { collectorId: { in: ids }, endedAt: null },
    select: {
      ...{ id: true, number: true, dueOn: true, valueCents: true },
      lines: { select: title, orderBy: { position: 'asc' }, take: 1 },
    },
    orderBy: { number: 'desc' },
    take: papersListed,
  });
  return rows.map(({ id: key, number, dueOn, valueCents, lines }) => ({
    ...{ key, number, title: lines[0]?.sku.design.title ?? '', untilAt: null },
    ...{ untilOn: dayFromDate(dueOn), totalCents: valueCents },
  }));
}

async function ordersOf(ids: string[], seesMoney: boolean): Promise<PaperOpen[]> {
  const open = await openOrders(db(), ids);
  const rows = await db().specialOrder.findMany({
    where: { id: { in: open.map(({ id }) => id) } },
    select: {
      ...{ id: true, number: true, readyAboutOn: true, quantity: true, unitPriceCents: true },
      ...title,
    },
    orderBy: { number: 'desc' },
    take: papersListed,
  });
  return rows.map(({ id: key, number, readyAboutOn, quantity, unitPriceCents, sku }) => ({
    ...{ key, number, title: sku.design.title, untilAt: null, untilOn: dayFromDate(readyAboutOn) },
    totalCents: seesMoney ? unitPriceCents * BigInt(quantity) : null,
  }));
}

async function creditsOf(ids: string[]): Promise<CreditOpen[]> {
  const rows = await db().credit.findMany({
    where: { collectorId: { in: ids }, balanceCents: { gt: 0n } },
    select: { code: true, kind: true, balanceCents: true, expiresOn: true },
    orderBy: [{ createdAt: 'desc' }, { id: 'asc' }],
    take: papersListed,
  });
  return rows.map(({ expiresOn, ...row }) => ({
    ...row,
    expiresOn: expiresOn && dayFromDate(expiresOn),
  }));
}
