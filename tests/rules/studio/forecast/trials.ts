import { addDays, daysBetween, type Day } from '@/lib/dates/rules';
import { forecast, type JobForecast } from '@/lib/studio/rules/forecast/forecast';
import type { ForecastJob, ForecastStudio } from '@/lib/studio/rules/forecast/model';
import { watchFuture, type Happening } from '@/lib/studio/rules/forecast/watch';
import { aJob, dice, openJobs, today, twoKilns } from './a-load';
import { asItStands, atFirst, happen } from './replay';

// Studios drawn at random, each with one truth: a future of its own luck. In each one job is looked at,
// so that the trials are independent of each other and the count is binomial.

const course = { futures: 99, sightDays: 500 };

/** One trial: what was told of a job, and the day on which it truly was ready. */
export type Trial = { told: JobForecast; readyOn: Day };

/**
 * How much of a truth lies within the first so many of 100 futures: 1 before that day, 0 after it,
 * and on it as much as of the day's futures is needed to come to them. Where days are whole, whole
 * counting gives a little more than 80, and this gives 80. The truth counts as one of the futures.
 */
function within({ told, readyOn }: Trial, ofHundred: number): number {
  const truth = daysBetween(told.todayOn, readyOn);
  const all = told.futures + 1;
  const before = told.readyCounts.slice(0, truth).reduce((sum, count) => sum + count, 0);
  const onIt = (told.readyCounts[truth] ?? 0) + 1;
  return Math.min(1, Math.max(0, ((ofHundred / 100) * all - before) / onIt));
}

function askAbout(
  jobs: readonly ForecastJob[],
  asked: { id: string; on: Day; seed: number; studio: ForecastStudio },
): JobForecast {
  const said = forecast(asked.studio, jobs, asked.on, { ...course, seed: asked.seed });
  const told = said.ok ? said.value.find((job) => job.id === asked.id) : undefined;
  if (!told) throw new Error('nothing was told');
  return told;
}

/** Jobs anywhere on their ways, forecast as they stand. */
function fromAnyStart(seed: number): Trial | null {
  const roll = dice(seed * 7_919);
  const jobs = openJobs(roll(3, 10), seed);
  const job = jobs[roll(0, jobs.length - 1)];
  if (!job) return null;
  const truth = { seed: seed + 1_000_000, future: 0, sightDays: course.sightDays };
  const readyOn = watchFuture(twoKilns, jobs, today, truth).readyOn.get(job.id);
  if (!readyOn) return null;
  const asked = { id: job.id, on: today, seed, studio: twoKilns };
  return { told: askAbout(jobs, asked), readyOn };
}

/**
 * Jobs that begin with clay, left to their truth for some days, written down as they stand on a
 * morning and forecast from there: what is still to come must be told as well as the beginning.
 */
function fromTheMiddle(seed: number): Trial | null {
  const roll = dice(seed * 7_919);
  const jobs = openJobs(roll(4, 10), seed).map((job) => {
    const { standings } = aJob({ id: job.id, pieces: job.pieces });
    return { ...job, standings };
  });
  const truth = { seed: seed + 2_000_000, future: 0, sightDays: course.sightDays };
  const { happenings, readyOn } = watchFuture(twoKilns, jobs, today, truth);
  const on = addDays(today, roll(10, 45));
  const standing = standingOn(jobs, happenings, on);
  const open = jobs.filter((job) => (readyOn.get(job.id) ?? '') >= on);
  const job = open[roll(0, Math.max(0, open.length - 1))];
  const ready = job ? readyOn.get(job.id) : null;
  if (!job || !ready) return null;
  const studio = { ...twoKilns, kilns: kilnsOn(happenings, on) };
  return { told: askAbout(standing, { id: job.id, on, seed, studio }), readyOn: ready };
}

function standingOn(
  jobs: readonly ForecastJob[],
  happenings: readonly Happening[],
  on: Day,
): ForecastJob[] {
  const states = atFirst(jobs);
  for (const one of happenings.filter((each) => each.on < on)) {
    const job = jobs.find((each) => each.id === one.jobId);
    const state = states.get(one.jobId);
    if (job && state) happen(state, job, one);
  }
  return jobs.map((job) =>
    asItStands(job, states.get(job.id) ?? { finished: 0, waiting: [], underWay: [] }),
  );
}

function kilnsOn(happenings: readonly Happening[], on: Day): ForecastStudio['kilns'] {
  const monday = addDays(on, -(daysBetween('2026-06-01', on) % 7));
  return twoKilns.kilns.map((kiln) => {
    const lit = happenings.filter((one) => one.kilnId === kiln.id);
    const days = new Set(lit.map((one) => one.on).filter((day) => day >= monday && day < on));
    return { ...kiln, loadsThisWeek: days.size };
  });
}

/** So many studios, one job of each. */
export function openTrials(studios: number): Trial[] {
  return Array.from({ length: studios }, (_, at) => fromAnyStart(at + 1)).flatMap(
    (one) => one ?? [],
  );
}

/** See {@link openTrials}; the jobs have been under way for some weeks. */
export function middleTrials(studios: number): Trial[] {
  return Array.from({ length: studios }, (_, at) => fromTheMiddle(at + 1)).flatMap(
    (one) => one ?? [],
  );
}

/** The share of the truths that lie within the first so many of 100 futures. */
export function shareWithin(trials: readonly Trial[], ofHundred: number): number {
  return trials.reduce((sum, trial) => sum + within(trial, ofHundred), 0) / trials.length;
}
