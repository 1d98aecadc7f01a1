import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dateFromDay, dayFromDate, type Day } from '@/lib/dates/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import type { Tender } from '../rules/tenders';

/** The most receipts that a day shows. */
export const receiptsListed = 500;
/** The most receipts that are found at once, and the most that want the carrier's slip. */
const foundMost = 60;

/** A receipt in a list. */
export type ReceiptInList = {
  number: number;
  soldAt: Date;
  soldOn: Day;
  soldBy: string;
  collector: string | null;
  titles: string[];
  pieces: number;
  totalCents: Cents;
};

const inListColumns = {
  ...{ number: true, soldAt: true, soldOn: true, totalCents: true },
  staff: { select: { name: true } },
  collector: { select: { name: true } },
  lines: { orderBy: { position: 'asc' }, select: { title: true, quantity: true } },
} as const;

type InListRow = {
  number: number;
  soldAt: Date;
  soldOn: Date;
  totalCents: Cents;
  staff: { name: string };
  collector: { name: string } | null;
  lines: { title: string; quantity: number }[];
};

function inListOf({ staff, collector, lines, soldOn, ...sale }: InListRow): ReceiptInList {
  return {
    ...sale,
    soldOn: dayFromDate(soldOn),
    soldBy: staff.name,
    collector: collector?.name ?? null,
    titles: lines.map((line) => line.title),
    pieces: lines.reduce((count, line) => count + line.quantity, 0),
  };
}

/** What was sold on a day, and how it was paid. */
export type DayOfReceipts = {
  day: Day;
  receipts: ReceiptInList[];
  netCents: Cents;
  taxCents: Cents;
  totalCents: Cents;
  /** By how it was paid, largest first; what nobody used is left out. */
  paid: { kind: Tender['kind']; amountCents: Cents }[];
};

/** What was sold on a day, the newest first, with its sums; at most 500 receipts are listed. */
export async function listReceiptsOn(actor: Actor, day: Day): Promise<DayOfReceipts> {
  assertAllowed(actor, 'receipts.see');
  const where = { soldOn: dateFromDay(day) };
  const [sales, sums, tenders] = await Promise.all([
    db().sale.findMany({
      where,
      orderBy: { number: 'desc' },
      take: receiptsListed,
      select: inListColumns,
    }),
    db().sale.aggregate({ where, _sum: { netCents: true, taxCents: true, totalCents: true } }),
    db().tender.groupBy({ by: ['kind'], where: { sale: where }, _sum: { amountCents: true } }),
  ]);
  return {
    day,
    receipts: sales.map(inListOf),
    netCents: sums._sum.netCents ?? 0n,
    taxCents: sums._sum.taxCents ?? 0n,
    totalCents: sums._sum.totalCents ?? 0n,
    paid: paidBy(tenders),
  };
}

function paidBy(
  tenders: readonly { kind: Tender['kind']; _sum: { amountCents: Cents | null } }[],
): DayOfReceipts['paid'] {
  return tenders
    .map(({ kind, _sum }) => ({ kind, amountCents: sumCents([_sum.amountCents ?? 0n]) }))
    .filter((each) => each.amountCents > 0n)
    .sort((a, b) => (a.amountCents < b.amountCents ? 1 : -1));
}

/** The day of the newest receipt before today, or null: where a quiet day leads back to. */
export async function findLastDaySold(actor: Actor, before: Day): Promise<Day | null> {
  assertAllowed(actor, 'receipts.see');
  const sale = await db().sale.findFirst({
    where: { soldOn: { lt: dateFromDay(before) } },
    orderBy: [{ soldOn: 'desc' }, { number: 'desc' }],
    select: { soldOn: true },
  });
  return sale && dayFromDate(sale.soldOn);
}

/**
 * Receipts by what is known of them: the number, or letters of the collector, of a piece's title or
 * code, or of the terminal's slip number. The newest first, at most 60.
 */
export async function findReceipts(actor: Actor, letters: string): Promise<ReceiptInList[]> {
  assertAllowed(actor, 'receipts.see');
  const text = letters.trim().slice(0, 80);
  if (text === '') return [];
  const contains = { contains: text, mode: 'insensitive' as const };
  const number = /^[1-9]\d{0,8}$/.test(text) ? [{ number: Number(text) }] : [];
  const rows = await db().sale.findMany({
    where: {
      OR: [
        ...number,
        { collector: { name: contains } },
        { lines: { some: { OR: [{ title: contains }, { sku: { code: contains } }] } } },
        { tenders: { some: { reference: { endsWith: text, mode: 'insensitive' } } } },
      ],
    },
    orderBy: { number: 'desc' },
    take: foundMost,
    select: inListColumns,
  });
  return rows.map(inListOf);
}

/**
 * Sales that were sent to another state and have no carrier's slip yet, the oldest first, at most
 * 60: without it they count as sold here.
 */
export async function listProofMissing(actor: Actor): Promise<ReceiptInList[]> {
  assertAllowed(actor, 'receipts.see');
  const gallery = await db().gallery.findUnique({
    where: { id: 1 },
    select: { taxPlace: { select: { state: true } } },
  });
  if (!gallery) return [];
  const rows = await db().sale.findMany({
    where: {
      delivery: 'sent',
      proof: null,
      taxPlace: { state: { not: gallery.taxPlace.state } },
      returns: { none: { kind: 'voided' } },
    },
    orderBy: { number: 'asc' },
    take: foundMost,
    select: inListColumns,
  });
  return rows.map(inListOf);
}
