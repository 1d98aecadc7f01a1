import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dateFromDay, dayFromDate, type Day } from '@/lib/dates/rules';
import type { TenderKind } from '@/lib/ledger/rules';
import type { Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { readSoldSale } from './reads/sold-sale';
import type { ReturnedTo, ReturnKind, SoldSale } from './rules/sold';

/** The most returns that a day shows. */
export const returnsListed = 100;

/** The paper that answers a sale: what came back and what was given back. */
export type ReturnPaper = {
  number: number;
  kind: ReturnKind;
  reason: string;
  at: Date;
  on: Day;
  by: string;
  receiptNumber: number;
  soldOn: Day;
  collector: { id: string; name: string } | null;
  lines: {
    id: string;
    title: string;
    what: string;
    quantity: number;
    editionNumber: number | null;
    netCents: Cents;
    to: ReturnedTo;
  }[];
  taxes: { authority: string; taxCents: Cents }[];
  refunds: { id: string; kind: TenderKind; paidBy: TenderKind; amountCents: Cents }[];
  /** The store credit that it was put on, or the voucher that it went back onto. */
  credits: { code: string; amountCents: Cents }[];
  netCents: Cents;
  taxCents: Cents;
  feeCents: Cents;
  totalCents: Cents;
  entryNumber: number;
};

const columns = {
  ...{ number: true, kind: true, reason: true, at: true, returnedOn: true, staffId: true },
  ...{ netCents: true, taxCents: true, feeCents: true, totalCents: true },
  entry: { select: { number: true } },
  sale: {
    select: {
      ...{ number: true, soldOn: true },
      collector: { select: { id: true, name: true } },
    },
  },
  lines: {
    orderBy: [{ saleLine: { position: 'asc' } }, { editionNumber: 'asc' }, { id: 'asc' }],
    select: {
      ...{ id: true, quantity: true, editionNumber: true, netCents: true, to: true },
      saleLine: { select: { title: true, what: true } },
    },
  },
  taxes: { orderBy: { authority: 'asc' }, select: { authority: true, taxCents: true } },
  refunds: {
    orderBy: { id: 'asc' },
    select: { id: true, kind: true, amountCents: true, tender: { select: { kind: true } } },
  },
  credits: {
    where: { amountCents: { gt: 0n } },
    orderBy: { id: 'asc' },
    select: { amountCents: true, credit: { select: { code: true } } },
  },
} as const satisfies Prisma.GoodsReturnSelect;

/** The return of that number; null when there is none. */
export async function findReturn(actor: Actor, number: number): Promise<ReturnPaper | null> {
  assertAllowed(actor, 'receipts.see');
  const row = await db().goodsReturn.findUnique({ where: { number }, select: columns });
  if (!row) return null;
  const { entry, sale, lines, refunds, credits, returnedOn, staffId, ...kept } = row;
  const by = await db().staff.findUnique({ where: { id: staffId }, select: { name: true } });
  return {
    ...kept,
    on: dayFromDate(returnedOn),
    by: by?.name ?? '',
    receiptNumber: sale.number,
    soldOn: dayFromDate(sale.soldOn),
    collector: sale.collector,
    entryNumber: entry.number,
    lines: lines.map(({ saleLine, ...line }) => ({ ...line, ...saleLine })),
    refunds: refunds.map(({ tender, ...refund }) => ({ ...refund, paidBy: tender.kind })),
    credits: credits.map(({ credit, amountCents }) => ({ code: credit.code, amountCents })),
  };
}

/** A return in a day's list. */
export type ReturnInList = {
  number: number;
  receiptNumber: number;
  kind: ReturnKind;
  at: Date;
  titles: string[];
  totalCents: Cents;
};

/** What came back on a day, the newest first; at most 100. */
export async function listReturnsOn(actor: Actor, day: Day): Promise<ReturnInList[]> {
  assertAllowed(actor, 'receipts.see');
  const rows = await db().goodsReturn.findMany({
    where: { returnedOn: dateFromDay(day) },
    orderBy: { number: 'desc' },
    take: returnsListed,
    select: {
      ...{ number: true, kind: true, at: true, totalCents: true },
      sale: { select: { number: true } },
      lines: { orderBy: { id: 'asc' }, select: { saleLine: { select: { title: true } } } },
    },
  });
  return rows.map(({ sale, lines, ...row }) => ({
    ...row,
    receiptNumber: sale.number,
    titles: lines.map((line) => line.saleLine.title),
  }));
}

/** A sale as the page that takes pieces back needs it; null when no receipt has that number. */
export async function findSoldSale(actor: Actor, number: number): Promise<SoldSale | null> {
  assertAllowed(actor, 'counter.give_back');
  return readSoldSale(db(), { number });
}
