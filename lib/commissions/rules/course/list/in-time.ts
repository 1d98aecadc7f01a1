import { approvedOf, coloursApprovedOn, type CommissionFacts } from '@/lib/commissions/rules/facts';
import { toldDay } from '@/lib/commissions/rules/course/promise';
import { finishedOn, hasBegun, isFinished } from '@/lib/commissions/rules/course/standing';
import { addDays, daysBetween, monthOf, monthRange, type Day } from '@/lib/dates/rules';

/** What is marked on the line of a commission, in the order of its course. */
export const timeMarks = [
  'asked',
  'agreed',
  'sketch',
  'colours',
  'promised',
  'told',
  'hanging',
] as const;

/** One of the {@link timeMarks}. */
export type TimeMark = (typeof timeMarks)[number];

/** Each mark as the legend says it. */
export const timeMarkWords: Readonly<Record<TimeMark, string>> = {
  asked: 'asked for',
  agreed: 'agreed',
  sketch: 'yes to the sketch',
  colours: 'yes to the colours',
  promised: 'promised for',
  told: 'told of another day',
  hanging: 'hanging, delivery or hand-over',
};

/** One commission in time. */
export type InTime = {
  readonly marks: readonly { readonly kind: TimeMark; readonly on: Day }[];
  /** From the first clay to the last piece finished, or to today while one is not. */
  readonly making: { readonly fromOn: Day; readonly toOn: Day; readonly isDone: boolean } | null;
  /** The days by which the promise is over. */
  readonly late: { readonly fromOn: Day; readonly toOn: Day } | null;
};

/**
 * A commission in time: its marks by their days, the span of the making, the days over the promise.
 *
 * @example a commission that was just asked for has one mark and no spans
 */
export function inTime(facts: CommissionFacts, today: Day): InTime {
  const on = markedDays(facts);
  return {
    marks: timeMarks.flatMap((kind) => {
      const day = on[kind];
      return day === null ? [] : [{ kind, on: day }];
    }),
    making: making(facts, today),
    late: late(facts, today),
  };
}

function markedDays(facts: CommissionFacts): Record<TimeMark, Day | null> {
  const { askedOn, agreement, handOver } = facts;
  return {
    asked: askedOn,
    agreed: agreement?.agreedOn ?? null,
    sketch: approvedOf(facts.sketches)?.approvedOn ?? null,
    colours: coloursApprovedOn(facts),
    promised: agreement?.promisedOn ?? null,
    told: toldDay(facts),
    hanging: handOver?.handedOn ?? lastBooked(facts),
  };
}

function late(facts: CommissionFacts, today: Day): InTime['late'] {
  const promisedOn = facts.agreement?.promisedOn ?? null;
  const doneOn = stoppedOn(facts) ?? today;
  return promisedOn !== null && promisedOn < doneOn ? { fromOn: promisedOn, toOn: doneOn } : null;
}

function stoppedOn({ handOver, ending }: CommissionFacts): Day | null {
  return handOver?.handedOn ?? ending?.endedOn ?? null;
}

/** The days that a drawing of many commissions covers, by whole months. */
export type TimeScale = {
  readonly fromOn: Day;
  readonly days: number;
  /** The first day of each month and how many days in it begins. */
  readonly months: readonly { readonly on: Day; readonly at: number }[];
};

const mostBefore = 540;
const mostAfter = 730;

/**
 * The days to draw: from the month of the first mark to that of the last one, with today in it.
 * What lies further back than eighteen months or further ahead than two years is left to the table.
 */
export function timeScale(rows: readonly InTime[], today: Day): TimeScale {
  const days = [...rows.flatMap(({ marks }) => marks.map((mark) => mark.on)), today].toSorted();
  const first = laterOf(days.at(0) ?? today, addDays(today, -mostBefore));
  const last = earlierOf(days.at(-1) ?? today, addDays(today, mostAfter));
  const { fromOn } = monthRange(monthOf(first));
  const { untilOn } = monthRange(monthOf(last));
  const months: { on: Day; at: number }[] = [];
  for (let on = fromOn; on < untilOn; on = monthRange(monthOf(on)).untilOn) {
    months.push({ on, at: daysBetween(fromOn, on) });
  }
  return { fromOn, days: daysBetween(fromOn, untilOn), months };
}

/** How many days into a drawing a day lies; at its edge when it lies outside. */
export function dayAt({ fromOn, days }: TimeScale, day: Day): number {
  return Math.min(Math.max(daysBetween(fromOn, day), 0), days);
}

function making(facts: CommissionFacts, today: Day): InTime['making'] {
  if (!hasBegun(facts)) return null;
  const moved = facts.jobs.flatMap((job) => job.moves.map((move) => move.movedOn)).toSorted();
  const isDone = facts.jobs.every(isFinished);
  return {
    fromOn: moved[0] ?? today,
    toOn: isDone ? finishedOn(facts) : (stoppedOn(facts) ?? today),
    isDone,
  };
}

function lastBooked({ appointments }: CommissionFacts): Day | null {
  return appointments.reduce<Day | null>(
    (last, { on }) => (last === null || on > last ? on : last),
    null,
  );
}

function laterOf(one: Day, other: Day): Day {
  return one > other ? one : other;
}

function earlierOf(one: Day, other: Day): Day {
  return one < other ? one : other;
}
