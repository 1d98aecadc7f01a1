import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { LetMakingBeginInput, OpenCommissionJobInput } from '@/lib/commissions/input/course';
import { mayBegin } from '@/lib/commissions/rules/facts';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import type { Day } from '@/lib/dates/rules';
import { invariant } from '@/lib/platform/invariant';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { Technique } from '@/lib/studio/rules';
import { openJob, type OpenedJob } from '@/lib/studio/writes';
import { carryOut, findOpen, tellHistory, type AnyRefusal } from './carry-out';

/** The owner's word that the making may begin, and the reason. */
export type WordToBegin = { commissionId: string; why: string };

/**
 * Lets the making begin before everything is there; the reason is kept and shown.
 *
 * @returns refuses, in this order: not allowed (the owner alone), a key used for something else,
 *   unknown, ended early, handed over, let begin already, everything there already
 */
export async function letMakingBegin(
  doer: Doer,
  input: LetMakingBeginInput,
): Promise<Result<{ commissionNumber: number }, AnyRefusal>> {
  const { requestKey, ...word } = input;
  const command = {
    name: 'letMakingBegin',
    permission: 'commissions.override_start',
    key: requestKey,
    input: word,
  } as const;
  return carryOut(doer, command, (tx) => addWordToBegin(tx, doer, word));
}

/** The step of {@link letMakingBegin}: joins the caller's transaction, asks nobody for leave. */
export async function addWordToBegin(
  tx: Tx,
  doer: Doer,
  word: WordToBegin,
): Promise<Result<{ commissionNumber: number }, CommissionRefusal>> {
  const found = await findOpen(tx, doer, word.commissionId);
  if (!found.ok) return found;
  const { facts, number } = found.value;
  if (facts.override) return refuse({ code: 'let_begin_already' });
  const { missing } = mayBegin(facts, found.value.today);
  if (missing.length === 0) return refuse({ code: 'may_begin_already' });
  const { commissionId, why } = word;
  await tx.startOverride.create({
    data: { commissionId, why, staffId: doer.actor.id, at: doer.at },
    select: { commissionId: true },
  });
  const did = 'let the making begin before everything was there';
  await tellHistory(tx, doer, { commissionId, did, facts: { why, missing } });
  return ok({ commissionNumber: number });
}

/** A job that was opened, and for which commission. */
export type OpenedFor = OpenedJob & { commissionNumber: number };

/** A job to open for a commission. */
export type JobToOpenFor = {
  commissionId: string;
  technique: Technique;
  /** How many parts go through the studio together, spares included. */
  pieces: number;
  /** How many the picture has; all of them unless it is said. */
  wanted?: number | undefined;
  neededOn: Day | null;
};

/**
 * Opens the job of a commission in the studio; its clay may begin later.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended
 *   early, handed over, not agreed yet (unless the owner let it begin)
 */
export async function openCommissionJob(
  doer: Doer,
  input: OpenCommissionJobInput,
): Promise<Result<OpenedFor, AnyRefusal>> {
  const { requestKey, ...job } = input;
  const command = {
    name: 'openCommissionJob',
    permission: 'commissions.write',
    key: requestKey,
    input: job,
  } as const;
  return carryOut(doer, command, (tx) => addCommissionJob(tx, doer, job));
}

/** The step of {@link openCommissionJob}: joins the caller's transaction, asks nobody for leave. */
export async function addCommissionJob(
  tx: Tx,
  doer: Doer,
  job: JobToOpenFor,
): Promise<Result<OpenedFor, CommissionRefusal>> {
  const found = await findOpen(tx, doer, job.commissionId);
  if (!found.ok) return found;
  const { facts, title } = found.value;
  if (!facts.agreement && !facts.override) return refuse({ code: 'not_agreed_yet' });
  const { commissionId, technique, pieces } = job;
  const wanted = Math.min(job.wanted ?? pieces, pieces);
  const neededOn = job.neededOn ?? facts.agreement?.promisedOn ?? null;
  const opened = await openJob(tx, doer, {
    ...{ commissionId, title, technique, pieces, wanted, neededOn },
  });
  invariant(opened.ok, 'A commission that is going on can have a job.');
  const { number } = opened.value;
  const did = 'opened the job';
  await tellHistory(tx, doer, { commissionId, did, facts: { number, technique, pieces, wanted } });
  return ok({ ...opened.value, commissionNumber: found.value.number });
}
