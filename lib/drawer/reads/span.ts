import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import type { TenderKind } from '@/lib/ledger/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import {
  addPurposes,
  newMoneyOf,
  sheetLines,
  type MoneyIn,
  type NewMoney,
  type SaleOfDay,
  type SheetLine,
} from '../rules/day-sheet';

/** The most sales and payments that one sheet gathers. */
const gatheredMost = 5_000;

/** A stretch of time between two counts: after the one, up to the other. */
export type Span = { after: Date | null; until: Date };

/** A cheque that came in, by name. */
export type ChequeIn = { from: string; reference: string; amountCents: Cents; paper: string };

/** What came in and went out between two counts. */
export type DayMoney = {
  /** By the bookkeeper's names; all of it new money. */
  moneyIn: Record<MoneyIn, Cents>;
  /** New money by how it was paid. */
  paid: Record<NewMoney, Cents>;
  /** Money given back, by how. */
  refunded: Record<NewMoney, Cents>;
  petty: { number: number; what: string; amountCents: Cents }[];
  cheques: ChequeIn[];
  /** The drawer's sheet, line by line, to what should be there. */
  sheet: SheetLine[];
  saleCount: number;
};

/** Gathers a stretch of time for its sheet. */
export async function readDayMoney(
  actor: Actor,
  span: Span,
  drawer: { floatCents: Cents; expectedCents: Cents },
): Promise<DayMoney> {
  assertAllowed(actor, 'receipts.see');
  const [sales, payments, settlements, refunds, petty] = await Promise.all([
    salesOf(span),
    paymentsOf(span),
    settlementsOf(span),
    refundsOf(span),
    pettyOf(span),
  ]);
  const singles = [...payments, ...settlements];
  const moneyIn = addPurposes([
    ...sales.map((sale) => newMoneyOf(sale)),
    ...singles.map(({ name, amountCents }) => new Map([[name, amountCents]])),
  ]);
  const cashIn = addPurposes([
    ...sales.map((sale) => newMoneyOf(sale, (kind) => kind === 'cash')),
    ...singles
      .filter(({ kind }) => kind === 'cash')
      .map(({ name, amountCents }) => new Map([[name, amountCents]])),
  ]);
  const paid = byKind([...sales.flatMap((sale) => sale.tenders), ...singles]);
  const refunded = byKind(refunds);
  const cheques = [...sales.flatMap(chequesOf), ...singles.flatMap(chequeOf)];
  const sheet = sheetLines({ ...drawer, cashIn, refundedCents: refunded.cash, petty });
  return { moneyIn, paid, refunded, petty, cheques, sheet, saleCount: sales.length };
}

function within({ after, until }: Span) {
  return { lte: until, ...(after ? { gt: after } : {}) };
}

type SaleRead = Omit<SaleOfDay, 'tenders'> & {
  collector: { name: string } | null;
  tenders: readonly { kind: TenderKind; amountCents: Cents; reference: string }[];
};

async function salesOf(span: Span): Promise<SaleRead[]> {
  return db().sale.findMany({
    where: { soldAt: within(span) },
    orderBy: { number: 'asc' },
    take: gatheredMost,
    select: {
      ...{ number: true, taxCents: true, collector: { select: { name: true } } },
      lines: { select: { kind: true, netCents: true } },
      tenders: { select: { kind: true, amountCents: true, reference: true } },
    },
  });
}

type Single = {
  name: MoneyIn;
  kind: TenderKind;
  amountCents: Cents;
  reference: string;
  from: string;
  paper: string;
};

/** Money for a commission: a deposit before the hand-over, a balance after it. */
async function paymentsOf(span: Span): Promise<Single[]> {
  const rows = await db().commissionPayment.findMany({
    where: { receivedAt: within(span) },
    orderBy: { number: 'asc' },
    take: gatheredMost,
    select: {
      ...{ number: true, kind: true, amountCents: true, reference: true, receivedAt: true },
      commission: {
        select: {
          collector: { select: { name: true } },
          handOver: { select: { sale: { select: { soldAt: true } } } },
        },
      },
    },
  });
  return rows.map(({ number, commission, receivedAt, ...payment }) => {
    const handedAt = commission.handOver?.sale.soldAt ?? null;
    const name = handedAt !== null && handedAt <= receivedAt ? 'balances' : 'deposits';
    return { ...payment, name, from: commission.collector.name, paper: `payment ${number}` };
  });
}

async function settlementsOf(span: Span): Promise<Single[]> {
  const rows = await db().settlementPayment.findMany({
    where: { at: within(span) },
    orderBy: { number: 'asc' },
    take: gatheredMost,
    select: {
      ...{ number: true, kind: true, amountCents: true, reference: true },
      sale: { select: { number: true, collector: { select: { name: true } } } },
    },
  });
  return rows.map(({ number: _number, sale, ...payment }) => {
    const from = sale.collector?.name ?? 'somebody without a name';
    return { ...payment, name: 'balances', from, paper: `for receipt ${sale.number}` };
  });
}

async function refundsOf(span: Span): Promise<{ kind: TenderKind; amountCents: Cents }[]> {
  return db().refund.findMany({
    where: { goodsReturn: { at: within(span) } },
    orderBy: { id: 'asc' },
    take: gatheredMost,
    select: { kind: true, amountCents: true },
  });
}

async function pettyOf(span: Span): Promise<DayMoney['petty']> {
  return db().pettyCash.findMany({
    where: { at: within(span) },
    orderBy: { number: 'asc' },
    take: gatheredMost,
    select: { number: true, what: true, amountCents: true },
  });
}

function byKind(
  each: readonly { kind: TenderKind; amountCents: Cents }[],
): Record<NewMoney, Cents> {
  const sum = (kind: NewMoney): Cents =>
    sumCents(each.filter((one) => one.kind === kind).map((one) => one.amountCents));
  return {
    cash: sum('cash'),
    card: sum('card'),
    cheque: sum('cheque'),
    bank_transfer: sum('bank_transfer'),
  };
}

function chequesOf(sale: SaleRead): ChequeIn[] {
  return sale.tenders.flatMap(({ kind, amountCents, reference }) =>
    kind === 'cheque'
      ? [
          {
            ...{ from: sale.collector?.name ?? 'somebody without a name', reference, amountCents },
            paper: `receipt ${sale.number}`,
          },
        ]
      : [],
  );
}

function chequeOf({ kind, from, reference, amountCents, paper }: Single): ChequeIn[] {
  return kind === 'cheque' ? [{ from, reference, amountCents, paper }] : [];
}
