import { expect, test } from 'vitest';
import { daysBetween, monthRange, type Month } from '@/lib/dates/rules';
import { dayToldWords, weeksOf } from '@/lib/installation/rules/diary/weeks';
import { clockTime, timeWords } from '@/lib/dates/rules/time-of-day';
import { titleWords } from '@/lib/installation/rules/diary/words';

test.each<[Month, number]>([
  ['2027-02', 4],
  ['2026-11', 6],
  ['2026-05', 5],
])('%s is drawn in %i weeks, Monday first, with each of its days once', (month, weeks) => {
  const strip = weeksOf(month);
  expect(strip).toHaveLength(weeks);
  expect(strip.every((week) => week.length === 7)).toBe(true);
  const days = strip.flat().filter((day) => day !== null);
  const { fromOn, untilOn } = monthRange(month);
  expect(days).toHaveLength(daysBetween(fromOn, untilOn));
  expect(days[0]).toBe(fromOn);
});

test.each([
  ['2026-05-04', 'Today, Monday 4 May'],
  ['2026-05-05', 'Tomorrow, Tuesday 5 May'],
  ['2026-05-03', 'Yesterday, Sunday 3 May'],
  ['2026-05-08', 'Friday 8 May'],
  ['2027-01-01', 'Friday 1 January 2027'],
] as const)('%s is told as people say it', (day, words) => {
  expect(dayToldWords(day, '2026-05-04')).toBe(words);
});

test.each([
  ['2026-05-08T07:00:00Z', '12:00 am', '00:00'],
  ['2026-05-08T16:05:00Z', '9:05 am', '09:05'],
  ['2026-05-08T19:00:00Z', '12:00 pm', '12:00'],
  ['2026-05-09T06:59:00Z', '11:59 pm', '23:59'],
])('%s is a time of day on the gallery’s clock', (instant, said, typed) => {
  expect(timeWords(new Date(instant), 'America/Los_Angeles')).toBe(said);
  expect(clockTime(new Date(instant), 'America/Los_Angeles')).toBe(typed);
});

test('an appointment is called by what it is and whose', () => {
  expect(titleWords('hanging', 'Nine herons', 'x')).toBe('Hanging of Nine herons');
  expect(titleWords('site_visit', 'Nine herons', 'x')).toBe('Site visit for Nine herons');
  expect(titleWords('delivery', null, '4 Ropewalk Lane')).toBe('Delivery, 4 Ropewalk Lane');
});
