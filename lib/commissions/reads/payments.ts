import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { paidOfAsks } from '@/lib/commissions/rules/money/covered';
import { paymentKinds, type PaymentKind } from '@/lib/commissions/rules/words';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { sumCents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { invariant } from '@/lib/platform/invariant';

/** Money that was asked for, and what of it came in; in cents. */
export type InstalmentTold = {
  id: string;
  /** The number on its paper. */
  number: number;
  stepPosition: number | null;
  /** Why it was taken back; null while it holds. */
  withdrawnWhy: string | null;
  position: number;
  name: string;
  amountCents: bigint;
  /** What came in for it, under its name or under none, less what went back. */
  paidCents: bigint;
  /** What came in under its name, less what went back of that. */
  namedCents: bigint;
  askedOn: Day;
  dueOn: Day;
};

/** Money that came in, and what was there with it, less what had gone back; in cents. */
export type PaymentTold = {
  id: string;
  number: number;
  /** What of it went back. */
  backCents: bigint;
  amountCents: bigint;
  paidSoFarCents: bigint;
  kind: PaymentKind;
  reference: string;
  paidBy: string;
  receivedOn: Day;
  receivedAt: Date;
  /** What was asked for that it names; null for none. */
  instalmentId: string | null;
  forWhat: string | null;
  takenBy: string;
};

/** The money lines of a commission: what was asked for, and what came in, each in its order. */
export type MoneyLines = {
  asked: InstalmentTold[];
  payments: PaymentTold[];
  refunds: RefundTold[];
};

/** Money that went back, in cents. */
export type RefundTold = {
  number: number;
  amountCents: bigint;
  kind: PaymentKind;
  why: string;
  refundedOn: Day;
  ofPayment: number;
};

/** The money lines of a commission; for those who see money. */
export async function listMoneyLines(actor: Actor, commissionId: string): Promise<MoneyLines> {
  assertAllowed(actor, 'commissions.see_money');
  return moneyLinesForCollector(commissionId);
}

/** {@link listMoneyLines} for the collector's own page: whoever opened the link may see it. */
export async function moneyLinesForCollector(commissionId: string): Promise<MoneyLines> {
  const payments = await paymentsOf(commissionId);
  return {
    asked: await asksOf(commissionId, payments),
    payments,
    refunds: await refundsOf(commissionId),
  };
}

async function asksOf(commissionId: string, payments: PaymentTold[]): Promise<InstalmentTold[]> {
  const rows = await db().instalment.findMany({
    where: { commissionId },
    select: {
      ...{ id: true, number: true, stepPosition: true, position: true, name: true },
      ...{ amountCents: true, askedOn: true, dueOn: true },
      withdrawn: { select: { why: true } },
    },
    orderBy: { position: 'asc' },
  });
  const asked = rows.map(({ askedOn, dueOn, withdrawn, ...row }) => ({
    ...row,
    withdrawnWhy: withdrawn?.why ?? null,
    isWithdrawn: withdrawn !== null,
    namedCents: standingCents(payments.filter((each) => each.instalmentId === row.id)),
    askedOn: dayFromDate(askedOn),
    dueOn: dayFromDate(dueOn),
  }));
  const other = standingCents(payments.filter((each) => each.instalmentId === null));
  const paid = paidOfAsks(asked, other);
  return asked.map(({ isWithdrawn: _, ...ask }, at) => ({ ...ask, paidCents: paid[at] ?? 0n }));
}

function standingCents(payments: readonly PaymentTold[]): bigint {
  return sumCents(payments.map((each) => each.amountCents - each.backCents));
}

/**
 * One payment of a commission by its slip's number, with the running sum; for those who see money.
 *
 * @returns null when that number is not a payment of this commission
 */
export async function findPayment(
  actor: Actor,
  commissionId: string,
  number: number,
): Promise<PaymentTold | null> {
  assertAllowed(actor, 'commissions.see_money');
  const payments = await paymentsOf(commissionId);
  return payments.find((payment) => payment.number === number) ?? null;
}

async function paymentsOf(commissionId: string): Promise<PaymentTold[]> {
  const rows = await db().commissionPayment.findMany({
    where: { commissionId },
    select: {
      id: true,
      number: true,
      amountCents: true,
      refunds: { select: { amountCents: true, refundedAt: true } },
      kind: true,
      reference: true,
      paidBy: true,
      receivedOn: true,
      receivedAt: true,
      staffId: true,
      instalmentId: true,
      instalment: { select: { name: true } },
    },
    orderBy: { number: 'asc' },
  });
  const takers = await db().staff.findMany({
    where: { id: { in: [...new Set(rows.map((row) => row.staffId))] } },
    select: { id: true, name: true },
  });
  let cameInCents = 0n;
  const allBack = rows.flatMap(({ refunds }) => refunds);
  return rows.map(({ staffId, instalment, kind, receivedOn, refunds, ...row }) => {
    cameInCents += row.amountCents;
    const backBefore = allBack.filter((each) => each.refundedAt <= row.receivedAt);
    return {
      ...row,
      paidSoFarCents: cameInCents - sumCents(backBefore.map((each) => each.amountCents)),
      backCents: sumCents(refunds.map((refund) => refund.amountCents)),
      kind: paymentKind(kind),
      receivedOn: dayFromDate(receivedOn),
      forWhat: instalment?.name ?? null,
      takenBy: takers.find((taker) => taker.id === staffId)?.name ?? 'somebody',
    };
  });
}

async function refundsOf(commissionId: string): Promise<RefundTold[]> {
  const rows = await db().commissionRefund.findMany({
    where: { commissionId },
    select: {
      ...{ number: true, amountCents: true, kind: true, why: true, refundedOn: true },
      payment: { select: { number: true } },
    },
    orderBy: { number: 'asc' },
    take: 200,
  });
  return rows.map(({ payment, kind, refundedOn, ...row }) => ({
    ...row,
    kind: paymentKind(kind),
    refundedOn: dayFromDate(refundedOn),
    ofPayment: payment.number,
  }));
}

function paymentKind(kind: string): PaymentKind {
  const known = paymentKinds.find((each) => each === kind);
  invariant(known, 'A payment is money.');
  return known;
}
