import 'server-only';
import { allow, isAllowed, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay, dayOf, type Day } from '@/lib/dates/rules';
import { invariant } from '@/lib/platform/invariant';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { MoveJobInput, OpenJobInput, UndoMoveInput } from '@/lib/studio/input';
import { jobPiecesMax } from '@/lib/studio/input';
import { loadBeginFacts, loadJobToMove, type JobToMove } from '@/lib/studio/reads/moving';
import { decideMove, decideUndo, placeName, routes, type Technique } from '@/lib/studio/rules';
import type { MoveRefusal, UndoRefusal } from '@/lib/studio/rules';
import type { OpenJobRefusal } from '@/lib/studio/rules/words';

/** A job to open; of a commission, for a piece of the stock list, or of the studio's own. */
export type JobToOpen = {
  title: string;
  technique: Technique;
  /** How many travel together, spare ones included; at least 1. */
  pieces: number;
  commissionId?: string | null;
  skuId?: string | null;
  neededOn?: Day | null;
};

/** A job that was opened. */
export type OpenedJob = { id: string; number: number };

/** What happened to pieces; `undoId` takes it back. */
export type Moved = {
  undoId: string;
  jobNumber: number;
  pieces: number;
  toName: string;
  toPosition: number;
};

type Moving = { jobId: string; fromPosition: number; pieces: number };

/**
 * Opens a job with the route of its technique, as the route is today. Joins the caller's
 * transaction; whoever calls it has asked whether the doer may.
 *
 * @returns refuses, in this order: no such commission, the commission has ended, no such piece
 */
export async function openJob(
  tx: Tx,
  doer: Doer,
  job: JobToOpen,
): Promise<Result<OpenedJob, OpenJobRefusal>> {
  invariant(job.pieces >= 1 && job.pieces <= jobPiecesMax, 'A job has pieces, and not too many.');
  const { commissionId = null, skuId = null, neededOn = null } = job;
  const refusal = await refusalToOpen(tx, commissionId, skuId);
  if (refusal) return refuse(refusal);

  const { title, technique, pieces } = job;
  const opened = await tx.job.create({
    data: {
      title,
      technique,
      pieces,
      commissionId,
      skuId,
      neededOn: neededOn && dateFromDay(neededOn),
      openedById: doer.actor.id,
      openedAt: doer.at,
    },
    select: { id: true, number: true },
  });
  await tx.jobStep.createMany({
    data: routes[technique].map((step, index) => ({
      ...step,
      jobId: opened.id,
      position: index + 1,
    })),
  });
  await recordAudit(tx, doer, {
    did: 'opened a job in the studio',
    subject: 'Job',
    subjectId: opened.id,
    facts: { number: opened.number, title, technique, pieces, commissionId, skuId, neededOn },
  });
  return ok(opened);
}

async function refusalToOpen(
  tx: Tx,
  commissionId: string | null,
  skuId: string | null,
): Promise<OpenJobRefusal | null> {
  if (commissionId) {
    const commission = await tx.commission.findUnique({
      where: { id: commissionId },
      select: { number: true, ending: { select: { commissionId: true } } },
    });
    if (!commission) return { code: 'no_such_commission' };
    if (commission.ending) return { code: 'commission_ended', commissionNumber: commission.number };
  }
  if (skuId && !(await tx.sku.findUnique({ where: { id: skuId }, select: { id: true } }))) {
    return { code: 'no_such_piece' };
  }
  return null;
}

/** Opens a job of the studio's own, from its page; see {@link openJob}. */
export async function openStudioJob(
  doer: Doer,
  input: OpenJobInput,
): Promise<Result<OpenedJob, NotAllowed | OpenJobRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'studio.move');
  if (!allowed.ok) return allowed;
  const { requestKey, ...job } = input;
  const command = commandOf(doer, 'openStudioJob', requestKey, job);
  return onceOnly(command, (tx) => openJob(tx, doer, job));
}

/**
 * Moves all or some pieces of a job to the next step.
 *
 * Of two people who move the same pieces at once, one moves them and the other is told. Who may
 * not see money is told of a missing deposit without its amount.
 *
 * @returns refuses, in this order: not allowed, then as {@link decideMove}
 */
export async function moveJobOn(
  doer: Doer,
  input: MoveJobInput,
): Promise<Result<Moved, NotAllowed | MoveRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'studio.move');
  if (!allowed.ok) return allowed;
  const { requestKey, ...moving } = input;
  const command = commandOf(doer, 'moveJobOn', requestKey, moving);
  const moved = await onceOnly(command, (tx) => movePieces(tx, doer, moving));
  return moved.ok ? moved : refuse(asMayBeTold(doer, moved.refusal));
}

/** Who may not see what a commission costs is not told how much of its deposit is missing. */
function asMayBeTold<Refusal extends { code: string }>(doer: Doer, refusal: Refusal): Refusal {
  if (!('depositLeftCents' in refusal)) return refusal;
  if (isAllowed(doer.actor.roles, 'commissions.see_money')) return refusal;
  return { ...refusal, depositLeftCents: null };
}

/** The step of {@link moveJobOn}: joins the caller's transaction, asks nobody for leave. */
export async function movePieces(
  tx: Tx,
  doer: Doer,
  moving: Moving,
): Promise<Result<Moved, MoveRefusal>> {
  const job = await loadJobToMove(tx, { id: moving.jobId });
  const begin =
    job?.commissionId && moving.fromPosition === 0
      ? await loadBeginFacts(tx, job.commissionId, await todayOf(tx, doer))
      : null;
  const move = decideMove(job, moving, begin);
  if (!move.ok) return move;
  invariant(job, 'Pieces of no job are not moved.');
  const kept = await keepMove(tx, doer, { job, ...move.value, undoesId: null });
  return ok({ ...kept, pieces: moving.pieces });
}

/**
 * Takes a move back by a counter-move; nothing is deleted.
 *
 * @returns where the pieces stand again; refuses, in this order: not allowed, then as
 *   {@link decideUndo}
 */
export async function undoMove(
  doer: Doer,
  input: UndoMoveInput,
): Promise<Result<Moved, NotAllowed | UndoRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'studio.move');
  if (!allowed.ok) return allowed;
  const { requestKey, moveId } = input;
  const command = commandOf(doer, 'undoMove', requestKey, { moveId });
  return onceOnly(command, async (tx) => {
    const job = await loadJobToMove(tx, { moves: { some: { id: BigInt(moveId) } } });
    if (!job) return refuse({ code: 'no_such_move' as const });
    const back = decideUndo(job, job.moves, moveId);
    if (!back.ok) return back;
    const kept = await keepMove(tx, doer, { job, ...back.value, undoesId: BigInt(moveId) });
    return ok({ ...kept, pieces: back.value.pieces });
  });
}

async function todayOf(tx: Tx, doer: Doer): Promise<Day> {
  return dayOf(doer.at, (await getGallery(tx)).timeZone);
}

type MoveToKeep = {
  job: JobToMove;
  fromPosition: number;
  toPosition: number;
  pieces: number;
  undoesId: bigint | null;
};

async function keepMove(tx: Tx, doer: Doer, move: MoveToKeep): Promise<Omit<Moved, 'pieces'>> {
  const { job, ...kept } = move;
  const movedOn = await todayOf(tx, doer);
  const { id } = await tx.jobMove.create({
    data: {
      ...kept,
      jobId: job.id,
      staffId: doer.actor.id,
      movedOn: dateFromDay(movedOn),
      at: doer.at,
    },
    select: { id: true },
  });
  const toName = placeName(job, kept.toPosition);
  await recordAudit(tx, doer, {
    did: kept.undoesId === null ? 'moved pieces on' : 'took a move back',
    subject: 'Job',
    subjectId: job.id,
    facts: {
      number: job.number,
      pieces: kept.pieces,
      from: placeName(job, kept.fromPosition),
      to: toName,
    },
  });
  return { undoId: id.toString(), jobNumber: job.number, toName, toPosition: kept.toPosition };
}

function commandOf(doer: Doer, name: string, key: string, input: unknown) {
  return { key, name, staffId: doer.actor.id, input, at: doer.at };
}
