import { addDays, daysBetween, type Day } from '@/lib/dates/rules';
import {
  finishedPosition,
  movesThatHold,
  piecesAt,
  standingsOf,
  type JobRoute,
  type Move,
} from '@/lib/studio/rules';
import { pegs, type Peg, type StepDays } from '@/lib/studio/rules/routes';

/** A job with the whole of its route and all its moves in order. */
export type JobInDays = Omit<JobRoute, 'steps'> & {
  steps: readonly StepDays[];
  moves: readonly Move[];
};

/** When the last piece of a job should be finished, if it goes on from today. */
export type ReadyDays = { shortestOn: Day; likelyOn: Day; longestOn: Day };

/** How far a job has come with one peg of the band. `none`: its route has no such step. */
export type PegProgress = {
  peg: Peg;
  state: 'done' | 'now' | 'to_come' | 'none';
  /** The day on which the last piece left the peg's last step. */
  doneOn: Day | null;
};

/**
 * How many days the longest waiting pieces at a position have stood there.
 *
 * @returns 0 for pieces that came today; null for pieces that were never moved
 */
export function daysHere(sinceOn: Day | null, todayOn: Day): number | null {
  return sinceOn === null ? null : Math.max(0, daysBetween(sinceOn, todayOn));
}

/**
 * Days that pieces have stood at a step beyond its longest days; 0 when they have not.
 *
 * @example daysTooLong({ longestDays: 14 }, '2026-05-01', '2026-05-15') // 0: the 14th day is not over
 */
export function daysTooLong(
  step: Pick<StepDays, 'longestDays'>,
  sinceOn: Day | null,
  todayOn: Day,
): number {
  return Math.max(0, (daysHere(sinceOn, todayOn) ?? 0) - step.longestDays);
}

/**
 * When the last piece should be finished: what is left of its step, and the steps after it, in
 * days. Pieces that stand longest behind decide.
 *
 * @returns null when everything is finished
 * @source the days of the route, added up; nobody's waiting for a bench or a kiln is in them
 */
export function readyDays(job: JobInDays, todayOn: Day): ReadyDays | null {
  const behind = standingsOf(job, job.moves)[0];
  if (!behind || behind.position >= finishedPosition(job)) return null;
  const spent = daysHere(behind.sinceOn, todayOn) ?? 0;
  const left = (days: (step: StepDays) => number): Day => {
    const total = job.steps.reduce((sum, step, index) => {
      const position = index + 1;
      if (position < behind.position) return sum;
      const here = position === behind.position ? Math.min(spent, days(step)) : 0;
      return sum + days(step) - here;
    }, 0);
    return addDays(todayOn, total);
  };
  return {
    shortestOn: left((step) => step.shortestDays),
    likelyOn: left((step) => step.likelyDays),
    longestOn: left((step) => step.longestDays),
  };
}

/**
 * How far a job has come, peg by peg, for a commission's band.
 *
 * A peg is done when no piece stands at or before its last step.
 *
 * @returns one for each of {@link pegs}, in their order
 */
export function pegProgress(job: JobInDays): PegProgress[] {
  const standing = piecesAt(job, job.moves);
  const held = movesThatHold(job.moves);
  return pegs.map((peg) => {
    const positions = job.steps.flatMap((step, index) => (step.peg === peg ? [index + 1] : []));
    const last = positions.at(-1);
    if (last === undefined) return { peg, state: 'none', doneOn: null };
    const notPast = standing.slice(0, last + 1).reduce((sum, pieces) => sum + pieces, 0);
    if (notPast > 0) {
      const isHere = positions.some((position) => (standing[position] ?? 0) > 0);
      return { peg, state: isHere ? 'now' : 'to_come', doneOn: null };
    }
    const leaving = held.filter((move) => move.fromPosition === last);
    return { peg, state: 'done', doneOn: leaving.at(-1)?.movedOn ?? null };
  });
}
