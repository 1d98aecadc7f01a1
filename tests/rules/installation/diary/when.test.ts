import { describe, expect, test } from 'vitest';
import { readTime, shownTwice, spanOf, twiceWords } from '@/lib/installation/rules';
import { diaryRefusalMessage } from '@/lib/installation/rules/diary/refusals';
import { spanAt } from './a-span';

// When clocks are set, by the laws of each place:
// - United States and Canada: second Sunday of March at 2:00, first Sunday of November at 2:00
//   (Energy Policy Act of 2005, sec. 110).
// - European Union and United Kingdom: last Sundays of March and October at 1:00 UTC
//   (Directive 2000/84/EC; Summer Time Order 2002).
// - New South Wales: first Sunday of October at 2:00, first Sunday of April at 3:00
//   (Standard Time Act 1987).
// - Lord Howe Island: half an hour, on the same days at 2:00.

describe('a time that the clocks skip', () => {
  test.each([
    ['America/Los_Angeles', '2026-03-08', '02:30', '02:00', '03:00'],
    ['America/Los_Angeles', '2026-03-08', '02:00', '02:00', '03:00'],
    ['America/Vancouver', '2025-03-09', '02:59', '02:00', '03:00'],
    ['Europe/London', '2026-03-29', '01:15', '01:00', '02:00'],
    ['Australia/Sydney', '2026-10-04', '02:45', '02:00', '03:00'],
    ['Australia/Lord_Howe', '2026-10-04', '02:15', '02:00', '02:30'],
  ] as const)('%s has no %s %s', (...[zone, on, time, skippedFrom, skippedUntil]) => {
    expect(readTime(on, time, zone)).toEqual({
      ok: false,
      refusal: { code: 'time_skipped', on, time, skippedFrom, skippedUntil },
    });
  });

  test.each([
    ['America/Los_Angeles', '2026-03-08', '01:59', '2026-03-08T09:59:00Z'],
    ['America/Los_Angeles', '2026-03-08', '03:00', '2026-03-08T10:00:00Z'],
    ['Europe/London', '2026-03-29', '02:00', '2026-03-29T01:00:00Z'],
    ['Australia/Sydney', '2026-10-04', '03:00', '2026-10-03T16:00:00Z'],
    ['Australia/Lord_Howe', '2026-10-04', '02:30', '2026-10-03T15:30:00Z'],
  ] as const)('%s has %s %s', (zone, on, time, instant) => {
    expect(readTime(on, time, zone)).toEqual({ ok: true, value: new Date(instant) });
  });

  test('is told with the times that there are', () => {
    const refused = spanOf(
      { day: '2026-03-08', from: '01:00', to: '02:30' },
      'America/Los_Angeles',
    );
    expect(refused.ok ? '' : diaryRefusalMessage(refused.refusal, 'America/Los_Angeles')).toBe(
      'There is no 2:30 am on Sunday 8 March: the clocks go from 2:00 am straight to 3:00 am. ' +
        'Choose a time before or after.',
    );
  });

  test('a skipped midnight is a time that there is not either', () => {
    // Chile sets its clocks forward at midnight, on the first Sunday from 2 September.
    expect(readTime('2026-09-06', '00:30', 'America/Santiago').ok).toBe(false);
    expect(readTime('2026-09-06', '01:00', 'America/Santiago').ok).toBe(true);
  });
});

describe('a time that the clocks show twice', () => {
  test.each([
    ['America/Los_Angeles', '2026-11-01', '01:30', '2026-11-01T08:30:00Z', 60],
    ['Europe/London', '2026-10-25', '01:00', '2026-10-25T00:00:00Z', 60],
    ['Australia/Sydney', '2026-04-05', '02:59', '2026-04-04T15:59:00Z', 60],
    ['Australia/Lord_Howe', '2026-04-05', '01:45', '2026-04-04T14:45:00Z', 30],
  ] as const)('%s: the first %s %s is taken', (...[zone, on, time, first, minutes]) => {
    const read = readTime(on, time, zone);
    expect(read).toEqual({ ok: true, value: new Date(first) });
    const second = new Date(new Date(first).getTime() + minutes * 60_000);
    expect(shownTwice(new Date(first), zone)).toBe('first');
    expect(shownTwice(second, zone)).toBe('second');
    expect(shownTwice(new Date(second.getTime() + minutes * 60_000), zone)).toBeNull();
  });

  test('is said on the page, and nothing is said on any other day', () => {
    const zone = 'America/Los_Angeles';
    expect(twiceWords(spanAt('2026-11-01', '01:30', '03:00'), zone)).toBe(
      'The clocks are set back that day: 1:30 am comes twice, and the first is meant.',
    );
    expect(twiceWords(spanAt('2026-11-01', '00:30', '03:00'), zone)).toBeNull();
    expect(twiceWords(spanAt('2026-05-08', '01:30', '03:00'), zone)).toBeNull();
  });
});

test.each([
  ['an ordinary morning', 'America/Los_Angeles', '2026-05-08', '09:00', '12:00', 180],
  ['over the skipped hour', 'America/Los_Angeles', '2026-03-08', '01:00', '04:00', 120],
  ['over the hour shown twice', 'America/Los_Angeles', '2026-11-01', '00:30', '03:00', 210],
  ['within the hour shown twice', 'America/Los_Angeles', '2026-11-01', '01:00', '01:45', 45],
  ['over the skipped hour', 'Europe/London', '2026-03-29', '00:30', '02:30', 60],
  ['over the half hour shown twice', 'Australia/Lord_Howe', '2026-04-05', '01:00', '03:00', 150],
  ['where no clock is set', 'America/Phoenix', '2026-03-08', '01:00', '04:00', 180],
] as const)('hours are what the clock says: %s, %s', (...[, zone, day, from, to, minutes]) => {
  const { startsAt, endsAt } = spanAt(day, from, to, zone);
  expect((endsAt.getTime() - startsAt.getTime()) / 60_000).toBe(minutes);
});
