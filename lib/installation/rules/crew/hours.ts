import { dayOf, weekdayOf, type Day } from '@/lib/dates/rules';
import { clockTime } from '@/lib/dates/rules/time-of-day';

/** A stretch of a day in minutes after midnight; at most 1440. */
export type Hours = { readonly fromMinute: number; readonly toMinute: number };

/** When somebody works on a weekday, from 0 for Sunday. */
export type WorkDay = Hours & { readonly weekday: number };

/** Days on which somebody is away, the last one included. */
export type AbsentSpan = { readonly fromOn: Day; readonly toOn: Day; readonly why: string };

/**
 * When whoever has no hours of their own works: as a gallery is open, nine to five from Monday to
 * Saturday.
 *
 * @source common practice
 */
export const galleryHours: Hours = { fromMinute: 540, toMinute: 1020 };

/** The weekday on which a gallery is closed: Sunday. @source common practice */
export const closedWeekday = 0;

/**
 * When somebody works on a day.
 *
 * @param workDays their own hours; without any they work as the gallery is open
 * @returns null on a day on which they do not
 */
export function hoursOn(workDays: readonly WorkDay[], day: Day): Hours | null {
  const weekday = weekdayOf(day);
  if (workDays.length === 0) return weekday === closedWeekday ? null : galleryHours;
  return workDays.find((one) => one.weekday === weekday) ?? null;
}

/** Whether a stretch of time lies inside somebody's hours; one over midnight never does. */
export function isInside(
  hours: Hours | null,
  { fromAt, untilAt, zone }: { fromAt: Date; untilAt: Date; zone: string },
): boolean {
  if (!hours) return false;
  if (dayOf(fromAt, zone) !== dayOf(untilAt, zone)) return false;
  return (
    hours.fromMinute <= minuteOf(clockTime(fromAt, zone)) &&
    minuteOf(clockTime(untilAt, zone)) <= hours.toMinute
  );
}

/** The absence in which a day lies; undefined for a day on which somebody is there. */
export function absentOn(absences: readonly AbsentSpan[], day: Day): AbsentSpan | undefined {
  return absences.find(({ fromOn, toOn }) => fromOn <= day && day <= toOn);
}

/** The minute of the day of a time as a form sends it: `09:30` is 570. */
export function minuteOf(time: string): number {
  return Number(time.slice(0, 2)) * 60 + Number(time.slice(3, 5));
}

/** A minute of the day as a form wants it: 570 is `09:30`; the end of the day is `24:00`. */
export function timeOfMinute(minute: number): string {
  const two = (figure: number) => String(figure).padStart(2, '0');
  return `${two(Math.floor(minute / 60))}:${two(minute % 60)}`;
}

/** A minute of the day as people say it: 570 is `9:30 am`. */
export function minuteWords(minute: number): string {
  const hour = Math.floor(minute / 60) % 24;
  const half = hour < 12 ? 'am' : 'pm';
  return `${hour % 12 === 0 ? 12 : hour % 12}:${String(minute % 60).padStart(2, '0')} ${half}`;
}

/** A length of time in words: `40 minutes`, `1 hour`, `2 hours 5 minutes`. */
export function lastsWords(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = minutes % 60;
  const hourWords = hours === 1 ? '1 hour' : `${hours} hours`;
  const restWords = rest === 1 ? '1 minute' : `${rest} minutes`;
  if (hours === 0) return restWords;
  return rest === 0 ? hourWords : `${hourWords} ${restWords}`;
}
