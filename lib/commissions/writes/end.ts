import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { EndCommissionInput } from '@/lib/commissions/input/course';
import { hasBegun } from '@/lib/commissions/rules/course/standing';
import { paidCents, type CommissionFacts } from '@/lib/commissions/rules/facts';
import {
  endEntry,
  settleEnd,
  type CancelTerms,
  type EndSettled,
} from '@/lib/commissions/rules/money/ending';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { dateFromDay, type Day } from '@/lib/dates/rules';
import { postEntry } from '@/lib/ledger/writes';
import type { Cents } from '@/lib/money/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { releaseBatchesOf } from './colours/release';
import {
  carryOut,
  findOpen,
  tellHistory,
  type AnyRefusal,
  type FoundCommission,
} from './carry-out';

/** What stays and what goes back after an early end, in cents as text. */
export type EndedEarly = { keptCents: string; backCents: string; commissionNumber: number };

/** An early end to write down, and why; the fee is the agreement's unless the owner says another. */
export type EndToWrite = {
  commissionId: string;
  why: string;
  endedOn: Day;
  ownFeeCents?: Cents | null | undefined;
  fate?: string | undefined;
};

/**
 * Ends a commission before it is handed over: what stays by the agreement becomes income of its own
 * kind, and what was paid beyond it stays held until it goes back.
 *
 * @returns what stays and what goes back; refuses, in this order: not allowed, a key used for
 *   something else, unknown, ended early, handed over, a day to come, a day before the last money, a
 *   fee above the price, no word of what becomes of pieces that were begun
 */
export async function endCommission(
  doer: Doer,
  input: EndCommissionInput,
): Promise<Result<EndedEarly, AnyRefusal>> {
  const { requestKey, ...end } = input;
  const command = {
    name: 'endCommission',
    permission: 'commissions.end',
    key: requestKey,
    input: end,
  } as const;
  return carryOut(doer, command, (tx) => addEnd(tx, doer, end));
}

/** The step of {@link endCommission}: joins the caller's transaction, asks nobody for leave. */
export async function addEnd(
  tx: Tx,
  doer: Doer,
  end: EndToWrite,
): Promise<Result<EndedEarly, CommissionRefusal>> {
  const found = await findOpen(tx, doer, end.commissionId);
  if (!found.ok) return found;
  const { facts, number: commissionNumber } = found.value;
  const { commissionId, why, endedOn, ownFeeCents = null, fate = '' } = end;
  const refusal = refusalToEnd(found.value, { endedOn, ownFeeCents, fate });
  if (refusal) return refuse(refusal);
  const terms = await readCancelTerms(tx, commissionId);
  const settled = settleEnd(facts, terms, paidCents(facts), ownFeeCents);
  const { stage, feeCents, keptCents, backCents } = settled;
  await tx.commissionEnding.create({
    data: {
      ...{ commissionId, why, staffId: doer.actor.id, at: doer.at },
      ...{ stage, feeCents, keptCents, fate },
      endedOn: dateFromDay(endedOn),
      entryId: await postEnd(tx, doer, { found: found.value, settled, endedOn }),
    },
    select: { commissionId: true },
  });
  await releaseBatchesOf(tx, doer, commissionId);
  const did = 'ended the commission early';
  const told = { why, endedOn, stage, feeCents, keptCents, backCents, fate };
  await tellHistory(tx, doer, { commissionId, did, facts: told });
  return ok({
    keptCents: keptCents.toString(),
    backCents: backCents.toString(),
    commissionNumber,
  });
}

function refusalToEnd(
  { facts, today }: FoundCommission,
  { endedOn, ownFeeCents, fate }: { endedOn: Day; ownFeeCents: Cents | null; fate: string },
): CommissionRefusal | null {
  if (endedOn > today) return { code: 'day_to_come', on: endedOn };
  const movedOn = lastMoneyOn(facts);
  if (movedOn !== null && endedOn < movedOn) return { code: 'end_before_payment', movedOn };
  const priceCents = facts.agreement?.priceCents ?? 0n;
  if (ownFeeCents !== null && ownFeeCents > priceCents) {
    return { code: 'fee_above_price', priceCents };
  }
  return hasBegun(facts) && fate.trim() === '' ? { code: 'pieces_need_a_fate' } : null;
}

function lastMoneyOn({ payments, refunds }: CommissionFacts): Day | null {
  const days = [
    ...payments.map(({ receivedOn }) => receivedOn),
    ...refunds.map(({ refundedOn }) => refundedOn),
  ];
  return days.toSorted().at(-1) ?? null;
}

/** What the agreement says stays when it ends early; null before there is one. */
export async function readCancelTerms(tx: Tx, commissionId: string): Promise<CancelTerms | null> {
  const row = await tx.agreement.findFirst({
    where: { commissionId },
    select: { designFeeCents: true, cancelMakingPercent: true, cancelFinishedPercent: true },
    orderBy: { version: 'desc' },
  });
  return (
    row && {
      designFeeCents: row.designFeeCents,
      cancelMakingPercent: row.cancelMakingPercent.toString(),
      cancelFinishedPercent: row.cancelFinishedPercent.toString(),
    }
  );
}

async function postEnd(
  tx: Tx,
  doer: Doer,
  { found, settled, endedOn }: { found: FoundCommission; settled: EndSettled; endedOn: Day },
): Promise<string | null> {
  const { id: commissionId, collectorId } = found;
  const postings = endEntry(settled, { commissionId, collectorId });
  if (postings.length === 0) return null;
  return postEntry(tx, {
    on: endedOn,
    at: doer.at,
    memo: `Ended early: commission ${found.number}, ${found.title}`.slice(0, 200),
    paper: 'CommissionEnding',
    paperId: commissionId,
    staffId: doer.actor.id,
    postings,
  });
}
