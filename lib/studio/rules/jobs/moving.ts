import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { refusalToBegin, type BeginFacts, type BeginRefusal } from './beginning';
import {
  finishedPosition,
  outside,
  piecesAt,
  placeName,
  type JobRoute,
  type Move,
} from './standing';

/** A part of a numbered drawing: which number it was made for, and where it stands. */
export type PartHere = {
  id: string;
  number: number;
  position: number;
  /** It lies in a kiln that was lit. */
  isBurning?: boolean;
};

/** A job as it is when somebody wants to move its pieces. */
export type JobFacts = JobRoute & {
  number: number;
  moves: readonly Move[];
  /** How many are to come out good. */
  wanted: number;
  /** Pieces at a step that are in a kiln that was lit. */
  burning: readonly { position: number; pieces: number }[];
  /** Empty while it has no numbered drawing. */
  parts: readonly PartHere[];
};

/** Which pieces are meant: so many that stand at a position, by name where they have numbers. */
export type PiecesMeant = {
  fromPosition: number;
  pieces: number;
  partIds?: readonly string[] | undefined;
};

/** Why pieces do not leave where they are thought to stand. */
export type LeaveRefusal =
  | { code: 'no_such_job' }
  | { code: 'pieces_have_moved'; from: string; standing: number; wanted: number }
  | { code: 'in_a_lit_kiln'; from: string; burning: number }
  | { code: 'say_which_parts'; jobNumber: number; standing: number }
  | { code: 'parts_do_not_fit'; from: string };

/** Why pieces were not moved. */
export type MoveRefusal =
  | LeaveRefusal
  | BeginRefusal
  | { code: 'finished_already' }
  | { code: 'edition_is_full'; words: string };

/** Why a move was not taken back. */
export type UndoRefusal =
  | { code: 'no_such_move' }
  | { code: 'an_undoing_stays' }
  | { code: 'undone_already' }
  | { code: 'pieces_went_on'; from: string; standing: number; wanted: number }
  | { code: 'sold_meanwhile'; title: string }
  | { code: 'numbered_already'; title: string };

/** Pieces on their way, by name where they have numbers. */
export type Leaving = {
  fromPosition: number;
  toPosition: number;
  pieces: number;
  partIds: readonly string[];
};

/**
 * Decides whether pieces go on to the next step.
 *
 * @param begin the commission's facts; null for a job of the studio's own
 * @returns the move to write down; refuses, in this order: no such job, the pieces are finished,
 *   then as {@link decideLeaving}, the commission has ended, the making may not begin yet
 */
export function decideMove(
  job: JobFacts | null,
  meant: PiecesMeant,
  begin: BeginFacts | null,
): Result<Leaving, MoveRefusal> {
  if (!job) return refuse({ code: 'no_such_job' });
  const { fromPosition } = meant;
  if (fromPosition >= finishedPosition(job)) return refuse({ code: 'finished_already' });
  const leaving = decideLeaving(job, meant);
  if (!leaving.ok) return leaving;
  if (fromPosition === 0 && begin) {
    const refusal = refusalToBegin(begin);
    if (refusal) return refuse(refusal);
  }
  return ok({ ...leaving.value, toPosition: fromPosition + 1 });
}

/**
 * Decides whether pieces are free to leave the position at which they are thought to stand.
 *
 * @returns the parts that leave: all that stand there and are not in a lit kiln, when all of them
 *   are meant; refuses, in this order: they no longer stand there, they are in a lit kiln, nobody
 *   said which parts, the parts that were named stand elsewhere or are not so many
 */
export function decideLeaving(
  job: JobFacts,
  meant: PiecesMeant,
): Result<Omit<Leaving, 'toPosition'>, LeaveRefusal> {
  const { fromPosition, pieces } = meant;
  invariant(pieces > 0 && fromPosition >= 0, 'Pieces that leave stand somewhere.');
  const standing = piecesAt(job, job.moves)[fromPosition] ?? 0;
  const from = placeName(job, fromPosition);
  if (pieces > standing) {
    return refuse({ code: 'pieces_have_moved', from, standing, wanted: pieces });
  }
  const burning = burningAt(job, fromPosition);
  if (pieces > standing - burning) return refuse({ code: 'in_a_lit_kiln', from, burning });
  const partIds = decideParts(job, meant, standing);
  return partIds.ok ? ok({ fromPosition, pieces, partIds: partIds.value }) : partIds;
}

/** How many pieces at a position are in kilns that were lit. */
export function burningAt(job: Pick<JobFacts, 'burning'>, position: number): number {
  return job.burning.reduce((sum, one) => sum + (one.position === position ? one.pieces : 0), 0);
}

function decideParts(
  job: JobFacts,
  { fromPosition, pieces, partIds }: PiecesMeant,
  standing: number,
): Result<readonly string[], LeaveRefusal> {
  if (job.parts.length === 0) return ok([]);
  const all = job.parts.filter((part) => part.position === fromPosition);
  const here = all.flatMap(({ id, isBurning }) => (isBurning ? [] : [id]));
  const burning = all.filter(({ id, isBurning }) => isBurning && partIds?.includes(id));
  if (burning.length > 0) {
    const from = placeName(job, fromPosition);
    return refuse({ code: 'in_a_lit_kiln', from, burning: burning.length });
  }
  if (!partIds) {
    return pieces === here.length
      ? ok(here)
      : refuse({ code: 'say_which_parts', jobNumber: job.number, standing });
  }
  const areHere = partIds.every((id) => here.includes(id));
  const named = new Set(partIds).size;
  return areHere && named === pieces && named === partIds.length
    ? ok(partIds)
    : refuse({ code: 'parts_do_not_fit', from: placeName(job, fromPosition) });
}

/** A move that may be taken back, with the parts that went with it. */
export type MoveToUndo = Move & { partIds: readonly string[] };

/**
 * Decides whether a move is taken back.
 *
 * @param moves all moves of its job, in order
 * @returns the counter-move to write down; refuses, in this order: no such move, it is itself a
 *   taking back, it was taken back already, its pieces have gone on
 */
export function decideUndo(
  job: JobFacts,
  moves: readonly MoveToUndo[],
  moveId: string,
): Result<Leaving, UndoRefusal> {
  const move = moves.find((one) => one.id === moveId);
  if (!move) return refuse({ code: 'no_such_move' });
  if (move.undoesId !== null) return refuse({ code: 'an_undoing_stays' });
  if (moves.some((one) => one.undoesId === moveId)) return refuse({ code: 'undone_already' });
  const from = placeName(job, move.toPosition);
  if (move.toPosition !== outside) {
    const standing = (piecesAt(job, moves)[move.toPosition] ?? 0) - burningAt(job, move.toPosition);
    const gone = move.partIds.some(
      (id) => job.parts.find((part) => part.id === id)?.position !== move.toPosition,
    );
    if (gone || move.pieces > standing) {
      return refuse({ code: 'pieces_went_on', from, standing, wanted: move.pieces });
    }
  }
  return ok({
    fromPosition: move.toPosition,
    toPosition: move.fromPosition,
    pieces: move.pieces,
    partIds: move.partIds,
  });
}
