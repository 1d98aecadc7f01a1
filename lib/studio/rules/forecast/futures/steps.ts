import { monthOf, type Day } from '@/lib/dates/rules';
import { mix, wordOf } from '../chance';
import { lossTable, type LossTable } from '../losses';
import type { ForecastJob, ForecastStep, ForecastStudio, Holding } from '../model';
import { casesOf, casesOfDays } from '../pert';
import type { Queues } from './queues';

/** The kinds of step by their numbers; those up to `fire` wait for something. */
export const kinds = { work: 0, fire: 1, dry: 2, wait: 3, collector: 4 } as const;

/** The steps of all jobs in one row. */
export type Steps = {
  readonly count: number;
  readonly jobOf: Int32Array;
  /** By job: its first step; one more entry ends the last. */
  readonly firstOf: Int32Array;
  /** By job. */
  readonly piecesOf: Int32Array;
  /** By step: the pieces of its whole job, and where those that are lost begin anew. */
  readonly ofPieces: Int32Array;
  readonly anewFrom: Int32Array;
  readonly kindOf: Int32Array;
  readonly isTogether: Int32Array;
  readonly isLast: Int32Array;
  readonly pieceCm3: Float64Array;
  readonly lossOf: Int32Array;
  readonly words: Uint32Array;
  readonly queueOf: Int32Array;
  readonly seatOf: Int32Array;
  /** Where the cases of a step begin, for each season. */
  readonly casesFrom: Int32Array;
  readonly seasons: number;
  readonly cases: Int16Array;
  readonly losses: readonly LossTable[];
};

/** The cases of days of every step, each kind of days once. */
export type Cases = {
  readonly seasons: number;
  readonly seasonOn: (day: Day) => number;
  readonly cases: Int16Array;
  /** Where the cases of a step in a season begin. */
  readonly from: (step: ForecastStep, season: number) => number;
};

/** Lays out the days of every step in every season. */
export function layCases(studio: ForecastStudio, jobs: readonly ForecastJob[]): Cases {
  const percents = [...new Set(studio.dryingPercents)];
  const seasonOn = (day: Day): number => {
    const month = Number(monthOf(day).slice(5));
    return percents.indexOf(studio.dryingPercents[month - 1] ?? 100);
  };
  const places = new Map<string, number>();
  const tables: Int16Array[] = [];
  const factor = (step: Holding, season: number): number =>
    step.kind === 'dry' ? (percents[season] ?? 100) / 100 : 1;
  const from = (step: ForecastStep, season: number): number => {
    const by = factor(step, season);
    const days = {
      shortestDays: step.shortestDays * by,
      likelyDays: step.likelyDays * by,
      longestDays: step.longestDays * by,
    };
    const name = `${days.shortestDays} ${days.likelyDays} ${days.longestDays}`;
    const known = places.get(name);
    if (known !== undefined) return known;
    const place = tables.length * casesOfDays;
    places.set(name, place);
    tables.push(casesOf(days));
    return place;
  };
  for (const step of jobs.flatMap((job) => job.steps)) percents.forEach((_, at) => from(step, at));
  const cases = new Int16Array(tables.length * casesOfDays);
  tables.forEach((table, at) => cases.set(table, at * casesOfDays));
  return { seasons: percents.length, seasonOn, cases, from };
}

/** Lays out the steps of all jobs. */
export function laySteps(jobs: readonly ForecastJob[], cases: Cases, queues: Queues): Steps {
  const all = jobs.flatMap((job, at) =>
    job.steps.map((step, index) => ({
      job,
      at,
      step,
      index,
      isLast: index + 1 === job.steps.length,
    })),
  );
  const rates = [...new Set(all.map(({ step }) => step.lossRate))].filter((rate) => rate > 0);
  const pieces = Math.max(1, ...jobs.map((job) => job.pieces));
  const firstOf = new Int32Array(jobs.length + 1);
  jobs.forEach((job, at) => (firstOf[at + 1] = (firstOf[at] ?? 0) + job.steps.length));
  return {
    count: all.length,
    jobOf: Int32Array.from(all, ({ at }) => at),
    firstOf,
    piecesOf: Int32Array.from(jobs, (job) => job.pieces),
    ofPieces: Int32Array.from(all, ({ job }) => job.pieces),
    anewFrom: Int32Array.from(all, ({ job, at, index }) => {
      const bench = job.steps.findIndex((step) => step.kind === 'work');
      return (firstOf[at] ?? 0) + Math.min(index, Math.max(0, bench));
    }),
    kindOf: Int32Array.from(all, ({ step }) => kinds[step.kind]),
    isTogether: Int32Array.from(all, ({ step }) => Number(step.isTogether)),
    isLast: Int32Array.from(all, ({ isLast }) => Number(isLast)),
    pieceCm3: Float64Array.from(all, ({ job }) => job.pieceCm3),
    lossOf: Int32Array.from(all, ({ step }) => rates.indexOf(step.lossRate)),
    words: Uint32Array.from(all, ({ job, index }) => mix(wordOf(job.id) + index)),
    queueOf: queues.queueOf,
    seatOf: queues.seatOf,
    casesFrom: Int32Array.from(
      all.flatMap(({ step }) =>
        Array.from({ length: cases.seasons }, (_, season) => cases.from(step, season)),
      ),
    ),
    seasons: cases.seasons,
    cases: cases.cases,
    losses: rates.map((rate) => lossTable(rate, pieces)),
  };
}
