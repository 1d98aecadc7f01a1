import { addDays, daysBetween, type Day } from '@/lib/dates/rules';
import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { drivesOf, openTally, tallyJob, type Drive, type Tally } from './drives';
import { liveThrough } from './futures/future';
import { layPlan, type Plan } from './futures/plan';
import { startRun } from './futures/run';
import { refusalOf, type ForecastJob, type ForecastRefusal, type ForecastStudio } from './model';

export type { Drive } from './drives';

/** How a forecast is made: the same three give the same days on every machine. */
export type ForecastCourse = {
  readonly futures: number;
  readonly seed: number;
  /** How many days are looked at; a job that needs more has no day. */
  readonly sightDays: number;
};

/** Ten thousand futures of two years. */
export const usualCourse: ForecastCourse = { futures: 10_000, seed: 20_260_601, sightDays: 730 };

/** What the futures say of one job. */
export type JobForecast = {
  readonly id: string;
  readonly todayOn: Day;
  readonly futures: number;
  /** At place n in how many futures it is ready n days from today. */
  readonly readyCounts: Readonly<Uint32Array>;
  /** The day by which it is ready in so many of 100; null when that is out of sight. */
  readonly readyOn: {
    readonly in50: Day | null;
    readonly in80: Day | null;
    readonly in95: Day | null;
  };
  /** The share of futures in which it is ready by the day it is needed, 0 to 1; null without one. */
  readonly shareInTime: number | null;
  readonly drives: readonly Drive[];
};

/**
 * The days by which open jobs are ready: all of them are sent together through the benches and the
 * kilns they share, thousands of times, each time with other luck.
 *
 * @returns one for each job, in their order; refuses what {@link refusalOf} says
 */
export function forecast(
  studio: ForecastStudio,
  jobs: readonly ForecastJob[],
  todayOn: Day,
  course: ForecastCourse = usualCourse,
): Result<JobForecast[], ForecastRefusal> {
  const refusal = refusalOf(studio, jobs);
  if (refusal) return refuse(refusal);
  invariant(course.futures > 0 && course.sightDays > 0, 'There are futures, and days in them.');
  const plan = layPlan(studio, jobs, todayOn, course.sightDays);
  const told = new Map(liveAll(plan, course).map((job) => [job.id, job]));
  invariant(told.size === jobs.length, 'Every job has a name of its own.');
  return ok(jobs.flatMap((job) => told.get(job.id) ?? []));
}

/**
 * The day that may be promised for a new job, with today's load in the studio: the first by which
 * it is ready in so many of 100 futures.
 *
 * @param newJob with a `neededOn` it takes its turn among the others; without one it goes last
 * @returns `day` is null when that is out of sight; refuses as {@link forecast} does
 * @example a new job of three fixed days at a free bench on a Thursday: the Tuesday
 */
export function promiseDay(
  studio: ForecastStudio,
  load: { jobs: readonly ForecastJob[]; newJob: ForecastJob; todayOn: Day },
  ofHundred = 80,
  course: ForecastCourse = usualCourse,
): Result<{ day: Day | null; forecast: JobForecast }, ForecastRefusal> {
  const told = forecast(studio, [...load.jobs, load.newJob], load.todayOn, course);
  if (!told.ok) return told;
  const own = told.value.at(-1);
  invariant(own, 'A forecast tells of every job.');
  return ok({ day: readyDayIn(own, ofHundred), forecast: own });
}

/**
 * The first day by which a job is ready in at least so many of 100 futures.
 *
 * @param ofHundred above 0, up to 100
 * @returns null when that is out of sight
 */
export function readyDayIn(
  job: Pick<JobForecast, 'todayOn' | 'futures' | 'readyCounts'>,
  ofHundred: number,
): Day | null {
  let ready = 0;
  for (let day = 0; day < job.readyCounts.length; day += 1) {
    ready += job.readyCounts[day] ?? 0;
    if (ready > 0 && ready * 100 >= ofHundred * job.futures) return addDays(job.todayOn, day);
  }
  return null;
}

/** The share of futures, 0 to 1, in which a job is ready by a day, that day included. */
export function shareReadyBy(
  job: Pick<JobForecast, 'todayOn' | 'futures' | 'readyCounts'>,
  day: Day,
): number {
  const last = daysBetween(job.todayOn, day);
  const ready = job.readyCounts.slice(0, Math.max(0, last + 1)).reduce((sum, one) => sum + one, 0);
  return ready / job.futures;
}

function liveAll(plan: Plan, course: ForecastCourse): JobForecast[] {
  const { end } = plan;
  const run = startRun(plan);
  const tally = openTally(plan);
  const counts = new Uint32Array(plan.jobs.length * end);
  for (let future = 0; future < course.futures; future += 1) {
    liveThrough(run, course.seed, future);
    run.jobs.forEach((job, at) => {
      if (job.readyDay < 0) return;
      const place = at * end + job.readyDay;
      counts[place] = (counts[place] ?? 0) + 1;
      tallyJob(job, at, tally);
    });
  }
  return plan.jobs.map((_, at) => tell(plan, at, { counts, tally, futures: course.futures }));
}

function tell(
  plan: Plan,
  at: number,
  lived: { counts: Uint32Array; tally: Tally; futures: number },
): JobForecast {
  const { todayOn, end } = plan;
  const own = lived.counts.subarray(at * end, (at + 1) * end);
  const last = own.findLastIndex((count) => count > 0);
  const readyCounts = own.slice(0, last + 1);
  const ready = readyCounts.reduce((sum, count) => sum + count, 0);
  const job = plan.jobs[at];
  const days = { todayOn, futures: lived.futures, readyCounts };
  return {
    id: job?.id ?? '',
    ...days,
    readyOn: {
      in50: readyDayIn(days, 50),
      in80: readyDayIn(days, 80),
      in95: readyDayIn(days, 95),
    },
    shareInTime: job?.neededOn ? shareReadyBy(days, job.neededOn) : null,
    drives: drivesOf(plan, at, lived.tally, ready),
  };
}
