import type { Day } from '@/lib/dates/rules';
import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { Cents } from '@/lib/money/rules';
import type { RouteStep } from './rules/routes';

export { pegs, routes, type Peg, type RouteStep, type Technique } from './rules/routes';

/** A job as its route goes: how many pieces travel together, through which steps, from 1 on. */
export type JobRoute = { pieces: number; steps: readonly Pick<RouteStep, 'name'>[] };

/** Pieces that went from one step to another. Position 0 is not begun; past the last, finished. */
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

/** What comes before the clay of a commission. */
export type BeforeClay = 'agreement' | 'sketch' | 'colours' | 'deposit' | 'days_to_cancel';

/** What is known of a commission when somebody wants to begin its making. */
export type BeginFacts = {
  commissionNumber: number;
  hasEnded: boolean;
  /** The owner let it begin, and said why. */
  isLetBegin: boolean;
  /** Null while nothing is agreed. */
  depositCents: Cents | null;
  paidCents: Cents;
  sketchHasYes: boolean;
  coloursHaveYes: boolean;
  /** The first day on which clay may be cut, where a right to cancel runs; null for no wait. */
  clayFromOn: Day | null;
  /** The day on which it would begin. */
  today: Day;
};

/** Why pieces were not moved. */
export type MoveRefusal =
  | { code: 'no_such_job' }
  | { code: 'finished_already' }
  | { code: 'pieces_have_moved'; from: string; standing: number; wanted: number }
  | { code: 'commission_ended'; commissionNumber: number }
  | {
      code: 'making_not_yet';
      commissionNumber: number;
      missing: readonly BeforeClay[];
      /** What of the deposit is still to come; null while nothing is agreed. */
      depositLeftCents: Cents | null;
    };

/** Why a move was not taken back. */
export type UndoRefusal =
  | { code: 'no_such_move' }
  | { code: 'an_undoing_stays' }
  | { code: 'undone_already' }
  | { code: 'pieces_went_on'; from: string; standing: number; wanted: number };

/** The position of pieces that are through the whole route. */
export function finishedPosition(job: JobRoute): number {
  return job.steps.length + 1;
}

/**
 * What the place at a position is called: `not begun`, a step's name, or `finished`.
 */
export function placeName(job: JobRoute, position: number): string {
  if (position === 0) return 'not begun';
  return job.steps[position - 1]?.name ?? 'finished';
}

/**
 * How many pieces stand at each position, from 0 (not begun) to one past the last step
 * (finished). Undone moves need no special care: their counter-moves are moves too.
 *
 * @returns as many numbers as the route has steps, and two; they add up to the job's pieces
 * @throws Error when the moves take pieces from where none stand: the database refuses those
 */
export function piecesAt(job: JobRoute, moves: readonly Omit<Move, 'movedOn'>[]): number[] {
  const standing = new Array<number>(finishedPosition(job) + 1).fill(0);
  standing[0] = job.pieces;
  for (const move of moves) {
    const left = (standing[move.fromPosition] ?? 0) - move.pieces;
    const arrived = standing[move.toPosition];
    invariant(left >= 0, 'Pieces leave only a step at which they stand.');
    invariant(arrived !== undefined, 'Pieces go only to a step of their route.');
    standing[move.fromPosition] = left;
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

/**
 * What is still missing before the clay of a commission may be touched.
 *
 * The owner's word lets it begin without any of them, but for the days in which the collector may
 * cancel: those are the law's.
 *
 * @returns empty when the making may begin; the deposit is not asked for before there is an
 *   agreement that names it
 * @source common practice: agreement, approved sketch, approved colours and deposit come first
 */
export function missingBeforeClay(facts: BeginFacts): BeforeClay[] {
  const missing: BeforeClay[] = [];
  if (facts.clayFromOn !== null && facts.today < facts.clayFromOn) missing.push('days_to_cancel');
  if (facts.isLetBegin) return missing;
  if (facts.depositCents === null) missing.push('agreement');
  if (!facts.sketchHasYes) missing.push('sketch');
  if (!facts.coloursHaveYes) missing.push('colours');
  if (facts.depositCents !== null && facts.paidCents < facts.depositCents) missing.push('deposit');
  return missing;
}

/**
 * Decides whether pieces go on to the next step.
 *
 * @param begin the commission's facts; null for a job of the studio's own
 * @returns the move to write down; refuses, in this order: no such job, the pieces are finished,
 *   they no longer stand there, the commission has ended, the making may not begin yet
 */
export function decideMove(
  job: (JobRoute & { moves: readonly Move[] }) | null,
  wanted: { fromPosition: number; pieces: number },
  begin: BeginFacts | null,
): Result<{ fromPosition: number; toPosition: number; pieces: number }, MoveRefusal> {
  if (!job) return refuse({ code: 'no_such_job' });
  const { fromPosition, pieces } = wanted;
  invariant(pieces > 0, 'A move has at least one piece.');
  if (fromPosition >= finishedPosition(job)) return refuse({ code: 'finished_already' });
  const standing = piecesAt(job, job.moves)[fromPosition] ?? 0;
  if (pieces > standing) {
    const from = placeName(job, fromPosition);
    return refuse({ code: 'pieces_have_moved', from, standing, wanted: pieces });
  }
  if (fromPosition === 0 && begin) {
    const refusal = refusalToBegin(begin);
    if (refusal) return refuse(refusal);
  }
  return ok({ fromPosition, toPosition: fromPosition + 1, pieces });
}

/**
 * Why the making of a commission may not begin; null when it may.
 */
export function refusalToBegin(facts: BeginFacts): MoveRefusal | null {
  const { commissionNumber, depositCents, paidCents } = facts;
  if (facts.hasEnded) return { code: 'commission_ended', commissionNumber };
  const missing = missingBeforeClay(facts);
  if (missing.length === 0) return null;
  const depositLeftCents =
    depositCents === null ? null : depositCents > paidCents ? depositCents - paidCents : 0n;
  return { code: 'making_not_yet', commissionNumber, missing, depositLeftCents };
}

/**
 * Decides whether a move is taken back.
 *
 * @param moves all moves of its job, in order
 * @returns the counter-move to write down; refuses, in this order: no such move, it is itself a
 *   taking back, it was taken back already, its pieces have gone on
 */
export function decideUndo(
  job: JobRoute,
  moves: readonly Move[],
  moveId: string,
): Result<{ fromPosition: number; toPosition: number; pieces: number }, UndoRefusal> {
  const move = moves.find((one) => one.id === moveId);
  if (!move) return refuse({ code: 'no_such_move' });
  if (move.undoesId !== null) return refuse({ code: 'an_undoing_stays' });
  if (moves.some((one) => one.undoesId === moveId)) return refuse({ code: 'undone_already' });
  const standing = piecesAt(job, moves)[move.toPosition] ?? 0;
  if (move.pieces > standing) {
    const from = placeName(job, move.toPosition);
    return refuse({ code: 'pieces_went_on', from, standing, wanted: move.pieces });
  }
  return ok({
    fromPosition: move.toPosition,
    toPosition: move.fromPosition,
    pieces: move.pieces,
  });
}
