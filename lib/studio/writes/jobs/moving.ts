import 'server-only';
import { allow, isAllowed, type Doer, type NotAllowed } from '@/lib/access/rules';
import { invariant } from '@/lib/platform/invariant';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { MoveJobInput, UndoMoveInput } from '@/lib/studio/input';
import { loadBeginFacts, loadJobToMove, type JobToMove } from '@/lib/studio/reads/moving';
import {
  decideMove,
  decideUndo,
  finishedPosition,
  piecesAt,
  type MoveRefusal,
  type PiecesMeant,
  type UndoRefusal,
} from '@/lib/studio/rules';
import { foretell } from '../foretell';
import { bringFinishedIn, takeFinishedOut } from './into-stock';
import { keepMove, todayOf, type Moved } from './keep-move';

/** Which pieces of which job; by a firing when they come out of one. */
export type Moving = PiecesMeant & { jobId: string; firingId?: string };

/**
 * Moves all or some pieces of a job to the next step. Finished pieces of a job for stock come into
 * stock with it.
 *
 * Of two people who move the same pieces at once, one moves them and the other is told. Who may
 * not see money is told of a missing deposit without its amount.
 *
 * @returns refuses, in this order: not allowed, then as {@link decideMove}, and an edition that
 *   has no number left
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
  const moved = await keepMove(tx, doer, { job, ...move.value, firingId: moving.firingId });
  if (move.value.toPosition === finishedPosition(job)) {
    const came = await bringFinishedIn(tx, doer, job, moved);
    if (!came.ok) return came;
  }
  if (isFirstOf(job)) await foretell(tx, doer, { jobId: job.id, why: 'begun' });
  return ok(moved);
}

function isFirstOf(job: JobToMove): boolean {
  return job.moves.length === 0 && piecesAt(job, job.moves)[0] === job.pieces;
}

/**
 * Takes a move back by a counter-move; nothing is deleted. What it brought into stock goes out
 * again; what was begun anew for a loss that is taken back goes back too, while it is not begun.
 *
 * @returns where the pieces stand again; refuses, in this order: not allowed, then as
 *   {@link decideUndo}, what was sold meanwhile, what has a number of an edition
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
    const undoesId = BigInt(moveId);
    const moved = await keepMove(tx, doer, { job, ...back.value, undoesId });
    const out = await takeFinishedOut(tx, doer, { moveId: undoesId, backId: moved.undoId });
    if (!out.ok) return out;
    await undoBegunAnew(tx, doer, job, moveId);
    return ok(moved);
  });
}

/** What was begun anew for a loss goes back with it, as far as nobody has begun it. */
async function undoBegunAnew(tx: Tx, doer: Doer, job: JobToMove, lossId: string): Promise<void> {
  const undone = new Set(job.moves.map((move) => move.undoesId));
  for (const anew of job.moves.filter((move) => move.makesGoodId === lossId)) {
    if (undone.has(anew.id)) continue;
    const back = decideUndo(job, job.moves, anew.id);
    if (back.ok) await keepMove(tx, doer, { job, ...back.value, undoesId: BigInt(anew.id) });
  }
}

function commandOf(doer: Doer, name: string, key: string, input: unknown) {
  return { key, name, staffId: doer.actor.id, input, at: doer.at };
}
