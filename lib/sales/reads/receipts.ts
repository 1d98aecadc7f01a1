import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dateFromDay, dayFromDate, type Day } from '@/lib/dates/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import type { SaleTaxDue } from '../rules/pricing';
import type { Channel } from '../rules/refusals';
import { changeCents, type Tender } from '../rules/tenders';

/** The most receipts that a day shows. */
export const receiptsListed = 500;

/** One line as it was sold. */
export type ReceiptLine = {
  position: number;
  title: string;
  what: string;
  quantity: number;
  unitPriceCents: Cents;
  netCents: Cents;
};

/** A receipt: everything that was sold, charged and paid, as it was on that day. */
export type Receipt = {
  id: string;
  number: number;
  channel: Channel;
  soldAt: Date;
  soldOn: Day;
  soldBy: string;
  collector: { id: string; name: string } | null;
  taxPlace: string;
  lines: ReceiptLine[];
  taxes: SaleTaxDue[];
  tenders: Tender[];
  netCents: Cents;
  taxCents: Cents;
  totalCents: Cents;
  changeCents: Cents;
  /** The number of its entry in the journal. */
  entryNumber: number;
};

const byPosition = { orderBy: { position: 'asc' } } as const;

const receiptColumns = {
  id: true,
  number: true,
  channel: true,
  soldAt: true,
  soldOn: true,
  netCents: true,
  taxCents: true,
  totalCents: true,
  staff: { select: { name: true } },
  collector: { select: { id: true, name: true } },
  taxPlace: { select: { name: true } },
  entry: { select: { number: true } },
  lines: {
    ...byPosition,
    select: {
      position: true,
      title: true,
      what: true,
      quantity: true,
      unitPriceCents: true,
      netCents: true,
    },
  },
  taxes: {
    orderBy: { authority: 'asc' },
    select: { authority: true, ratePercent: true, taxableCents: true, taxCents: true },
  },
  tenders: {
    ...byPosition,
    select: { kind: true, amountCents: true, givenCents: true, reference: true },
  },
} as const;

/** The receipt of that number; null when no sale has it. */
export async function findReceipt(actor: Actor, number: number): Promise<Receipt | null> {
  assertAllowed(actor, 'receipts.see');
  const sale = await db().sale.findUnique({ where: { number }, select: receiptColumns });
  if (!sale) return null;
  const { staff, taxPlace, entry, taxes, soldOn, ...kept } = sale;
  return {
    ...kept,
    soldOn: dayFromDate(soldOn),
    soldBy: staff.name,
    taxPlace: taxPlace.name,
    entryNumber: entry.number,
    taxes: taxes.map((tax) => ({ ...tax, ratePercent: tax.ratePercent.toString() })),
    changeCents: changeCents(kept.tenders),
  };
}

/** A receipt in a day's list. */
export type ReceiptInList = {
  number: number;
  soldAt: Date;
  soldBy: string;
  collector: string | null;
  titles: string[];
  pieces: number;
  totalCents: Cents;
};

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
      select: {
        number: true,
        soldAt: true,
        totalCents: true,
        staff: { select: { name: true } },
        collector: { select: { name: true } },
        lines: { ...byPosition, select: { title: true, quantity: true } },
      },
    }),
    db().sale.aggregate({ where, _sum: { netCents: true, taxCents: true, totalCents: true } }),
    db().tender.groupBy({ by: ['kind'], where: { sale: where }, _sum: { amountCents: true } }),
  ]);
  return {
    day,
    receipts: sales.map(({ staff, collector, lines, ...sale }) => ({
      ...sale,
      soldBy: staff.name,
      collector: collector?.name ?? null,
      titles: lines.map((line) => line.title),
      pieces: lines.reduce((count, line) => count + line.quantity, 0),
    })),
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
