import { TZDate } from '@date-fns/tz';
import { format } from 'date-fns';
import { enUS } from 'date-fns/locale/en-US';
import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { zoneMinutes } from './rules/zone-changes';

/** A plain date, `'2026-11-25'`: a day of the calendar in the gallery's own time zone. */
export type Day = `${number}-${number}-${number}`;
/** A calendar month, `'2026-11'`. */
export type Month = `${number}-${number}`;
/** The locales that dates can be written in. */
export type DateLocale = 'en-US';

const locales = { 'en-US': enUS } as const;
const dayMs = 86_400_000;
const yearFirst = 1900;
const yearLast = 2199;

/** Why a typed day was not taken. */
export type DayRefusal =
  | { code: 'no_day' }
  | { code: 'not_a_day' }
  | { code: 'not_in_the_calendar' }
  | { code: 'year_too_far'; yearFirst: number; yearLast: number };

/**
 * Reads a day as a form sends it, `2026-11-25`, or as it is typed, `11/25/2026`.
 *
 * @returns the day; refuses, in this order: nothing typed, not a day, a day the calendar does not
 *   have, a year before 1900 or after 2199
 * @example parseDay('2026-02-29') // refused: 2026 is no leap year
 */
export function parseDay(text: string): Result<Day, DayRefusal> {
  const typed = text.trim();
  if (typed === '') return refuse({ code: 'no_day' });
  const iso = /^(?<year>\d{4})-(?<month>\d{2})-(?<date>\d{2})$/.exec(typed);
  const american = /^(?<month>\d{1,2})\/(?<date>\d{1,2})\/(?<year>\d{4})$/.exec(typed);
  const written = (iso ?? american)?.groups;
  if (!written) return refuse({ code: 'not_a_day' });

  const year = Number(written['year']);
  const month = Number(written['month']);
  const date = Number(written['date']);
  const instant = new Date(Date.UTC(2000, month - 1, date));
  instant.setUTCFullYear(year, month - 1, date);
  if (instant.getUTCMonth() !== month - 1 || instant.getUTCDate() !== date) {
    return refuse({ code: 'not_in_the_calendar' });
  }
  if (year < yearFirst || year > yearLast) {
    return refuse({ code: 'year_too_far', yearFirst, yearLast });
  }
  return ok(dayFrom(year, month, date));
}

/** Says in a full sentence why a typed day was not taken. */
export function dayRefusalMessage(refusal: DayRefusal): string {
  switch (refusal.code) {
    case 'no_day':
      return 'Write a day, such as 11/25/2026.';
    case 'not_a_day':
      return 'That does not read as a day. Write it as 11/25/2026.';
    case 'not_in_the_calendar':
      return 'The calendar has no such day.';
    case 'year_too_far':
      return `Write a year between ${refusal.yearFirst} and ${refusal.yearLast}.`;
  }
}

/**
 * The day it is at an instant, in a time zone.
 *
 * @param zone IANA name, `'America/Los_Angeles'`
 * @example dayOf(new Date('2026-11-25T03:00:00Z'), 'America/Los_Angeles') // '2026-11-24'
 */
export function dayOf(instant: Date, zone: string): Day {
  const there = new TZDate(instant.getTime(), zone);
  return dayFrom(there.getFullYear(), there.getMonth() + 1, there.getDate());
}

/**
 * The day some days later; earlier for a number below zero.
 *
 * @example addDays('2026-02-28', 1) // '2026-03-01'
 */
export function addDays(day: Day, days: number): Day {
  invariant(Number.isInteger(days), 'Days are added in whole numbers.');
  return dayAtUtc(utcOf(day) + days * dayMs);
}

/**
 * How many days from one to the other; below zero when the second is earlier.
 *
 * @example daysBetween('2026-11-25', '2026-12-01') // 6
 */
export function daysBetween(fromOn: Day, toOn: Day): number {
  return Math.round((utcOf(toOn) - utcOf(fromOn)) / dayMs);
}

/** The day of the week, from 0 for Sunday to 6 for Saturday. */
export function weekdayOf(day: Day): number {
  return new Date(utcOf(day)).getUTCDay();
}

/** The month a day lies in. */
export function monthOf(day: Day): Month {
  const [year, month] = partsOf(day);
  return monthFrom(year, month);
}

/**
 * The days of a month, half open: from the first, until the first of the next, which is not in it.
 *
 * @example monthRange('2026-12') // { fromOn: '2026-12-01', untilOn: '2027-01-01' }
 */
export function monthRange(month: Month): { fromOn: Day; untilOn: Day } {
  return { fromOn: firstOf(month), untilOn: firstOf(nextMonth(month)) };
}

/**
 * The instants of a month in a time zone, half open.
 *
 * @example monthInstants('2026-11', 'America/Los_Angeles').fromAt // 2026-11-01T07:00:00.000Z
 */
export function monthInstants(month: Month, zone: string): { fromAt: Date; untilAt: Date } {
  const { fromOn, untilOn } = monthRange(month);
  return { fromAt: dayStartAt(fromOn, zone), untilAt: dayStartAt(untilOn, zone) };
}

/** The month before. */
export function previousMonth(month: Month): Month {
  return monthOf(addDays(firstOf(month), -1));
}

/** The month after. */
export function nextMonth(month: Month): Month {
  return monthOf(addDays(firstOf(month), 31));
}

/**
 * Reads a month, `2026-11`.
 *
 * @returns null when it is not one, or its year is before 1900 or after 2199
 */
export function parseMonth(text: string): Month | null {
  const day = parseDay(`${text.trim()}-01`);
  return day.ok ? monthOf(day.value) : null;
}

/**
 * The first instant of a day in a time zone: midnight, or later where the clocks skip midnight.
 *
 * @example dayStartAt('2026-11-25', 'America/Los_Angeles') // 2026-11-25T08:00:00.000Z
 */
export function dayStartAt(day: Day, zone: string): Date {
  return instantOf(day, '00:00', zone);
}

/**
 * The instant of a time of day in a time zone.
 *
 * A time that the clocks skip in spring is taken as late as it is early on the other side of the
 * gap; one that they show twice in autumn is the first of the two.
 *
 * @param time `'HH:mm'`, from 00:00 to 23:59
 * @example instantOf('2026-11-25', '15:30', 'America/Los_Angeles') // 2026-11-25T23:30:00.000Z
 */
export function instantOf(day: Day, time: string, zone: string): Date {
  const match = /^([01]\d|2[0-3]):([0-5]\d)$/.exec(time);
  invariant(match, 'A time of day is written as 09:05.');
  const [year, month, date] = partsOf(day);
  const shown = Date.UTC(year, month - 1, date, Number(match[1]), Number(match[2]));
  const [before, after] = [-dayMs, dayMs].map((ms) => zoneMinutes(new Date(shown + ms), zone));
  const instants = [before, after]
    .map((minutes = 0) => ({ at: new Date(shown - minutes * 60_000), minutes }))
    .filter(({ at, minutes }) => zoneMinutes(at, zone) === minutes)
    .map(({ at }) => at.getTime());
  return new Date(instants.length > 0 ? Math.min(...instants) : shown - (before ?? 0) * 60_000);
}

/**
 * A day as people say it: `Wednesday 25 November 2026`, or short, `25 Nov 2026`.
 */
export function formatDay(day: Day, style: 'long' | 'short', locale: DateLocale = 'en-US'): string {
  const [year, month, date] = partsOf(day);
  const pattern = style === 'long' ? 'EEEE d MMMM yyyy' : 'd MMM yyyy';
  return format(new TZDate(year, month - 1, date, 'UTC'), pattern, { locale: locales[locale] });
}

/** A month as people say it: `November 2026`. */
export function formatMonth(month: Month, locale: DateLocale = 'en-US'): string {
  return formatDay(firstOf(month), 'long', locale).split(' ').slice(2).join(' ');
}

/** An instant in the time zone of the gallery: `25 Nov 2026, 3:05 pm`. */
export function formatInstant(instant: Date, zone: string, locale: DateLocale = 'en-US'): string {
  const there = new TZDate(instant.getTime(), zone);
  return format(there, 'd MMM yyyy, h:mm aaa', { locale: locales[locale] });
}

/**
 * A day as a date column of the database stores it: midnight of that day in UTC.
 *
 * @example dateFromDay('2026-11-25') // 2026-11-25T00:00:00.000Z
 */
export function dateFromDay(day: Day): Date {
  return new Date(utcOf(day));
}

/** The day that a date column of the database holds; the other way round from dateFromDay. */
export function dayFromDate(date: Date): Day {
  return dayAtUtc(date.getTime());
}

/** Whether this is the name of a time zone, such as `America/Los_Angeles`. */
export function isZone(name: string): boolean {
  return /^[A-Za-z]/.test(name) && !Number.isNaN(new TZDate(0, name).getTime());
}

function firstOf(month: Month): Day {
  return `${month}-01` as Day;
}

function partsOf(day: Day): [year: number, month: number, date: number] {
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(day);
  invariant(match, `A day is written as 2026-11-25, and not as ${day}.`);
  return [Number(match[1]), Number(match[2]), Number(match[3])];
}

function utcOf(day: Day): number {
  const [year, month, date] = partsOf(day);
  return Date.UTC(year, month - 1, date);
}

function dayAtUtc(ms: number): Day {
  const instant = new Date(ms);
  return dayFrom(instant.getUTCFullYear(), instant.getUTCMonth() + 1, instant.getUTCDate());
}

function dayFrom(year: number, month: number, date: number): Day {
  return `${monthFrom(year, month)}-${String(date).padStart(2, '0')}` as Day;
}

function monthFrom(year: number, month: number): Month {
  return `${String(year).padStart(4, '0')}-${String(month).padStart(2, '0')}` as Month;
}
