import { formatInstant } from '../rules';

/** A time of day in a zone: `9:30 am`. */
export function timeWords(instant: Date, zone: string): string {
  return formatInstant(instant, zone).split(', ')[1] ?? '';
}

/** A time of day in a zone as a form wants it: `09:30`. */
export function clockTime(instant: Date, zone: string): string {
  const [, hour = '', minute = '', half] =
    /(\d+):(\d+) (am|pm)$/.exec(timeWords(instant, zone)) ?? [];
  const hours = (Number(hour) % 12) + (half === 'pm' ? 12 : 0);
  return `${String(hours).padStart(2, '0')}:${minute}`;
}
