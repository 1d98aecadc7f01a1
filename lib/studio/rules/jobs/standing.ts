import type { Day } from '@/lib/dates/rules';
import { invariant } from '@/lib/platform/invariant';
import type { RouteStep } from '@/lib/studio/rules/routes';

/** Where losses go, and where pieces come from that are begun anew: outside the job. */
export const outside = -1;

/** A job as its route goes: how many pieces it began with, through which steps, from 1 on. */
export type JobRoute = { pieces: number; steps: readonly Pick<RouteStep, 'name'>[] };

/**
 * Pieces that went from one step to another. Position 0 is not begun; past the last, finished;
 * {@link outside} is no step.
 */
export type Move = {
  id: string;
  fromPosition: number;
  toPosition: number;
  pieces: number;
  movedOn: Day;
  /** The move that this one takes back. */
  undoesId: string | null;
};

/** Pieces at one position, and since which day the longest waiting of them stand there. */
export type Standing = { position: number; pieces: number; sinceOn: Day | null };

/** The position of pieces that are through the whole route. */
export function finishedPosition(job: JobRoute): number {
  return job.steps.length + 1;
}

/**
 * What the place at a position is called: `lost`, `not begun`, a step's name, or `finished`.
 */
export function placeName(job: Pick<JobRoute, 'steps'>, position: number): string {
  if (position === outside) return 'lost';
  if (position === 0) return 'not begun';
  return job.steps[position - 1]?.name ?? 'finished';
}

/**
 * How many pieces stand at each position, from 0 (not begun) to one past the last step
 * (finished). Undone moves need no special care: their counter-moves are moves too.
 *
 * @returns as many numbers as the route has steps, and two; they add up to the job's pieces and
 *   those that were begun anew, less the lost ones
 * @throws Error when the moves take pieces from where none stand: the database refuses those
 */
export function piecesAt(job: JobRoute, moves: readonly Omit<Move, 'movedOn'>[]): number[] {
  const standing = new Array<number>(finishedPosition(job) + 1).fill(0);
  standing[0] = job.pieces;
  for (const move of moves) {
    if (move.fromPosition !== outside) {
      const left = (standing[move.fromPosition] ?? 0) - move.pieces;
      invariant(left >= 0, 'Pieces leave only a step at which they stand.');
      standing[move.fromPosition] = left;
    }
    if (move.toPosition === outside) continue;
    const arrived = standing[move.toPosition];
    invariant(arrived !== undefined, 'Pieces go only to a step of their route.');
    standing[move.toPosition] = arrived + move.pieces;
  }
  return standing;
}

/**
 * The moves that still hold: neither taken back nor a taking back.
 */
export function movesThatHold<Kept extends Pick<Move, 'id' | 'undoesId'>>(
  moves: readonly Kept[],
): Kept[] {
  const undone = new Set(moves.map((move) => move.undoesId));
  return moves.filter((move) => move.undoesId === null && !undone.has(move.id));
}

/**
 * Where the pieces of a job stand, and since when. Who came first leaves first; a move that was
 * taken back counts as if it had never been.
 *
 * @param moves in the order in which they happened
 * @returns only positions where something stands; `sinceOn` is null for pieces that never moved
 * @example standingsOf({ pieces: 24, steps }, []) // [{ position: 0, pieces: 24, sinceOn: null }]
 */
export function standingsOf(job: JobRoute, moves: readonly Move[]): Standing[] {
  const held = movesThatHold(moves);
  return piecesAt(job, moves).flatMap((pieces, position) => {
    if (pieces === 0) return [];
    return [{ position, pieces, sinceOn: position === 0 ? null : oldestOf(held, position) }];
  });
}

function oldestOf(held: readonly Move[], position: number): Day | null {
  let left = held
    .filter((move) => move.fromPosition === position)
    .reduce((sum, move) => sum + move.pieces, 0);
  for (const move of held) {
    if (move.toPosition !== position) continue;
    left -= move.pieces;
    if (left < 0) return move.movedOn;
  }
  return null;
}
