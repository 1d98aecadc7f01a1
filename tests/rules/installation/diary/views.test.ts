import { describe, expect, test } from 'vitest';
import { wayKey } from '@/lib/installation/rules/crew/ways';
import { opensAbout, othersOn, type OtherLine } from '@/lib/installation/rules/diary/others';
import { stepsOfDay } from '@/lib/installation/rules/diary/person-day';
import { weekOf, weekWords } from '@/lib/installation/rules/diary/weeks';
import { spanAt } from './a-span';

const at = (from: string, to: string, address: string, travelMinutes: number) => ({
  ...spanAt('2026-05-08', from, to),
  ...{ address, travelMinutes },
});
const lane = at('09:00', '10:00', '4 Ropewalk Lane', 40);
const ferry = at('11:00', '12:00', '9 Ferry Steps', 25);

describe('the day of somebody', () => {
  test('has its ways: from the gallery, between, and back', () => {
    expect(stepsOfDay([lane, ferry], new Map())).toEqual([
      { kind: 'leaves', at: new Date('2026-05-08T15:20:00Z') },
      { kind: 'booked', appointment: lane },
      { kind: 'way', minutes: 65, isShort: true },
      { kind: 'booked', appointment: ferry },
      { kind: 'back', at: new Date('2026-05-08T19:25:00Z') },
    ]);
  });

  test('has the way that is kept, and none at the same place or at the gallery', () => {
    const ways = new Map([[wayKey(lane.address, ferry.address), 60]]);
    expect(stepsOfDay([lane, ferry], ways)[2]).toEqual({
      ...{ kind: 'way', minutes: 60, isShort: false },
    });
    const here = [at('09:00', '10:00', 'The gallery', 0), at('10:00', '11:00', 'the gallery', 0)];
    expect(stepsOfDay(here, new Map()).map(({ kind }) => kind)).toEqual(['booked', 'booked']);
    expect(stepsOfDay([], new Map())).toEqual([]);
  });
});

test('what stands over several days stands on each of them, the first and the last too', () => {
  const fair: OtherLine = {
    ...{ kind: 'fair', key: 'a', words: 'Harbour fair', href: '/fairs/1' },
    ...{ fromOn: '2026-05-08', untilOn: '2026-05-10' },
  };
  const days = ['2026-05-07', '2026-05-08', '2026-05-10', '2026-05-11'] as const;
  expect(days.map((day) => othersOn([fair], day).length)).toEqual([0, 1, 1, 0]);
});

test('a kiln is opened about two days after it was lit', () => {
  expect(opensAbout('2026-02-27')).toBe('2026-03-01');
});

test.each([
  ['2026-05-04', '2026-05-04'],
  ['2026-05-10', '2026-05-04'],
  ['2026-11-01', '2026-10-26'],
] as const)('the week of %s begins on %s, and has seven days', (day, mondayOn) => {
  const week = weekOf(day);
  expect(week[0]).toBe(mondayOn);
  expect(week).toHaveLength(7);
  expect(week).toContain(day);
});

test.each([
  ['2026-12-10', '7 to 13 December 2026'],
  ['2026-12-02', '30 November to 6 December 2026'],
  ['2027-01-01', '28 December 2026 to 3 January 2027'],
] as const)('the week of %s is %s', (day, words) => {
  expect(weekWords(day)).toBe(words);
});
