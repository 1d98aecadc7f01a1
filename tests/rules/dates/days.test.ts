import { describe, expect, test } from 'vitest';
import { dayInput, monthInput, timeInput } from '@/lib/dates/input';
import {
  addDays,
  dayRefusalMessage,
  daysBetween,
  formatDay,
  formatMonth,
  monthOf,
  monthRange,
  nextMonth,
  parseDay,
  parseMonth,
  previousMonth,
  weekdayOf,
  type Day,
  type DayRefusal,
} from '@/lib/dates/rules';

describe('days as they are typed', () => {
  test.each([
    ['as a form sends it', '2026-11-25', '2026-11-25'],
    ['month first', '11/25/2026', '2026-11-25'],
    ['without zeros', '3/5/2026', '2026-03-05'],
    ['a leap day', '2028-02-29', '2028-02-29'],
    ['spaces around', ' 2026-11-25 ', '2026-11-25'],
    ['the first year', '1900-01-01', '1900-01-01'],
    ['the last year', '2199-12-31', '2199-12-31'],
  ])('%s', (_label, text, day) => {
    expect(parseDay(text)).toEqual({ ok: true, value: day });
  });

  const refused: Record<DayRefusal['code'], readonly string[]> = {
    no_day: ['', ' '],
    not_a_day: ['tomorrow', '25 Nov 2026', '2026-11', '11/25/26', '2026-1-5'],
    not_in_the_calendar: ['2026-02-29', '2026-04-31', '2026-13-01', '2026-00-10', '13/45/2026'],
    year_too_far: ['1899-12-31', '2200-01-01', '0001-01-01'],
  };
  const rows = Object.entries(refused).flatMap(([code, texts]) =>
    texts.map((text) => [text, code] as const),
  );
  test.each(rows)('%j is refused: %s', (text, code) => {
    const read = parseDay(text);
    expect(read.ok ? 'taken' : read.refusal.code).toBe(code);
    if (!read.ok) expect(dayRefusalMessage(read.refusal)).toMatch(/^[A-Z].*\.$/);
  });
});

describe('days in the calendar', () => {
  test.each<[string, Day, number, Day]>([
    ['into the next month', '2026-02-28', 1, '2026-03-01'],
    ['over a leap day', '2028-02-28', 2, '2028-03-01'],
    ['back over the new year', '2026-01-01', -1, '2025-12-31'],
    ['nowhere', '2026-11-25', 0, '2026-11-25'],
    ['over the change of the clocks', '2026-03-07', 2, '2026-03-09'],
    ['a far year', '2026-11-25', 36_525, '2126-11-26'],
  ])('%s', (_label, day, days, later) => {
    expect(addDays(day, days)).toBe(later);
    expect(daysBetween(day, later)).toBe(days);
  });

  test('half a day cannot be added', () => {
    expect(() => addDays('2026-11-25', 0.5)).toThrow(/whole numbers/);
  });

  test('a day that is written otherwise is a broken promise', () => {
    expect(() => addDays('2026-1-5', 1)).toThrow(/2026-1-5/);
  });

  test('the week begins on Sunday', () => {
    expect([weekdayOf('2026-11-25'), weekdayOf('2026-11-29')]).toEqual([3, 0]);
  });
});

describe('months', () => {
  test('a month runs until the first of the next, which is not in it', () => {
    expect(monthRange('2026-12')).toEqual({ fromOn: '2026-12-01', untilOn: '2027-01-01' });
    expect(monthRange('2028-02')).toEqual({ fromOn: '2028-02-01', untilOn: '2028-03-01' });
  });

  test('the month before and after cross the year', () => {
    expect([previousMonth('2026-01'), nextMonth('2026-12')]).toEqual(['2025-12', '2027-01']);
    expect([nextMonth('2026-01'), nextMonth('2026-02')]).toEqual(['2026-02', '2026-03']);
  });

  test('a day lies in its month', () => {
    expect(monthOf('2026-11-30')).toBe('2026-11');
  });

  test.each([
    ['2026-11', '2026-11'],
    [' 2026-01 ', '2026-01'],
    ['2026-13', null],
    ['2026-1', null],
    ['2200-01', null],
    ['', null],
    ['2026-11-05', null],
  ])('%j is read as the month %j', (text, month) => {
    expect(parseMonth(text)).toBe(month);
  });
});

describe('days as people say them', () => {
  test('long, short, and the month alone', () => {
    expect(formatDay('2026-11-25', 'long')).toBe('Wednesday 25 November 2026');
    expect(formatDay('2026-11-05', 'short')).toBe('5 Nov 2026');
    expect(formatMonth('2026-11')).toBe('November 2026');
  });
});

describe('days in a form', () => {
  test('a typed day, month and time are taken', () => {
    expect(dayInput.parse('11/25/2026')).toBe('2026-11-25');
    expect(monthInput.parse('2026-11')).toBe('2026-11');
    expect(timeInput.parse('09:30')).toBe('09:30');
  });

  test.each([
    ['a day the calendar does not have', dayInput, '2026-02-30', /no such day/],
    ['a month that is none', monthInput, '2026-13', /Write a month/],
    ['a time past midnight', timeInput, '24:00', /time of day/],
    ['a time without its zero', timeInput, '9:30', /time of day/],
  ])('%s is refused with a sentence', (_label, input, text, sentence) => {
    expect(input.safeParse(text).error?.issues[0]?.message).toMatch(sentence);
  });
});
