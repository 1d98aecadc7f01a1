import { fc, test as law } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { addDays } from '@/lib/dates/rules';
import {
  calendarFrom,
  firstOpen,
  isOpenOn,
  openDaysBetween,
  workedUntil,
} from '@/lib/studio/rules/forecast/calendar';

const weekends = { weekdays: [0, 6], days: [] };

describe('working days', () => {
  // 2026-06-04 is a Thursday.
  test('three days from a Thursday end on the Tuesday', () => {
    const calendar = calendarFrom('2026-06-04', 60, weekends);
    expect(workedUntil(calendar, 0, 3)).toBe(5);
    expect(openDaysBetween(weekends, '2026-06-04', '2026-06-09')).toBe(3);
  });
  test('a closed day by itself is passed over', () => {
    const calendar = calendarFrom('2026-06-04', 60, { weekdays: [0, 6], days: ['2026-06-08'] });
    expect(workedUntil(calendar, 0, 3)).toBe(6);
    expect(firstOpen(calendar, 4)).toBe(5);
  });
  test('where nobody ever works, nothing comes into sight', () => {
    const calendar = calendarFrom('2026-06-04', 60, { weekdays: [0, 1, 2, 3, 4, 5, 6], days: [] });
    expect(firstOpen(calendar, 0)).toBe(60);
    expect(workedUntil(calendar, 0, 1)).toBe(60);
  });
  law.prop([fc.uniqueArray(fc.nat(6), { maxLength: 6 }), fc.nat(200), fc.nat(30)])(
    'work ends on an open day, so many open days later',
    (weekdays, from, days) => {
      const closed = { weekdays, days: [] };
      const calendar = calendarFrom('2026-06-04', 600, closed);
      const begins = firstOpen(calendar, from);
      const ends = workedUntil(calendar, begins, days);
      const on = (day: number) => addDays('2026-06-04', day);
      expect(isOpenOn(closed, on(ends))).toBe(true);
      expect(openDaysBetween(closed, on(begins), on(ends))).toBe(days);
    },
  );
});
