import { addDays, daysBetween, weekdayOf, type Day } from '@/lib/dates/rules';

/** When nobody works: weekdays from 0 for Sunday to 6, and days by themselves. */
export type Closed = {
  readonly weekdays: readonly number[];
  readonly days: readonly Day[];
};

/**
 * The days ahead by number, today being 0, up to an end that stands for "not within sight".
 */
export type Calendar = {
  readonly end: number;
  /** 1 where somebody works. */
  readonly isOpen: Int32Array;
  /** The day itself if it is open, or the next that is; `end` when none is. */
  readonly opensOn: Int32Array;
  /** How many open days lie between today and the day, without it. */
  readonly openBefore: Int32Array;
  /** The open days in order; `end` past the last. */
  readonly openDays: Int32Array;
};

/** Whether somebody works on a day. */
export function isOpenOn(closed: Closed, day: Day): boolean {
  return !closed.weekdays.includes(weekdayOf(day)) && !closed.days.includes(day);
}

/** The calendar from today on for a number of days. */
export function calendarFrom(todayOn: Day, end: number, closed: Closed): Calendar {
  const isOpen = new Int32Array(end);
  const openBefore = new Int32Array(end + 1);
  const openDays = new Int32Array(2 * end + 1).fill(end);
  const opensOn = new Int32Array(end + 1).fill(end);
  const first = weekdayOf(todayOn);
  const closedDays = new Set(closed.days.map((day) => daysBetween(todayOn, day)));
  let open = 0;
  for (let day = 0; day < end; day += 1) {
    openBefore[day] = open;
    if (closed.weekdays.includes((first + day) % 7)) continue;
    if (closedDays.has(day)) continue;
    isOpen[day] = 1;
    openDays[open] = day;
    open += 1;
  }
  openBefore[end] = open;
  for (let day = end - 1; day >= 0; day -= 1) {
    opensOn[day] = isOpen[day] ? day : (opensOn[day + 1] ?? end);
  }
  return { end, isOpen, opensOn, openBefore, openDays };
}

/**
 * The day on which work that began on an open day is done, after so many open days; nothing
 * moves on a closed one.
 *
 * @returns the calendar's `end` when that is out of sight
 * @example three days from a Thursday, closed at weekends: the Tuesday
 */
export function workedUntil(calendar: Calendar, fromDay: number, openDays: number): number {
  return calendar.openDays[(calendar.openBefore[fromDay] ?? 0) + openDays] ?? calendar.end;
}

/** The first open day on or after a day; the calendar's `end` when that is out of sight. */
export function firstOpen(calendar: Calendar, day: number): number {
  return calendar.opensOn[day] ?? calendar.end;
}

/** How many open days lie from one day to another, the last not counted. */
export function openDaysBetween(closed: Closed, fromOn: Day, toOn: Day): number {
  let open = 0;
  for (let day = fromOn; day < toOn; day = addDays(day, 1)) if (isOpenOn(closed, day)) open += 1;
  return open;
}
