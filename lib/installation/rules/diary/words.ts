import { dayOf, formatDay, type Day } from '@/lib/dates/rules';
import { timeWords } from '@/lib/dates/rules/time-of-day';
import type { NotAllowed } from '@/lib/access/rules';
import { kindTitles, kindWords, type AppointmentKind, type Span } from './kinds';

export { kindTitles };

/** Why nothing happened, whatever it was: no leave, or a form that was sent before. */
export type AnyRefusal = NotAllowed | { code: 'key_used_for_something_else' };

/** Two times of day in a zone: `9:30 am to 12:00 pm`. */
export function hoursWords(span: Span, zone: string): string {
  return `${timeWords(span.startsAt, zone)} to ${timeWords(span.endsAt, zone)}`;
}

/** A day without its year, as one says it in the same season: `Friday 27 November`. */
export function dayWords(day: Day): string {
  return formatDay(day, 'long').replace(/ \d{4}$/, '');
}

/** What is said after booking: `Hanging booked for Friday 27 November, 9:00 am to 12:00 pm.` */
export function bookedWords(kind: AppointmentKind, span: Span, zone: string): string {
  return `${kindTitles[kind]} booked for ${whenWords(span, zone)}.`;
}

/** What is said after moving: `The hanging is now on Friday 27 November, 9:00 am to 12:00 pm.` */
export function movedWords(kind: AppointmentKind, span: Span, zone: string): string {
  return `The ${kindWords[kind]} is now on ${whenWords(span, zone)}.`;
}

/** A day and its hours: `Friday 27 November, 9:00 am to 12:00 pm`. */
export function whenWords(span: Span, zone: string): string {
  return `${dayWords(dayOf(span.startsAt, zone))}, ${hoursWords(span, zone)}`;
}

/** What an appointment is, with whose it is: `Hanging of Herons at low water`. */
export function titleWords(
  kind: AppointmentKind,
  commissionTitle: string | null,
  address: string,
): string {
  const what = kindTitles[kind];
  if (!commissionTitle) return `${what}, ${address}`;
  return `${what} ${kind === 'site_visit' ? 'for' : 'of'} ${commissionTitle}`;
}

/** People by name: `Osip Lund`, `Osip Lund and Ruth Callow`, `A, B and C`. */
export function namesWords(names: readonly string[]): string {
  const last = names.at(-1) ?? '';
  return names.length < 2 ? last : `${names.slice(0, -1).join(', ')} and ${last}`;
}
