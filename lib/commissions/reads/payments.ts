import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { paymentKinds, type PaymentKind } from '@/lib/commissions/rules/words';
import { dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { invariant } from '@/lib/platform/invariant';

/** Money that was asked for, and what of it came in; in cents. */
export type InstalmentTold = {
  id: string;
  position: number;
  name: string;
  amountCents: bigint;
  paidCents: bigint;
  askedOn: Day;
  dueOn: Day;
};

/** Money that came in, and the sum of everything up to it; in cents. */
export type PaymentTold = {
  number: number;
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
export type MoneyLines = { asked: InstalmentTold[]; payments: PaymentTold[] };

/** The money lines of a commission; for those who see money. */
export async function listMoneyLines(actor: Actor, commissionId: string): Promise<MoneyLines> {
  assertAllowed(actor, 'commissions.see_money');
  const asked = await db().instalment.findMany({
    where: { commissionId },
    select: {
      id: true,
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
    asked: asked.map(({ payments, askedOn, dueOn, ...row }) => ({
      ...row,
      paidCents: payments.reduce((sum, payment) => sum + payment.amountCents, 0n),
      askedOn: dayFromDate(askedOn),
      dueOn: dayFromDate(dueOn),
    })),
    payments: await paymentsOf(commissionId),
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
      number: true,
      amountCents: true,
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
  return rows.map(({ staffId, instalment, kind, receivedOn, ...row }) => {
    paidSoFarCents += row.amountCents;
    return {
      ...row,
      paidSoFarCents,
      kind: paymentKind(kind),
      receivedOn: dayFromDate(receivedOn),
      forWhat: instalment?.name ?? null,
      takenBy: takers.find((taker) => taker.id === staffId)?.name ?? 'somebody',
    };
  });
}

function paymentKind(kind: string): PaymentKind {
  const known = paymentKinds.find((each) => each === kind);
  invariant(known, 'A payment is money.');
  return known;
}
