import type { Day } from '@/lib/dates/rules';
import { invariant } from '@/lib/platform/invariant';
import type { Closed } from './calendar';
import { piecesMost } from './losses';
import type { ThreeDays } from './pert';

/** A place where so many jobs are worked on at once. */
export type Bench = {
  readonly id: string;
  readonly atOnce: number;
  /** Days on which nobody works there, besides the studio's own. */
  readonly closedDays: readonly Day[];
};

/** A kiln, and what it waits for before it is lit. */
export type Kiln = {
  readonly id: string;
  readonly volumeCm3: number;
  /** Cones it is fired to; a load is of one cone. */
  readonly cones: readonly string[];
  /** Loads from Monday to Sunday. */
  readonly turnsAWeek: number;
  /** How full it is before it is lit, from 0 to 100. */
  readonly leastFillPercent: number;
  /** After so many days the longest waiting pieces are fired however full it is. */
  readonly longestWaitDays: number;
  /** Days on which no load is begun, besides the studio's own. */
  readonly closedDays: readonly Day[];
  /** Loads begun since Monday, today's among them. */
  readonly loadsThisWeek: number;
};

/** What the jobs share. */
export type ForecastStudio = {
  readonly closed: Closed;
  readonly benches: readonly Bench[];
  readonly kilns: readonly Kiln[];
  /** How long clay dries by the month in which it begins, from January, in percent. */
  readonly dryingPercents: readonly number[];
};

/**
 * What holds pieces at a step. `work`: a bench, in open days for all pieces of the job, fewer
 * pieces in proportion; `fire`: any kiln of that cone, from loading to unloading, the slowest of
 * the load deciding; `dry`: by season; `wait`, `collector`: days of the calendar, which pieces that
 * are made again do not take a second time at the collector's.
 */
export type Holding =
  | { readonly kind: 'work'; readonly bench: string }
  | { readonly kind: 'fire'; readonly cone: string }
  | { readonly kind: 'dry' }
  | { readonly kind: 'wait' }
  | { readonly kind: 'collector' };

/** One step of a job's route, without the waiting for its bench or its kiln. */
export type ForecastStep = ThreeDays &
  Holding & {
    readonly name: string;
    /** It begins when as many pieces as are wanted of the job are there. */
    readonly isTogether: boolean;
    /** The chance of each piece to be lost here, 0 to 1; it is begun anew the same day. */
    readonly lossRate: number;
  };

/** Where some pieces of a job stand: 0 is not begun, one past the last step is finished. */
export type ForecastStanding = {
  readonly position: number;
  readonly pieces: number;
  readonly sinceOn: Day | null;
  /** The bench that has them or the kiln that fires them; null while they wait for one. */
  readonly heldBy: string | null;
};

/** An open job. */
export type ForecastJob = {
  readonly id: string;
  /** How many there are of it now, the finished ones among them. */
  readonly pieces: number;
  /**
   * How many are to come out good: it is ready when so many are finished. What is lost of the
   * spare ones beyond is not begun anew.
   */
  readonly wanted: number;
  /** What one piece takes of a kiln, the room around it included. */
  readonly pieceCm3: number;
  readonly steps: readonly ForecastStep[];
  readonly standings: readonly ForecastStanding[];
  /** The earlier, the sooner its turn comes; jobs without a day follow, in their order. */
  readonly neededOn: Day | null;
};

/** Why nothing can be said of the days. */
export type ForecastRefusal =
  | { code: 'never_open' }
  | { code: 'too_many_pieces'; jobId: string; most: number }
  | { code: 'no_such_bench'; jobId: string; step: string }
  | { code: 'no_kiln_for_cone'; jobId: string; step: string; cone: string }
  | { code: 'piece_fits_no_kiln'; jobId: string; step: string; cone: string };

/**
 * Whether the jobs can go through the studio at all.
 *
 * @returns null when they can; else the first of: closed on all seven weekdays, a job of too many
 *   pieces, a step whose bench is not there, whose cone no kiln fires, whose pieces fit none
 */
export function refusalOf(
  studio: ForecastStudio,
  jobs: readonly ForecastJob[],
): ForecastRefusal | null {
  if (new Set(studio.closed.weekdays).size === 7) return { code: 'never_open' };
  for (const job of jobs) {
    if (job.pieces > piecesMost) {
      return { code: 'too_many_pieces', jobId: job.id, most: piecesMost };
    }
    for (const step of job.steps) {
      const refusal = refusalAt(studio, job, step);
      if (refusal) return refusal;
    }
  }
  return null;
}

function refusalAt(
  studio: ForecastStudio,
  job: ForecastJob,
  step: ForecastStep,
): ForecastRefusal | null {
  const where = { jobId: job.id, step: step.name };
  if (step.kind === 'work') {
    const isThere = studio.benches.some((bench) => bench.id === step.bench);
    return isThere ? null : { code: 'no_such_bench', ...where };
  }
  if (step.kind !== 'fire') return null;
  const kilns = studio.kilns.filter((kiln) => kiln.cones.includes(step.cone));
  if (kilns.length === 0) return { code: 'no_kiln_for_cone', ...where, cone: step.cone };
  const fits = kilns.some((kiln) => kiln.volumeCm3 >= job.pieceCm3);
  return fits ? null : { code: 'piece_fits_no_kiln', ...where, cone: step.cone };
}

/** Says in a full sentence why nothing can be said of the days, and what to do. */
export function forecastRefusalMessage(refusal: ForecastRefusal): string {
  switch (refusal.code) {
    case 'never_open':
      return 'The studio is closed on every day of the week. Open at least one.';
    case 'too_many_pieces':
      return `A job has at most ${refusal.most.toLocaleString('en-US')} pieces. Make two of it.`;
    case 'no_such_bench':
      return `Say at which bench ${refusal.step} is done.`;
    case 'no_kiln_for_cone':
      return `No kiln fires to cone ${refusal.cone}. Add the cone to one of the kilns.`;
    case 'piece_fits_no_kiln':
      return `One piece is larger than every kiln that fires to cone ${refusal.cone}. Cut it.`;
  }
}

/**
 * States what the caller of a forecast promises about its jobs.
 *
 * @throws Error when it is broken: such jobs are a bug, not something a person typed
 */
export function checkJobs(studio: ForecastStudio, jobs: readonly ForecastJob[]): void {
  invariant(studio.dryingPercents.length === 12, 'Every month says how clay dries.');
  for (const job of jobs) {
    const standing = job.standings.reduce((sum, one) => sum + one.pieces, 0);
    invariant(standing === job.pieces, 'The pieces of a job stand somewhere, each once.');
    invariant(job.pieces > 0 && job.pieceCm3 > 0, 'A job has pieces, and they take room.');
    invariant(job.wanted > 0 && job.wanted <= job.pieces, 'As many as are wanted were begun.');
    for (const step of job.steps) {
      const least = step.kind === 'fire' || step.lossRate > 0 ? 1 : 0;
      invariant(step.shortestDays >= least, 'Where pieces are fired or lost, a day goes by.');
    }
  }
}
