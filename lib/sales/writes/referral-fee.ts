import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { idsOf } from '@/lib/collectors/reads/group';
import { dateFromDay, dayFromDate, dayOf, type Day } from '@/lib/dates/rules';
import { accounts } from '@/lib/ledger/rules';
import { postEntry } from '@/lib/ledger/writes';
import { shareCents, sumCents, type Cents } from '@/lib/money/rules';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { PayFeesInput } from '../input/referral-fee';
import { decidePayment, feePaidEntry, type FeeOwed, type FeeRefusal } from '../rules/referral-fee';

/** What a designer earned by bringing the buyer of a sale. */
export type FeeEarned = {
  saleId: string;
  saleNumber: number;
  /** The designer; never the buyer, who would get a discount instead. */
  collectorId: string;
  percent: string;
  /** What the pieces came to before tax and after discounts, in cents. */
  netCents: Cents;
  on: Day;
};

/**
 * Writes down a referral fee with an entry of its own (referral fees against fees owed); joins the
 * caller's transaction, after the sale was recorded.
 *
 * @returns the fee in cents, half a cent rounded up; null when it comes to nothing, and nothing is
 *   written
 * @example 15 in 100 of 480.00 is 72.00
 */
export async function recordReferralFee(
  tx: Tx,
  doer: Doer,
  earned: FeeEarned,
): Promise<{ amountCents: Cents } | null> {
  const { saleId, saleNumber, collectorId, percent, netCents, on } = earned;
  const amountCents = shareCents(netCents, percent, 'half-up');
  if (amountCents <= 0n) return null;
  const id = newId();
  const entryId = await postEntry(tx, {
    ...{ on, at: doer.at, staffId: doer.actor.id, paper: 'ReferralFee', paperId: id },
    memo: `Referral fee for receipt ${saleNumber}`,
    postings: [
      { account: accounts.referralFees, amountCents },
      { account: accounts.referralFeesOwed, amountCents: -amountCents, collectorId },
    ],
  });
  await tx.referralFee.create({
    data: { id, saleId, collectorId, percent, amountCents, entryId },
    select: { id: true },
  });
  await recordAudit(tx, doer, {
    did: 'noted a referral fee',
    subject: 'ReferralFee',
    subjectId: id,
    facts: { receipt: saleNumber, collectorId, percent, on, amountCents },
  });
  return { amountCents };
}

/**
 * Pays referral fees to a designer, each with an entry of its own: fees owed against the bank or the
 * drawer.
 *
 * @returns what was paid, in cents as text; refuses, in this order: not allowed, a key used for
 *   something else, and what {@link decidePayment} refuses. Of two at once one pays.
 */
export async function payReferralFee(
  doer: Doer,
  input: PayFeesInput,
): Promise<Result<{ paid: string }, FeeRefusal | NotAllowed | KeyRefusal>> {
  const may = allow(doer.actor, 'trade.keep');
  if (!may.ok) return may;
  const { requestKey: key, ...asked } = input;
  const command = {
    key,
    name: 'payReferralFee',
    staffId: doer.actor.id,
    input: asked,
    at: doer.at,
  };
  return onceOnly<{ paid: string }, FeeRefusal>(command, async (tx) => {
    const { timeZone } = await getGallery(tx);
    const today = dayOf(doer.at, timeZone);
    const decided = decidePayment(await feesOf(tx, asked), { ...asked, today });
    if (!decided.ok) return decided;
    for (const fee of decided.value) await payOne(tx, doer, { fee, ...asked });
    return ok({ paid: sumCents(decided.value.map((fee) => fee.amountCents)).toString() });
  });
}

/** The fees asked for; those earned under another name of the designer are paid to the one asked. */
async function feesOf(
  tx: Tx,
  { collectorId, feeIds }: { collectorId: string; feeIds: readonly string[] },
): Promise<FeeOwed[]> {
  const ids = await idsOf(tx, collectorId);
  const rows = await tx.referralFee.findMany({
    where: { id: { in: [...feeIds] } },
    select: {
      ...{ id: true, collectorId: true, amountCents: true, paidOn: true },
      sale: { select: { number: true, returns: { select: takenBack } } },
      entry: { select: { on: true } },
    },
    orderBy: { id: 'asc' },
  });
  return rows.map(({ sale, entry, paidOn, amountCents, ...row }) => ({
    ...{ ...row, receipt: sale.number, earnedOn: dayFromDate(entry.on) },
    amountCents: amountCents - sumCents(sale.returns.flatMap(backOf)),
    paidOn: paidOn && dayFromDate(paidOn),
    collectorId: ids.includes(row.collectorId) ? collectorId : row.collectorId,
  }));
}

/** What a return took back of the fee stands in its own entry. */
const takenBack = {
  entry: {
    select: {
      postings: {
        where: { accountCode: accounts.referralFeesOwed },
        select: { amountCents: true },
      },
    },
  },
} as const;

function backOf({ entry }: { entry: { postings: { amountCents: Cents }[] } }): Cents[] {
  return entry.postings.map(({ amountCents }) => amountCents);
}

type Paid = { fee: FeeOwed } & Pick<PayFeesInput, 'how' | 'paidOn'>;

async function payOne(tx: Tx, doer: Doer, { fee, how, paidOn }: Paid): Promise<void> {
  const paidEntryId = await postEntry(tx, {
    ...{ on: paidOn, at: doer.at, staffId: doer.actor.id, paper: 'ReferralFee', paperId: fee.id },
    memo: `Referral fee for receipt ${fee.receipt} paid`,
    postings: feePaidEntry(fee, how),
  });
  await tx.referralFee.update({
    where: { id: fee.id, paidOn: null },
    data: { paidOn: dateFromDay(paidOn), paidEntryId },
    select: { id: true },
  });
  await recordAudit(tx, doer, {
    ...{ did: 'paid a referral fee', subject: 'ReferralFee', subjectId: fee.id },
    facts: { receipt: fee.receipt, amountCents: fee.amountCents, how, paidOn },
  });
}
