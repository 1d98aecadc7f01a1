import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import type { Day } from '@/lib/dates/rules';
import { accounts } from '@/lib/ledger/rules';
import { postEntry } from '@/lib/ledger/writes';
import { shareCents, type Cents } from '@/lib/money/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';

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
