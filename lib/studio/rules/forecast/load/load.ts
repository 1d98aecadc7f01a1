import type { Day } from '@/lib/dates/rules';
import { refusalOf, type ForecastRefusal, type ForecastStudio } from '../model';
import type { LoadFacts } from './facts';
import { jobsOf, type LoadJob } from './jobs';
import { studioOf } from './studio';

/** A job that cannot go through the studio as it is written down, and why. */
export type StuckJob = { readonly of: LoadJob; readonly refusal: ForecastRefusal };

/** All open jobs and the studio they share, ready to be forecast. */
export type StudioLoad = {
  readonly todayOn: Day;
  readonly studio: ForecastStudio;
  readonly jobs: readonly LoadJob[];
  /** Of these nothing can be told until what is missing is written down. */
  readonly stuck: readonly StuckJob[];
  readonly facts: LoadFacts;
};

/** Works out the load of the studio from what is written down. */
export function loadOf(facts: LoadFacts): StudioLoad {
  const studio = studioOf(facts);
  const all = jobsOf(facts).map((of) => ({ of, refusal: refusalOf(studio, [of.job]) }));
  return {
    todayOn: facts.todayOn,
    studio,
    jobs: all.flatMap(({ of, refusal }) => (refusal ? [] : [of])),
    stuck: all.flatMap(({ of, refusal }) => (refusal ? [{ of, refusal }] : [])),
    facts,
  };
}
