import { addDays, weekdayOf, type Day } from '@/lib/dates/rules';
import { calendarFrom, type Calendar } from '../calendar';
import { checkJobs, type ForecastJob, type ForecastStudio } from '../model';
import { layCases, type Cases } from './cases';
import { openingOf, type Opening } from './opening';

/**
 * Everything that is the same in all futures: jobs in the order of their turns, their steps one
 * after the other through all jobs, days counted from today.
 */
export type Plan = {
  readonly todayOn: Day;
  /** Days that are looked at; what lies beyond is out of sight. */
  readonly end: number;
  readonly studio: ForecastStudio;
  readonly jobs: readonly ForecastJob[];
  /** By job: the place of its first step; one more entry ends the last. */
  readonly firstOf: Int32Array;
  readonly cones: readonly string[];
  readonly calendar: Calendar;
  readonly benchCalendars: readonly Calendar[];
  readonly kilnCalendars: readonly Calendar[];
  /** Which of the drying factors holds on a day. */
  readonly seasonOf: Int32Array;
  /** Weeks from Monday, counted from this one. */
  readonly weekOf: Int32Array;
  readonly cases: Cases;
  /** By step and season: where its cases of days begin. */
  readonly casesFrom: Int32Array;
  readonly opening: Opening;
};

/**
 * Lays out a studio and its open jobs for any number of futures.
 *
 * @param end how many days are looked at
 * @throws Error when the jobs break what {@link checkJobs} states
 */
export function layPlan(
  studio: ForecastStudio,
  jobs: readonly ForecastJob[],
  todayOn: Day,
  end: number,
): Plan {
  checkJobs(studio, jobs);
  const inTurn = jobs.toSorted((one, other) => {
    if (one.neededOn === other.neededOn) return 0;
    if (one.neededOn === null || other.neededOn === null) return one.neededOn === null ? 1 : -1;
    return one.neededOn < other.neededOn ? -1 : 1;
  });
  const all = inTurn.flatMap((job) => job.steps);
  const firstOf = new Int32Array(inTurn.length + 1);
  inTurn.forEach((job, at) => (firstOf[at + 1] = (firstOf[at] ?? 0) + job.steps.length));
  const cases = layCases(studio, inTurn);
  const casesFrom = Int32Array.from(
    all.flatMap((step) =>
      Array.from({ length: cases.seasons }, (_, season) => cases.from(step, season)),
    ),
  );
  const closedWith = ({ closedDays }: { closedDays: readonly Day[] }): Calendar =>
    calendarFrom(todayOn, end, {
      weekdays: studio.closed.weekdays,
      days: [...studio.closed.days, ...closedDays],
    });
  const sinceMonday = (weekdayOf(todayOn) + 6) % 7;
  return {
    todayOn,
    end,
    studio,
    jobs: inTurn,
    firstOf,
    cones: [...new Set(all.flatMap((step) => (step.kind === 'fire' ? [step.cone] : [])))],
    calendar: closedWith({ closedDays: [] }),
    benchCalendars: studio.benches.map(closedWith),
    kilnCalendars: studio.kilns.map(closedWith),
    seasonOf: Int32Array.from({ length: end }, (_, day) => cases.seasonOn(addDays(todayOn, day))),
    weekOf: Int32Array.from({ length: end }, (_, day) => Math.floor((day + sinceMonday) / 7)),
    cases,
    casesFrom,
    opening: openingOf({ studio, jobs: inTurn, firstOf, cases }, todayOn),
  };
}
