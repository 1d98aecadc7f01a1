import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { GiveBackInput } from '@/lib/commissions/input/money';
import { refundEntry } from '@/lib/commissions/rules/money/ending';
import { heldCents } from '@/lib/commissions/rules/money/held';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import type { PaymentKind } from '@/lib/commissions/rules/words';
import {
  carryOut,
  findForWriting,
  tellHistory,
  type AnyRefusal,
  type FoundCommission,
} from '@/lib/commissions/writes/carry-out';
import { dateFromDay } from '@/lib/dates/rules';
import { accountOfMoney } from '@/lib/ledger/rules';
import { postEntry } from '@/lib/ledger/writes';
import { sumCents, type Cents } from '@/lib/money/rules';
import { looksLikeCardNumber } from '@/lib/money/rules/card-number';
import type { Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** Money that went back, by the number of its paper. */
export type GivenBack = { number: number; commissionNumber: number };

/** Money to give back of one payment, in cents. */
export type MoneyToGiveBack = {
  commissionId: string;
  paymentId: string;
  amountCents: Cents;
  kind: PaymentKind;
  reference: string;
  why: string;
};

/**
 * Gives money back of a payment: at most what is left of it, and only what is still held for the
 * collector. After the hand-over that is what was paid beyond the whole; after an early end what did
 * not stay.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, a card's
 *   number in the reference, no such payment, more than is left of it, more than is held
 * @example two people give the same payment back at once: one does, the other is told it is gone
 */
export async function giveBack(
  doer: Doer,
  input: GiveBackInput,
): Promise<Result<GivenBack, AnyRefusal>> {
  const { requestKey, ...refund } = input;
  const command = {
    name: 'giveBack',
    permission: 'commissions.give_back',
    key: requestKey,
    input: refund,
  } as const;
  return carryOut(doer, command, (tx) => addRefund(tx, doer, refund));
}

/** The step of {@link giveBack}: joins the caller's transaction, asks nobody for leave. */
export async function addRefund(
  tx: Tx,
  doer: Doer,
  refund: MoneyToGiveBack,
): Promise<Result<GivenBack, CommissionRefusal>> {
  const found = await findForWriting(tx, doer, refund.commissionId);
  if (!found.ok) return found;
  const { commissionId, paymentId, amountCents, why } = refund;
  if (looksLikeCardNumber(refund.reference)) return refuse({ code: 'card_number_in_reference' });
  const leftCents = await leftOfPayment(tx, commissionId, paymentId);
  if (leftCents === null) return refuse({ code: 'unknown_payment' });
  if (amountCents > leftCents) return refuse({ code: 'refund_above_payment', leftCents });
  const held = heldCents(found.value.facts);
  if (amountCents > held) return refuse({ code: 'refund_needs_deposit', heldCents: held });

  const id = newId();
  const { number } = await tx.commissionRefund.create({
    data: {
      ...{ ...refund, id, refundedAt: doer.at, staffId: doer.actor.id },
      refundedOn: dateFromDay(found.value.today),
      entryId: await postRefund(tx, doer, { found: found.value, refund, id }),
    },
    select: { number: true },
  });
  const facts = { number, amountCents, kind: refund.kind, why };
  await tellHistory(tx, doer, { commissionId, did: 'gave money back', facts });
  return ok({ number, commissionNumber: found.value.number });
}

async function leftOfPayment(tx: Tx, commissionId: string, id: string): Promise<Cents | null> {
  const payment = await tx.commissionPayment.findFirst({
    where: { id, commissionId },
    select: { amountCents: true, refunds: { select: { amountCents: true } } },
  });
  if (!payment) return null;
  return payment.amountCents - sumCents(payment.refunds.map((refund) => refund.amountCents));
}

async function postRefund(
  tx: Tx,
  doer: Doer,
  { found, refund, id }: { found: FoundCommission; refund: MoneyToGiveBack; id: string },
): Promise<string> {
  const { amountCents, commissionId, kind } = refund;
  return postEntry(tx, {
    on: found.today,
    at: doer.at,
    memo: `Given back: commission ${found.number}, ${found.title}`.slice(0, 200),
    paper: 'CommissionRefund',
    paperId: id,
    staffId: doer.actor.id,
    postings: refundEntry({ moneyAccount: accountOfMoney[kind], amountCents, commissionId }),
  });
}
