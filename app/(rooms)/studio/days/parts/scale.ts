import {
  addDays,
  daysBetween,
  formatMonth,
  monthOf,
  monthRange,
  nextMonth,
} from '@/lib/dates/rules';
import type { Day } from '@/lib/dates/rules';

/** A line of days from today to the last that is drawn. */
export type Scale = { readonly fromOn: Day; readonly days: number };

/** The furthest that is drawn, in days. */
const furthest = 420;
const least = 28;

/** A scale from today that reaches all of these days, as far as it is drawn at all. */
export function scaleOf(todayOn: Day, days: readonly (Day | null)[]): Scale {
  const reach = days.map((day) => (day === null ? 0 : daysBetween(todayOn, day)));
  const last = Math.max(least, ...reach) * 1.08;
  return { fromOn: todayOn, days: Math.ceil(Math.min(furthest, last)) };
}

/** Where a day lies on the line, in percent: 0 is today, 100 the end or beyond it. */
export function placeOf(scale: Scale, day: Day | null): number {
  if (day === null) return 100;
  const at = (daysBetween(scale.fromOn, day) / scale.days) * 100;
  return Math.round(Math.min(100, Math.max(0, at)) * 100) / 100;
}

/** As many months have their name written, so that they do not run into one another on a phone. */
const namesMost = 6;

/** The first days of the months on a line; of many, only every second or third is named. */
export function monthsOn(scale: Scale): { day: Day; name: string }[] {
  const last = addDays(scale.fromOn, scale.days);
  const months: { day: Day; name: string }[] = [];
  let month = nextMonth(monthOf(scale.fromOn));
  while (monthRange(month).fromOn <= last) {
    const { fromOn } = monthRange(month);
    months.push({ day: fromOn, name: formatMonth(month).slice(0, 3) });
    month = nextMonth(month);
  }
  const each = Math.ceil(months.length / namesMost);
  return months.map(({ day, name }, at) => ({ day, name: at % each === 0 ? name : '' }));
}
