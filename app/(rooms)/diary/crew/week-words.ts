import { minuteWords, type AbsentSpan, type WorkDay } from '@/lib/installation/rules/crew/hours';
import { dayWords } from '@/lib/installation/rules/diary/words';

/** The weekdays by their names; 0 is Sunday. */
export const weekdayNames = [
  'Sunday',
  'Monday',
  'Tuesday',
  'Wednesday',
  'Thursday',
  'Friday',
  'Saturday',
] as const;

/** When somebody works, in words: days with the same hours stand together, three in a row as one. */
export function weekWords(workDays: readonly WorkDay[]): string {
  if (workDays.length === 0) return 'as the gallery is open';
  const byHours = new Map<string, number[]>();
  for (const { weekday, fromMinute, toMinute } of workDays.toSorted(mondayFirst)) {
    const hours = `${minuteWords(fromMinute)} to ${minuteWords(toMinute)}`;
    byHours.set(hours, [...(byHours.get(hours) ?? []), weekday]);
  }
  return [...byHours].map(([hours, days]) => `${daysWords(days)} ${hours}`).join('; ');
}

function daysWords(days: readonly number[]): string {
  const names = days.map((day) => weekdayNames[day] ?? '');
  const places = days.map((day) => (day + 6) % 7);
  const isInARow = places.every((place, at) => at === 0 || place === (places[at - 1] ?? 0) + 1);
  return isInARow && names.length > 2 ? `${names[0]} to ${names.at(-1)}` : names.join(', ');
}

/** An absence in words: `Friday 8 May until Monday 11 May`. */
export function awayWords({ fromOn, toOn, why }: AbsentSpan): string {
  const days = fromOn === toOn ? dayWords(fromOn) : `${dayWords(fromOn)} until ${dayWords(toOn)}`;
  return why === '' ? days : `${days} (${why})`;
}

function mondayFirst(one: WorkDay, other: WorkDay): number {
  return ((one.weekday + 6) % 7) - ((other.weekday + 6) % 7);
}
