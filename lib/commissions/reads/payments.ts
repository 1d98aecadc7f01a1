import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
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
  paidCents: bigint;
  askedOn: Day;
  dueOn: Day;
};

/** Money that came in, and the sum of everything up to it; in cents. */
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
  const asked = await db().instalment.findMany({
    where: { commissionId },
    select: {
      id: true,
      number: true,
      stepPosition: true,
      withdrawn: { select: { why: true } },
      position: true,
      name: true,
      amountCents: true,
      askedOn: true,
      dueOn: true,
      payments: { select: { amountCents: true } },
    },
    orderBy: { position: 'asc' },
  });
  return {
    asked: asked.map(({ payments, askedOn, dueOn, withdrawn, ...row }) => ({
      ...row,
      withdrawnWhy: withdrawn?.why ?? null,
      paidCents: payments.reduce((sum, payment) => sum + payment.amountCents, 0n),
      askedOn: dayFromDate(askedOn),
      dueOn: dayFromDate(dueOn),
    })),
    payments: await paymentsOf(commissionId),
    refunds: await refundsOf(commissionId),
  };
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
      refunds: { select: { amountCents: true } },
      kind: true,
      reference: true,
      paidBy: true,
      receivedOn: true,
      receivedAt: true,
      staffId: true,
      instalment: { select: { name: true } },
    },
    orderBy: { number: 'asc' },
  });
  const takers = await db().staff.findMany({
    where: { id: { in: [...new Set(rows.map((row) => row.staffId))] } },
    select: { id: true, name: true },
  });
  let paidSoFarCents = 0n;
  return rows.map(({ staffId, instalment, kind, receivedOn, refunds, ...row }) => {
    paidSoFarCents += row.amountCents;
    return {
      ...row,
      paidSoFarCents,
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
