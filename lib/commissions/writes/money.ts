import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { TakePaymentInput } from '@/lib/commissions/input/money';
import { readTotal } from '@/lib/commissions/reads/agreement/total';
import { paidCents } from '@/lib/commissions/rules/facts';
import { receivableCents } from '@/lib/commissions/rules/money/held';
import { decidePayment } from '@/lib/commissions/rules/money/sums';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import type { PaymentKind } from '@/lib/commissions/rules/words';
import { dateFromDay, dayFromDate } from '@/lib/dates/rules';
import { receivedEntry } from '@/lib/ledger/rules';
import { postEntry } from '@/lib/ledger/writes';
import type { Cents } from '@/lib/money/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { looksLikeCardNumber } from '@/lib/money/rules/card-number';
import {
  carryOut,
  findForWriting,
  tellHistory,
  type AnyRefusal,
  type FoundCommission,
} from './carry-out';

/** Money that comes in, in cents. */
export type PaymentToTake = {
  commissionId: string;
  instalmentId: string | null;
  amountCents: Cents;
  kind: PaymentKind;
  reference: string;
  paidBy: string;
  /** What is more than is owed is kept for them. */
  keepsRest?: boolean | undefined;
  /** It is another payment, and not the same one twice. */
  isAnother?: boolean | undefined;
};

/** The slip's number. */
export type PaymentTaken = { paymentId: string; number: number; commissionNumber: number };

/**
 * Takes a payment for a commission. Before the hand-over it is a deposit, a debt to the collector;
 * after it, and after an early end of which something is owed, less is owed by the collector. What
 * is more than is owed then is a debt to them again.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended
 *   early with nothing owed, not agreed yet, a card's number in the reference, a payment nobody asked for, more than
 *   is owed in all (unless the rest is kept for them), what looks like the same payment twice
 *   (unless it is said to be another)
 * @source OpenStax, Principles of Accounting, volume 1, section 12.2
 * @example two people take the last 100.00 at once: one is kept, the other is told nothing is owed
 */
export async function takePayment(
  doer: Doer,
  input: TakePaymentInput,
): Promise<Result<PaymentTaken, AnyRefusal>> {
  const { requestKey, ...payment } = input;
  const command = {
    name: 'takePayment',
    permission: 'commissions.take_money',
    key: requestKey,
    input: payment,
  } as const;
  return carryOut(doer, command, (tx) => addPayment(tx, doer, payment));
}

/**
 * The step of {@link takePayment}: joins the caller's transaction, asks nobody for leave.
 *
 * @param postedBy the entry by which the money is in the books already, when a slip took it; null
 *   posts an entry of its own
 */
export async function addPayment(
  tx: Tx,
  doer: Doer,
  payment: PaymentToTake,
  postedBy: string | null = null,
): Promise<Result<PaymentTaken, CommissionRefusal>> {
  const found = await findForWriting(tx, doer, payment.commissionId);
  if (!found.ok) return found;
  const refusal = await refusalToTake(tx, found.value, payment);
  if (refusal) return refuse(refusal);
  const { id, today } = found.value;
  const paymentId = newId();
  const { number } = await tx.commissionPayment.create({
    data: {
      ...rowOf(payment),
      id: paymentId,
      receivedOn: dateFromDay(today),
      receivedAt: doer.at,
      staffId: doer.actor.id,
      entryId:
        postedBy ?? (await postPayment(tx, doer, { found: found.value, payment, paymentId })),
    },
    select: { number: true },
  });
  const { amountCents, kind, paidBy } = payment;
  const facts = { number, amountCents, kind, paidBy };
  await tellHistory(tx, doer, { commissionId: id, did: 'took a payment', facts });
  return ok({ paymentId, number, commissionNumber: found.value.number });
}

function rowOf({
  commissionId,
  instalmentId,
  amountCents,
  kind,
  reference,
  paidBy,
}: PaymentToTake) {
  return { commissionId, instalmentId, amountCents, kind, reference, paidBy };
}

async function refusalToTake(
  tx: Tx,
  found: FoundCommission,
  payment: PaymentToTake,
): Promise<CommissionRefusal | null> {
  const { ending, agreement } = found.facts;
  if (ending && receivableCents(found.facts) === 0n) {
    return { code: 'ended_early', endedOn: ending.endedOn };
  }
  if (!agreement) return { code: 'not_agreed_yet' };
  if (looksLikeCardNumber(payment.reference)) return { code: 'card_number_in_reference' };
  if (payment.instalmentId !== null) {
    const asked = await tx.instalment.findFirst({
      where: { id: payment.instalmentId, commissionId: found.id },
      select: { id: true },
    });
    if (!asked) return { code: 'unknown_instalment' };
  }
  const owed = await owedNowCents(tx, found);
  const decided = decidePayment(owed, payment.amountCents, payment.keepsRest ?? false);
  if (!decided.ok) return decided.refusal;
  return payment.isAnother ? null : sameAgain(tx, found, payment);
}

/**
 * The same amount, the same way, on the same day, or with the same slip or cheque number on any:
 * asked about, since it may be the same money.
 */
async function sameAgain(
  tx: Tx,
  found: FoundCommission,
  { amountCents, kind, reference }: PaymentToTake,
): Promise<CommissionRefusal | null> {
  const same = await tx.commissionPayment.findFirst({
    where: {
      ...{ commissionId: found.id, amountCents, kind, reference },
      ...(reference === '' ? { receivedOn: dateFromDay(found.today) } : {}),
    },
    select: { number: true, receivedOn: true },
    orderBy: { number: 'desc' },
  });
  if (!same) return null;
  const { number, receivedOn } = same;
  return { code: 'looks_like_twice', number, receivedOn: dayFromDate(receivedOn) };
}

async function owedNowCents(tx: Tx, found: FoundCommission): Promise<Cents> {
  const { facts, today, gallery } = found;
  if (facts.handOver || facts.ending) return receivableCents(facts);
  const total = await readTotal(tx, found.id, { on: today, roundBy: gallery.roundTaxBy });
  const leftCents = (total?.totalCents ?? 0n) - paidCents(facts);
  return leftCents > 0n ? leftCents : 0n;
}

async function postPayment(
  tx: Tx,
  doer: Doer,
  taken: { found: FoundCommission; payment: PaymentToTake; paymentId: string },
): Promise<string> {
  const { found, payment, paymentId } = taken;
  const { kind, amountCents } = payment;
  const money = { kind, amountCents, commissionId: found.id };
  return postEntry(tx, {
    on: found.today,
    at: doer.at,
    memo: `${memoOf(found)}: commission ${found.number}, ${found.title}`.slice(0, 200),
    paper: 'CommissionPayment',
    paperId: paymentId,
    staffId: doer.actor.id,
    postings: receivedEntry(money, receivableCents(found.facts)),
  });
}

function memoOf({ facts: { handOver, ending } }: FoundCommission): string {
  if (handOver) return 'Payment after the hand-over';
  return ending ? 'Payment after the early end' : 'Deposit';
}
