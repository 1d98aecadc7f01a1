import { addDays, weekdayOf, type Day } from '@/lib/dates/rules';
import { calendarFrom, type Calendar } from '../calendar';
import { wordOf } from '../chance';
import { checkJobs, type ForecastJob, type ForecastStudio } from '../model';
import { openingOf, type Opening } from './opening';
import { layQueues, type Queues } from './queues';
import { layCases, laySteps, type Steps } from './steps';

/** The kilns, by their number. */
export type Kilns = {
  readonly count: number;
  readonly volume: Float64Array;
  /** What waits together before one is lit. */
  readonly leastVolume: Float64Array;
  readonly longestWait: Int32Array;
  readonly turns: Int32Array;
  readonly turnsTaken: Int32Array;
  /** The queues it is filled from, one a cone. */
  readonly cones: readonly Int32Array[];
  readonly calendars: readonly Calendar[];
  /** Their streams of chance follow those of the steps: of loads to come, then of what is in them. */
  readonly words: Uint32Array;
};

/**
 * Everything a future needs, as numbers in rows: jobs in the order of their turns, their steps one
 * after the other through all jobs, days counted from today.
 */
export type Plan = {
  readonly todayOn: Day;
  /** Days that are looked at; what lies beyond is out of sight. */
  readonly end: number;
  readonly studio: ForecastStudio;
  readonly jobs: readonly ForecastJob[];
  readonly calendar: Calendar;
  readonly benchCalendars: readonly Calendar[];
  /** Which of the drying factors holds on a day. */
  readonly seasonOf: Int32Array;
  /** Weeks from Monday, counted from this one. */
  readonly weekOf: Int32Array;
  readonly steps: Steps;
  readonly queues: Queues;
  readonly kilns: Kilns;
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
  const queues = layQueues(studio, inTurn);
  const cases = layCases(studio, inTurn);
  const steps = laySteps(inTurn, cases, queues);
  const closedWith = (days: readonly Day[]): Calendar =>
    calendarFrom(todayOn, end, {
      weekdays: studio.closed.weekdays,
      days: [...studio.closed.days, ...days],
    });
  const sinceMonday = (weekdayOf(todayOn) + 6) % 7;
  return {
    todayOn,
    end,
    studio,
    jobs: inTurn,
    calendar: closedWith([]),
    benchCalendars: studio.benches.map((bench) => closedWith(bench.closedDays)),
    seasonOf: Int32Array.from({ length: end }, (_, day) => cases.seasonOn(addDays(todayOn, day))),
    weekOf: Int32Array.from({ length: end }, (_, day) => Math.floor((day + sinceMonday) / 7)),
    steps,
    queues,
    kilns: layKilns(studio, queues, closedWith),
    opening: openingOf(studio, inTurn, steps, todayOn),
  };
}

function layKilns(
  studio: ForecastStudio,
  queues: Queues,
  closedWith: (days: readonly Day[]) => Calendar,
): Kilns {
  const { kilns } = studio;
  return {
    count: kilns.length,
    volume: Float64Array.from(kilns, (kiln) => kiln.volumeCm3),
    leastVolume: Float64Array.from(kilns, (kiln) => (kiln.volumeCm3 * kiln.leastFillPercent) / 100),
    longestWait: Int32Array.from(kilns, (kiln) => kiln.longestWaitDays),
    turns: Int32Array.from(kilns, (kiln) => kiln.turnsAWeek),
    turnsTaken: Int32Array.from(kilns, (kiln) => kiln.loadsThisWeek),
    cones: kilns.map((kiln) =>
      Int32Array.from(
        kiln.cones.flatMap((cone) => {
          const at = queues.cones.indexOf(cone);
          return at < 0 ? [] : [studio.benches.length + at];
        }),
      ),
    ),
    calendars: kilns.map((kiln) => closedWith(kiln.closedDays)),
    words: Uint32Array.from(kilns, (kiln) => wordOf(`kiln ${kiln.id}`)),
  };
}
