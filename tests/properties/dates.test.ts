import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';
import {
  addDays,
  dateFromDay,
  dayFromDate,
  dayOf,
  daysBetween,
  dayStartAt,
  instantOf,
  monthInstants,
  monthOf,
  monthRange,
  nextMonth,
  parseDay,
  parseMonth,
  previousMonth,
  type Day,
  type Month,
} from '@/lib/dates/rules';

const zone = fc.constantFrom(...Intl.supportedValuesOf('timeZone'));
// Since 2015 no zone has left out a whole day, as Samoa did in December 2011.
const instant = fc.date({
  min: new Date('2015-01-02T00:00:00Z'),
  max: new Date('2037-12-30T00:00:00Z'),
  noInvalidDate: true,
});
const day: fc.Arbitrary<Day> = instant.map((at) => dayOf(at, 'UTC'));

test.prop([fc.integer({ min: 2015, max: 2036 }), zone])(
  'the months tile a year without gap or overlap, in any zone',
  (year, there) => {
    const months = monthsFrom(`${year}-01`, 12);
    const spans = months.map((month) => monthInstants(month, there));
    expect(spans.slice(1).map((span) => span.fromAt)).toEqual(
      spans.slice(0, -1).map((span) => span.untilAt),
    );
    const days = months.map(monthRange);
    const counted = days.reduce((sum, range) => sum + daysBetween(range.fromOn, range.untilOn), 0);
    expect(counted).toBe(daysBetween(`${year}-01-01`, `${year + 1}-01-01`));
  },
);

test.prop([instant, zone])('every instant lies in the month of its day', (at, there) => {
  const { fromAt, untilAt } = monthInstants(monthOf(dayOf(at, there)), there);
  expect(fromAt.getTime()).toBeLessThanOrEqual(at.getTime());
  expect(at.getTime()).toBeLessThan(untilAt.getTime());
});

test.prop([day, zone])('a day begins with its first instant, in any zone', (on, there) => {
  const start = dayStartAt(on, there);
  expect(dayOf(start, there)).toBe(on);
  expect(dayOf(new Date(start.getTime() - 1), there)).toBe(addDays(on, -1));
});

test.prop([day, zone, fc.integer({ min: 0, max: 23 }), fc.integer({ min: 0, max: 59 })])(
  'a time of day is on its day, in any zone',
  (on, there, hour, minute) => {
    const time = [hour, minute].map((figure) => String(figure).padStart(2, '0')).join(':');
    expect(dayOf(instantOf(on, time, there), there)).toBe(on);
  },
);

test.prop([day, fc.integer({ min: -40_000, max: 40_000 })])(
  'days added and counted are the same number',
  (on, days) => {
    expect(daysBetween(on, addDays(on, days))).toBe(days);
    expect(addDays(addDays(on, days), -days)).toBe(on);
  },
);

test.prop([day])('a day survives being written and read, either way', (on) => {
  const [year, month, date] = on.split('-');
  expect(parseDay(on)).toEqual({ ok: true, value: on });
  expect(parseDay(`${month ?? ''}/${date ?? ''}/${year ?? ''}`)).toEqual({ ok: true, value: on });
});

test.prop([day])('the month before the next is the month itself', (on) => {
  const month = monthOf(on);
  expect(previousMonth(nextMonth(month))).toBe(month);
  expect(parseMonth(month)).toBe(month);
});

function monthsFrom(first: Month, count: number): Month[] {
  const months: Month[] = [first];
  for (let last = first; months.length < count; months.push(last)) last = nextMonth(last);
  return months;
}

test.prop([day])('a day survives being stored in a date column and read back', (on) => {
  expect(dayFromDate(dateFromDay(on))).toBe(on);
  expect(dateFromDay(on).toISOString()).toBe(`${on}T00:00:00.000Z`);
});
