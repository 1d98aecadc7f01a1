import { daysBetween, type Day } from '@/lib/dates/rules';
import { invariant } from '@/lib/platform/invariant';
import { openDaysBetween, type Closed } from '../calendar';
import type { ForecastJob, ForecastStanding, ForecastStep, ForecastStudio } from '../model';
import { casesOfDays } from '../pert';
import type { Cases } from './cases';

/** Pieces that wait at a step, or have still to begin it. */
export type Waiting = { place: number; pieces: number; sinceDay: number };

/** Pieces that a step has begun with: how long they may still take is known by what is over. */
export type UnderWay = {
  place: number;
  pieces: number;
  /** Days that are over: open ones at a bench, days of the calendar elsewhere. */
  spent: number;
  casesFrom: number;
  /** Cases before this one would be over by now. */
  firstCase: number;
  /** -1 when they are in no kiln. */
  kiln: number;
};

/** How things stand today, where every future begins. */
export type Opening = {
  readonly waiting: readonly Waiting[];
  readonly underWay: readonly UnderWay[];
  /** By job. */
  readonly finished: Int32Array;
  /** By step: how many have come so far or are past it. */
  readonly reached: Int32Array;
};

/**
 * How many days of a lot: a bench takes fewer pieces than the whole job in proportion, a day at
 * least where there is any.
 */
export function daysForPieces(days: number, pieces: number, ofPieces: number): number {
  return pieces === ofPieces ? days : ((days * pieces + ofPieces - 1) / ofPieces) | 0;
}

/** What is laid out before it is read where the pieces stand. */
type Laid = {
  readonly studio: ForecastStudio;
  readonly jobs: readonly ForecastJob[];
  readonly firstOf: Int32Array;
  readonly cases: Cases;
};

/** Reads where the pieces of all jobs stand. */
export function openingOf(laid: Laid, todayOn: Day): Opening {
  const finished = new Int32Array(laid.jobs.length);
  const reached = new Int32Array(laid.firstOf.at(-1) ?? 0);
  const waiting: Waiting[] = [];
  const underWay: UnderWay[] = [];
  laid.jobs.forEach((job, at) => {
    const first = laid.firstOf[at] ?? 0;
    for (const standing of job.standings.filter((one) => one.pieces > 0)) {
      const { position, pieces } = standing;
      const step = job.steps[position - 1];
      const isOn = step !== undefined && isUnderWay(job, standing, step);
      const passed = isOn ? position : position - 1;
      for (let before = 0; before < Math.min(passed, job.steps.length); before += 1) {
        reached[first + before] = (reached[first + before] ?? 0) + pieces;
      }
      const place = first + Math.max(0, position - 1);
      if (position > job.steps.length) finished[at] = (finished[at] ?? 0) + pieces;
      else if (isOn) underWay.push(begun(laid, { place, step, job }, standing, todayOn));
      else waiting.push({ place, pieces, sinceDay: sinceDay(standing, todayOn) });
    }
  });
  return { waiting, underWay: likeTheirLoad(underWay), finished, reached };
}

function sinceDay({ sinceOn }: ForecastStanding, todayOn: Day): number {
  return sinceOn === null ? 0 : Math.min(0, daysBetween(todayOn, sinceOn));
}

/** Drying and plain waiting begin by themselves, unless the others are waited for. */
function isUnderWay(job: ForecastJob, standing: ForecastStanding, step: ForecastStep): boolean {
  if (step.kind === 'work' || step.kind === 'fire') return standing.heldBy !== null;
  if (!step.isTogether) return true;
  return job.standings.every((one) => one.pieces === 0 || one.position >= standing.position);
}

function begun(
  { studio, cases }: Laid,
  at: { place: number; step: ForecastStep; job: ForecastJob },
  standing: ForecastStanding,
  todayOn: Day,
): UnderWay {
  const { place, step, job } = at;
  const sinceOn = standing.sinceOn ?? todayOn;
  const casesFrom = cases.from(step, cases.seasonOn(sinceOn));
  const spent =
    step.kind === 'work'
      ? openDaysBetween(closedAt(studio, step.bench), sinceOn, todayOn)
      : Math.max(0, daysBetween(sinceOn, todayOn));
  let firstCase = 0;
  while (firstCase < casesOfDays) {
    const days = cases.cases[casesFrom + firstCase] ?? 0;
    const takes = step.kind === 'work' ? daysForPieces(days, standing.pieces, job.pieces) : days;
    if (takes >= spent) break;
    firstCase += 1;
  }
  const kiln =
    step.kind === 'fire' ? studio.kilns.findIndex((one) => one.id === standing.heldBy) : -1;
  invariant(step.kind !== 'fire' || kiln >= 0, 'Pieces are fired in a kiln of the studio.');
  return { place, pieces: standing.pieces, spent, casesFrom, firstCase, kiln };
}

function closedAt(studio: ForecastStudio, benchId: string): Closed {
  const bench = studio.benches.find((one) => one.id === benchId);
  const days = [...studio.closed.days, ...(bench?.closedDays ?? [])];
  return { weekdays: studio.closed.weekdays, days };
}

/** A load comes out as one: it is not over while the slowest in it may not be. */
function likeTheirLoad(underWay: readonly UnderWay[]): UnderWay[] {
  return underWay.map((lot) => {
    if (lot.kiln < 0) return lot;
    const load = underWay.filter((other) => other.kiln === lot.kiln);
    return { ...lot, firstCase: Math.min(...load.map((other) => other.firstCase)) };
  });
}
