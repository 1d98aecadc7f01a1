import {
  addDays,
  daysBetween,
  formatDay,
  monthOf,
  monthRange,
  weekdayOf,
  type Day,
  type Month,
} from '@/lib/dates/rules';

/** The weeks that a month touches, Monday first; days of the neighbouring months are null. */
export type MonthStrip = readonly (readonly (Day | null)[])[];

/**
 * A month as weeks, for a calendar strip.
 *
 * @returns four to six weeks of seven places
 * @example weeksOf('2027-02') // exactly four weeks: it begins on a Monday and has 28 days
 */
export function weeksOf(month: Month): MonthStrip {
  const { fromOn, untilOn } = monthRange(month);
  const mondayOn = addDays(fromOn, -((weekdayOf(fromOn) + 6) % 7));
  const weeks = Math.ceil(daysBetween(mondayOn, untilOn) / 7);
  return Array.from({ length: weeks }, (_week, week) =>
    Array.from({ length: 7 }, (_day, place) => {
      const day = addDays(mondayOn, week * 7 + place);
      return monthOf(day) === month ? day : null;
    }),
  );
}

/** The seven days of the week in which a day lies, Monday first. */
export function weekOf(day: Day): Day[] {
  const mondayOn = addDays(day, -((weekdayOf(day) + 6) % 7));
  return Array.from({ length: 7 }, (_day, place) => addDays(mondayOn, place));
}

/**
 * A week by its first and its last day: `7 to 13 December 2026`, `30 November to 6 December 2026`.
 */
export function weekWords(day: Day): string {
  const [fromOn, untilOn] = [weekOf(day)[0] ?? day, weekOf(day)[6] ?? day];
  const [first, last] = [plain(fromOn), plain(untilOn)];
  if (monthOf(fromOn) === monthOf(untilOn)) return `${Number(fromOn.slice(8))} to ${last}`;
  return `${fromOn.slice(0, 4) === untilOn.slice(0, 4) ? first.replace(/ \d{4}$/, '') : first} to ${last}`;
}

function plain(day: Day): string {
  return formatDay(day, 'long').split(' ').slice(1).join(' ');
}

/**
 * A day as people say it from today: `Today, Monday 4 May`, `Tomorrow, Tuesday 5 May`,
 * `Friday 8 May`, with the year when it is another one.
 */
export function dayToldWords(day: Day, todayOn: Day): string {
  const long = formatDay(day, 'long');
  const full = day.slice(0, 4) === todayOn.slice(0, 4) ? long.replace(/ \d{4}$/, '') : long;
  const ahead = daysBetween(todayOn, day);
  if (ahead === 0) return `Today, ${full}`;
  if (ahead === 1) return `Tomorrow, ${full}`;
  return ahead === -1 ? `Yesterday, ${full}` : full;
}
