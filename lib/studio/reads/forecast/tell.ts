import 'server-only';
import { createHash } from 'node:crypto';
import {
  forecast,
  usualCourse,
  type ForecastCourse,
  type JobForecast,
} from '@/lib/studio/rules/forecast/forecast';
import type { LoadJob } from '@/lib/studio/rules/forecast/load/jobs';
import type { StudioLoad } from '@/lib/studio/rules/forecast/load/load';
import type { ForecastJob } from '@/lib/studio/rules/forecast/model';

/** The futures that a page is content with: two thousand. */
export const pageCourse: ForecastCourse = { ...usualCourse, futures: 2_000 };

/** An open job and what is foretold of it. */
export type ToldJob = { readonly of: LoadJob; readonly told: JobForecast };

/** How many answers are remembered; each is what a page asks for again and again. */
const answersMost = 24;
const answers = new Map<string, readonly JobForecast[]>();

/**
 * The days of all jobs of a load, in their order. The same load has the same answer, so that the
 * last few are remembered by the SHA-256 of what was asked.
 */
export function tellDays(load: StudioLoad): ToldJob[] {
  const jobs = load.jobs.map(({ job }) => job);
  return tellJobs(load, jobs).flatMap((told, at) => {
    const of = load.jobs[at];
    return of ? [{ of, told }] : [];
  });
}

/** The days of one more job, which takes its turn among the open ones; null when none can be told. */
export function tellNewJob(load: StudioLoad, job: ForecastJob): JobForecast | null {
  return tellJobs(load, [...load.jobs.map((one) => one.job), job]).at(-1) ?? null;
}

function tellJobs(load: StudioLoad, jobs: readonly ForecastJob[]): readonly JobForecast[] {
  if (jobs.length === 0) return [];
  const { studio, todayOn } = load;
  const asked = createHash('sha256')
    .update(JSON.stringify({ studio, jobs, todayOn, pageCourse }))
    .digest('hex');
  const known = answers.get(asked);
  if (known) return known;
  const said = forecast(studio, jobs, todayOn, pageCourse);
  const told = said.ok ? said.value : [];
  const oldest = [...answers.keys()][0];
  if (answers.size >= answersMost && oldest !== undefined) answers.delete(oldest);
  answers.set(asked, told);
  return told;
}
