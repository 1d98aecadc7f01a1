import { addDays, type Day } from '@/lib/dates/rules';
import { liveThrough } from './futures/future';
import { layPlan } from './futures/plan';
import { startRun, type Watched } from './futures/run';
import type { ForecastJob, ForecastStudio } from './model';

/** Something that happens in a future. */
export type Happening = {
  on: Day;
  what: Watched;
  jobId: string;
  /** Position of the step on the job's route, from 1. */
  position: number;
  pieces: number;
  /** Of `ends`: how many of the pieces were lost. */
  lost: number;
  /** Of `starts`: the kiln that was lit with them; null elsewhere. */
  kilnId: string | null;
};

/** One future, told step by step. What was under way today has begun before and is not told of. */
export function watchFuture(
  studio: ForecastStudio,
  jobs: readonly ForecastJob[],
  todayOn: Day,
  course: { seed: number; future: number; sightDays: number },
): { happenings: Happening[]; readyOn: ReadonlyMap<string, Day | null> } {
  const plan = layPlan(studio, jobs, todayOn, course.sightDays);
  const run = startRun(plan);
  const happenings: Happening[] = [];
  run.watch = (what, step, pieces, more) => {
    const job = plan.firstOf.findLastIndex((first) => first <= step);
    happenings.push({
      on: addDays(todayOn, run.today),
      what,
      jobId: plan.jobs[job]?.id ?? '',
      position: step - (plan.firstOf[job] ?? 0) + 1,
      pieces,
      lost: what === 'ends' ? more : 0,
      kilnId: what === 'starts' && more >= 0 ? (studio.kilns[more]?.id ?? null) : null,
    });
  };
  liveThrough(run, course.seed, course.future);
  const readyOn = plan.jobs.map((job, at) => {
    const day = run.jobs[at]?.readyDay ?? -1;
    return [job.id, day < 0 ? null : addDays(todayOn, day)] as const;
  });
  return { happenings, readyOn: new Map(readyOn) };
}
