import { describe, expect, test } from 'vitest';
import { dayOf, formatInstant, type Day } from '@/lib/dates/rules';
import type { Busy } from '@/lib/installation/rules/crew/busy';
import {
  canStillBe,
  freeSlots,
  tickedFirst,
  type SlotFacts,
  type StillFacts,
} from '@/lib/installation/rules/offers/slots';
import { spanAt } from '../diary/a-span';

const zone = 'America/Los_Angeles';
const now = new Date('2026-05-04T17:00:00Z');
const friday: Day = '2026-05-08';
const osip: Busy = { staffId: 'o', name: 'Osip Lund', workDays: [], absences: [], busy: [] };
const ruth: Busy = { ...osip, staffId: 'r', name: 'Ruth Callow' };
const free: SlotFacts = {
  ...{ zone, now, crew: [osip], ways: new Map(), closed: [], ready: null, curesAt: null },
  place: { address: '4 Ropewalk Lane', travelMinutes: 0 },
};
const ferry = { kind: 'delivery', address: '9 Ferry Steps', travelMinutes: 20 } as const;

/** The times that are free on a Friday, for three hours. */
function onFriday(change: Partial<SlotFacts>, minutes = 180): string[] {
  const slots = freeSlots({ ...free, ...change }, { fromOn: friday, untilOn: friday, minutes });
  return slots.map(({ startsAt }) => formatInstant(startsAt, zone).split(', ')[1] ?? '');
}

describe('free times of a day', () => {
  test('are the first of the morning and the first from noon on', () => {
    expect(onFriday({})).toEqual(['9:00 am', '12:00 pm']);
  });

  test('leave room for the way there and back', () => {
    const place = { address: '4 Ropewalk Lane', travelMinutes: 40 };
    expect(onFriday({ place })).toEqual(['10:00 am', '1:00 pm']);
    expect(onFriday({ place: { ...place, travelMinutes: 150 } })).toEqual(['11:30 am']);
    expect(onFriday({ place: { ...place, travelMinutes: 151 } })).toEqual([]);
  });

  test('are free for everyone who goes along', () => {
    const busy = [{ ...ferry, address: '4 ropewalk lane', ...spanAt(friday, '09:00', '10:10') }];
    expect(onFriday({ crew: [osip, { ...ruth, busy }] })).toEqual(['10:30 am', '1:30 pm']);
    const afternoon = [{ weekday: 5, fromMinute: 780, toMinute: 1_020 }];
    expect(onFriday({ crew: [osip, { ...ruth, workDays: afternoon }] })).toEqual(['1:00 pm']);
    const absences = [{ fromOn: friday, toOn: friday, why: '' }];
    expect(onFriday({ crew: [osip, { ...ruth, absences }] })).toEqual([]);
  });

  test('leave time from and to what stands around them', () => {
    const busy = [{ ...ferry, ...spanAt(friday, '09:00', '10:00') }];
    expect(onFriday({ crew: [{ ...osip, busy }] })).toEqual(['10:30 am', '1:30 pm']);
    expect(onFriday({ crew: [{ ...osip, busy }] }, 90)).toEqual(['10:30 am', '12:00 pm']);
  });

  test.each<[string, Partial<SlotFacts>, string[]]>([
    ['closed', { closed: [{ fromOn: friday, toOn: friday, why: '' }] }, []],
    ['not ready before the next day', { ready: { readyOn: '2026-05-09', inHundred: 80 } }, []],
    [
      'ready on that very day',
      { ready: { readyOn: friday, inHundred: 80 } },
      ['9:00 am', '12:00 pm'],
    ],
    ['nobody can say when it is ready', { ready: { readyOn: null, inHundred: 80 } }, []],
    ['cured at eleven', { curesAt: new Date('2026-05-08T18:00:00Z') }, ['11:00 am', '1:30 pm']],
    ['half of it gone by', { now: new Date('2026-05-08T18:10:00Z') }, ['11:30 am', '2:00 pm']],
  ])('when it is %s', (_name, change, times) => {
    const slots = freeSlots(
      { ...free, ...change },
      { fromOn: friday, untilOn: friday, minutes: 150 },
    );
    const told = slots.map(({ startsAt }) => formatInstant(startsAt, zone).split(', ')[1]);
    expect(told).toEqual(times);
  });

  test('begin on the half hour, however long the one before takes', () => {
    expect(onFriday({}, 195)).toEqual(['9:00 am', '12:30 pm']);
  });

  test('are none on a Sunday, none in the skipped hour, and none for twelve hours', () => {
    const sunday = { fromOn: '2026-05-10', untilOn: '2026-05-10', minutes: 60 } as const;
    expect(freeSlots(free, sunday)).toEqual([]);
    expect(onFriday({}, 720)).toEqual([]);
    const nights = [{ weekday: 0, fromMinute: 60, toMinute: 240 }];
    const early = { ...free, crew: [{ ...osip, workDays: nights }] };
    const march = { fromOn: '2026-03-08', untilOn: '2026-03-08', minutes: 60 } as const;
    // It is a Sunday besides: all are closed then, whatever somebody's own hours say.
    expect(freeSlots({ ...early, now: new Date('2026-01-01') }, march)).toEqual([]);
  });

  test('are looked for in three months at most', () => {
    const slots = freeSlots(free, { fromOn: friday, untilOn: '2036-05-08', minutes: 60 });
    expect(dayOf(slots.at(-1)?.startsAt ?? now, zone)).toBe('2026-08-07');
    expect(freeSlots(free, { fromOn: friday, untilOn: '2026-05-07', minutes: 60 })).toEqual([]);
  });
});

test('one of each day is ticked before a second of any', () => {
  const slots = freeSlots(free, { fromOn: friday, untilOn: '2026-05-12', minutes: 180 });
  const ticked = tickedFirst(slots, 6, zone);
  expect(ticked.map(({ startsAt }) => dayOf(startsAt, zone))).toEqual([
    ...[friday, friday, '2026-05-09', '2026-05-09', '2026-05-11', '2026-05-12'],
  ]);
  expect(tickedFirst(slots, 2, zone)).toHaveLength(2);
  expect(tickedFirst([], 6, zone)).toEqual([]);
});

describe('an offered day', () => {
  const morning = spanAt(friday, '09:00', '12:00');
  const place = { address: '4 Ropewalk Lane', travelMinutes: 0 };
  const offer: StillFacts = { zone, place, crew: [osip, ruth], ways: new Map(), hangsOn: null };
  const known = { isWallKnown: true, curesAt: morning.startsAt };
  test.each<[string, Partial<StillFacts>, boolean]>([
    ['everyone is free', {}, true],
    [
      'one has something else',
      { crew: [osip, { ...ruth, busy: [{ ...ferry, ...morning }] }] },
      false,
    ],
    [
      'one comes from far',
      { crew: [{ ...osip, busy: [{ ...ferry, ...spanAt(friday, '08:00', '08:45') }] }] },
      false,
    ],
    [
      'one is away',
      { crew: [{ ...osip, absences: [{ fromOn: friday, toOn: friday, why: '' }] }] },
      false,
    ],
    ['the wall is known and all is dry', { hangsOn: known }, true],
    ['nobody knows the wall', { hangsOn: { ...known, isWallKnown: false } }, false],
    ['it cures', { hangsOn: { ...known, curesAt: new Date('2026-05-08T16:00:01Z') } }, false],
  ])('can it be when %s', (_name, change, can) => {
    expect(canStillBe({ ...offer, ...change }, morning, now)).toBe(can);
  });

  test('cannot be once it has begun; hours and closed days are not asked again', () => {
    expect(canStillBe(offer, morning, morning.startsAt)).toBe(false);
    expect(canStillBe(offer, spanAt('2026-05-10', '05:00', '06:00'), now)).toBe(true);
  });
});
