import { describe, expect, test } from 'vitest';
import {
  dayOf,
  dayStartAt,
  formatInstant,
  instantOf,
  isZone,
  monthInstants,
  type Day,
} from '@/lib/dates/rules';

const coast = 'America/Los_Angeles';

describe('the day it is', () => {
  test.each([
    ['late evening on the coast is next morning elsewhere', '2026-11-25T03:00:00Z', '2026-11-24'],
    ['one millisecond before midnight', '2026-11-25T07:59:59.999Z', '2026-11-24'],
    ['midnight', '2026-11-25T08:00:00Z', '2026-11-25'],
  ])('%s', (_label, instant, day) => {
    expect(dayOf(new Date(instant), coast)).toBe(day);
  });

  test('the same instant is three days in three zones', () => {
    const instant = new Date('2026-11-25T10:30:00Z');
    const zones = ['Pacific/Pago_Pago', 'America/St_Johns', 'Pacific/Kiritimati'];
    expect(zones.map((zone) => dayOf(instant, zone))).toEqual([
      '2026-11-24',
      '2026-11-25',
      '2026-11-26',
    ]);
  });
});

describe('the instant of a time of day', () => {
  test.each<[string, Day, string, string]>([
    ['in winter', '2026-11-25', '15:30', '2026-11-25T23:30:00.000Z'],
    ['in summer', '2026-07-01', '09:00', '2026-07-01T16:00:00.000Z'],
    [
      'a time the clocks skip is taken after the gap',
      '2026-03-08',
      '02:30',
      '2026-03-08T10:30:00.000Z',
    ],
    [
      'a time shown twice is the first of the two',
      '2026-11-01',
      '01:30',
      '2026-11-01T08:30:00.000Z',
    ],
  ])('%s', (_label, day, time, instant) => {
    expect(instantOf(day, time, coast).toISOString()).toBe(instant);
  });

  test.each<[string, Day, string, string]>([
    ['Europe/London', '2026-10-25', '01:30', '2026-10-25T00:30:00.000Z'],
    ['Europe/London', '2026-10-25', '02:00', '2026-10-25T02:00:00.000Z'],
    ['Australia/Sydney', '2026-04-05', '02:30', '2026-04-04T15:30:00.000Z'],
    ['Australia/Sydney', '2026-04-05', '03:00', '2026-04-04T17:00:00.000Z'],
    ['Australia/Lord_Howe', '2026-04-05', '01:45', '2026-04-04T14:45:00.000Z'],
  ])('east of Greenwich as well: %s %s %s', (zone, day, time, instant) => {
    expect(instantOf(day, time, zone).toISOString()).toBe(instant);
  });

  test.each<[string, Day, string, string]>([
    ['Beirut skips midnight in spring', '2026-03-29', 'Asia/Beirut', '2026-03-28T22:00:00.000Z'],
    ['Havana has midnight twice', '2026-11-01', 'America/Havana', '2026-11-01T04:00:00.000Z'],
    ['three quarters of an hour', '2026-11-25', 'Pacific/Chatham', '2026-11-24T10:15:00.000Z'],
    ['half an hour', '2026-11-25', 'America/St_Johns', '2026-11-25T03:30:00.000Z'],
  ])('where a day begins: %s', (_label, day, zone, instant) => {
    expect(dayStartAt(day, zone).toISOString()).toBe(instant);
    expect(dayOf(dayStartAt(day, zone), zone)).toBe(day);
  });

  test.each(['24:00', '9:05', '09:60', '', 'noon'])('%j is no time of day', (time) => {
    expect(() => instantOf('2026-11-25', time, coast)).toThrow(/time of day/);
  });

  test('the month in which the clocks change is an hour longer', () => {
    const { fromAt, untilAt } = monthInstants('2026-11', coast);
    expect(fromAt.toISOString()).toBe('2026-11-01T07:00:00.000Z');
    expect((untilAt.getTime() - fromAt.getTime()) / 3_600_000).toBe(30 * 24 + 1);
  });
});

describe('instants as they are read', () => {
  test.each([
    ['2026-11-25T23:05:00Z', '25 Nov 2026, 3:05 pm'],
    ['2026-11-25T08:00:00Z', '25 Nov 2026, 12:00 am'],
  ])('%s is %s on the coast', (instant, written) => {
    expect(formatInstant(new Date(instant), coast)).toBe(written);
  });
});

describe('names of time zones', () => {
  test.each([
    ['America/Los_Angeles', true],
    ['Pacific/Chatham', true],
    ['UTC', true],
    ['America/Nowhere', false],
    ['+08:00', false],
    ['', false],
  ])('%j: %s', (name, known) => {
    expect(isZone(name)).toBe(known);
  });
});
