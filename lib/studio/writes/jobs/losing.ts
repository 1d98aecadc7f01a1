import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { invariant } from '@/lib/platform/invariant';
import { newId } from '@/lib/platform/new-id';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { BeginAnewInput, LosePiecesInput } from '@/lib/studio/input';
import { loadJobToMove, type JobToMove } from '@/lib/studio/reads/moving';
import {
  decideLoss,
  outside,
  type LossCause,
  type LossRefusal,
  type PiecesMeant,
} from '@/lib/studio/rules';
import { foretell } from '../foretell';
import { keepMove, type Moved } from './keep-move';

/** Pieces that were lost: which, why, and what was seen. */
export type Losing = PiecesMeant & {
  jobId: string;
  cause: LossCause;
  note: string;
  firingId?: string;
};

/** A loss that was written down, and how many were begun anew for it. */
export type Lost = Moved & { begunAnew: number };

/**
 * Writes pieces down as lost, with the reason; when what is left is too few, as many as are
 * missing are begun anew at once.
 *
 * @returns refuses, in this order: not allowed, something else without a word of what, then as
 *   {@link decideLoss}
 */
export async function loseJobPieces(
  doer: Doer,
  input: LosePiecesInput,
): Promise<Result<Lost, NotAllowed | LossRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'studio.move');
  if (!allowed.ok) return allowed;
  const { requestKey, ...losing } = input;
  if (losing.cause === 'other' && losing.note === '') return refuse({ code: 'say_what' });
  const command = {
    ...{ key: requestKey, name: 'loseJobPieces', staffId: doer.actor.id, at: doer.at },
    input: losing,
  };
  return onceOnly(command, (tx) => losePieces(tx, doer, losing));
}

/** The step of {@link loseJobPieces}: joins the caller's transaction, asks nobody for leave. */
export async function losePieces(
  tx: Tx,
  doer: Doer,
  losing: Losing,
): Promise<Result<Lost, LossRefusal>> {
  const job = await loadJobToMove(tx, { id: losing.jobId });
  const goesOn = !(job?.commissionId && (await hasEnded(tx, job.commissionId)));
  const isInStock = job !== null && (await tx.jobIntoStock.count({ where: { jobId: job.id } })) > 0;
  const loss = decideLoss(job, losing, { isInStock, goesOn });
  if (!loss.ok) return loss;
  invariant(job, 'Pieces of no job are not lost.');
  const { beginAnew, numbers, ...gone } = loss.value;
  const { cause, note, firingId } = losing;
  const kept = await keepMove(tx, doer, {
    ...{ job, ...gone, toPosition: outside, cause, note, firingId },
  });
  if (beginAnew > 0) {
    const makesGoodId = BigInt(kept.undoId);
    await beginPiecesAnew(tx, doer, { job, pieces: beginAnew, numbers, makesGoodId });
    await foretell(tx, doer, { jobId: job.id, why: 'remade' });
  }
  return ok({ ...kept, begunAnew: beginAnew });
}

async function hasEnded(tx: Tx, commissionId: string): Promise<boolean> {
  return (await tx.commissionEnding.count({ where: { commissionId } })) > 0;
}

/**
 * Begins more pieces of a job: spare ones, before the kiln tells. Not for a job with a numbered
 * drawing, whose spare parts are named on it.
 *
 * @returns refuses, in this order: not allowed, no such job, a job whose parts have numbers
 */
export async function beginMore(
  doer: Doer,
  input: BeginAnewInput,
): Promise<Result<Moved, NotAllowed | LossRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'studio.move');
  if (!allowed.ok) return allowed;
  const { requestKey, ...more } = input;
  const command = {
    ...{ key: requestKey, name: 'beginMore', staffId: doer.actor.id, at: doer.at, input: more },
  };
  return onceOnly<Moved, LossRefusal>(command, async (tx) => {
    const job = await loadJobToMove(tx, { id: more.jobId });
    if (!job) return refuse({ code: 'no_such_job' });
    if (job.parts.length > 0) {
      const { number: jobNumber } = job;
      return refuse({ code: 'say_which_parts', jobNumber, standing: more.pieces });
    }
    return ok(await beginPiecesAnew(tx, doer, { job, pieces: more.pieces, numbers: [] }));
  });
}

type Anew = {
  job: JobToMove;
  pieces: number;
  /** Of a job with a numbered drawing: which numbers, as many as pieces. */
  numbers: readonly number[];
  makesGoodId?: bigint;
};

/** Brings pieces from outside to "not begun", with a new part for each number. Joins the caller's transaction. */
export async function beginPiecesAnew(tx: Tx, doer: Doer, anew: Anew): Promise<Moved> {
  const { job, pieces, numbers, makesGoodId } = anew;
  const isSpare = makesGoodId === undefined;
  const made = await tx.part.groupBy({
    by: ['number'],
    where: { jobId: job.id, number: { in: [...numbers] } },
    _max: { make: true },
  });
  const makes = new Map(made.map((row) => [row.number, row._max.make ?? 0]));
  const parts = numbers.map((number) => ({
    ...{ id: newId(), jobId: job.id, number, make: (makes.get(number) ?? 0) + 1 },
    ...{ isSpare, at: doer.at },
  }));
  if (parts.length > 0) await tx.part.createMany({ data: parts });
  const partIds = parts.map(({ id }) => id);
  return keepMove(tx, doer, {
    ...{ job, fromPosition: outside, toPosition: 0, pieces, partIds },
    ...(makesGoodId === undefined ? {} : { makesGoodId }),
  });
}
