import { addDays, weekdayOf, type Day } from '@/lib/dates/rules';

/**
 * The federal holidays of a year, on the day itself and, where that is a Saturday or a Sunday, on
 * the Friday or Monday on which it is kept as well.
 *
 * @source 5 U.S.C. 6103; the Friday by Executive Order 11582
 * @example 4 July 2026 is a Saturday: the third is in it too
 */
export function federalHolidays(year: number): readonly Day[] {
  const on = (month: number, day: number) => dayOfYear(year, month, day);
  const fixed = [on(1, 1), on(7, 4), on(11, 11), on(12, 25)];
  if (year >= 2021) fixed.push(on(6, 19));
  const days = [
    ...fixed.flatMap((day) => [day, observed(day)]),
    nthWeekday(on(1, 1), monday, 3),
    nthWeekday(on(2, 1), monday, 3),
    lastMonday(on(5, 31)),
    nthWeekday(on(9, 1), monday, 1),
    nthWeekday(on(10, 1), monday, 2),
    nthWeekday(on(11, 1), thursday, 4),
    observed(dayOfYear(year + 1, 1, 1)),
  ];
  return [...new Set(days)].filter((day) => day.startsWith(String(year))).sort();
}

const sunday = 0;
const monday = 1;
const thursday = 4;
const saturday = 6;

function dayOfYear(year: number, month: number, day: number): Day {
  const two = (figure: number) => String(figure).padStart(2, '0');
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}` as Day;
}

function observed(day: Day): Day {
  const weekday = weekdayOf(day);
  if (weekday === saturday) return addDays(day, -1);
  return weekday === sunday ? addDays(day, 1) : day;
}

function nthWeekday(first: Day, weekday: number, nth: number): Day {
  const ahead = (weekday - weekdayOf(first) + 7) % 7;
  return addDays(first, ahead + 7 * (nth - 1));
}

function lastMonday(last: Day): Day {
  return addDays(last, -((weekdayOf(last) - monday + 7) % 7));
}

/**
 * The last day on which a sale made at the buyer's home can be cancelled: the end of the third
 * business day after it. Saturdays count; Sundays and federal holidays do not. Whether the Friday or
 * Monday on which a holiday is kept is one for this rule is not settled: it is left out here too, which
 * gives the longer time.
 *
 * @source 16 CFR Part 429, the rule on a cooling-off period for sales made at homes
 * @example signed on Wednesday 25 November 2026, the day before Thanksgiving: until Monday 30
 */
export function cancelUntil(signedOn: Day): Day {
  let day = signedOn;
  for (let counted = 0; counted < 3;) {
    day = addDays(day, 1);
    if (isBusinessDay(day)) counted += 1;
  }
  return day;
}

function isBusinessDay(day: Day): boolean {
  return weekdayOf(day) !== sunday && !federalHolidays(Number(day.slice(0, 4))).includes(day);
}
