import { dayOf } from '@/lib/dates/rules';
import { clockTime } from '@/lib/dates/rules/time-of-day';

/** An instant as the two fields of a form: its day and its time of day in the gallery's zone. */
export function untilFields(at: Date, zone: string): { untilOn: string; untilTime: string } {
  return { untilOn: dayOf(at, zone), untilTime: clockTime(at, zone) };
}
