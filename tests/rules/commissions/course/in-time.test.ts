import { describe, expect, test } from 'vitest';
import { dayAt, inTime, timeScale } from '@/lib/commissions/rules/course/list/in-time';
import { addDays, monthOf, type Day } from '@/lib/dates/rules';
import {
  agreement,
  aJob,
  beforeClay,
  finished,
  someFacts,
} from '@/tests/rules/commissions/some-facts';

const today: Day = '2026-06-10';

function marksOf(facts: Parameters<typeof inTime>[0]) {
  return inTime(facts, today).marks.map(({ kind, on }) => `${kind} ${on}`);
}

describe('a commission in time', () => {
  test('that was just asked for has one mark and no spans', () => {
    expect(inTime(someFacts(), today)).toEqual({
      ...{ marks: [{ kind: 'asked', on: '2026-05-01' }], making: null, late: null },
    });
  });

  test('shows each yes by its day', () => {
    expect(marksOf(someFacts(beforeClay))).toEqual([
      'asked 2026-05-01',
      'agreed 2026-05-04',
      'sketch 2026-05-08',
      'colours 2026-05-12',
    ]);
  });

  test('is in the making to today, or to the day the last piece was finished', () => {
    const going = someFacts({ ...beforeClay, jobs: [aJob(2)] });
    expect(inTime(going, today).making).toEqual({
      ...{ fromOn: '2026-05-20', toOn: today, isDone: false },
    });
    const done = someFacts({ ...beforeClay, jobs: [aJob(finished, '2026-06-01')] });
    expect(inTime(done, today).making).toMatchObject({ toOn: '2026-06-01', isDone: true });
  });

  test('is late from the promised day to today', () => {
    const facts = someFacts({ agreement: { ...agreement, promisedOn: '2026-06-01' } });
    expect(inTime(facts, today).late).toEqual({ fromOn: '2026-06-01', toOn: today });
    expect(inTime(facts, '2026-06-01').late).toBeNull();
  });
});

describe('the days that are drawn', () => {
  test('go by whole months from the first mark to the last one', () => {
    const facts = someFacts({ agreement: { ...agreement, promisedOn: '2026-08-03' } });
    const scale = timeScale([inTime(facts, today)], today);
    expect(scale.fromOn).toBe('2026-05-01');
    expect(scale.days).toBe(31 + 30 + 31 + 31);
    expect(scale.months.map(({ on, at }) => [on, at])).toEqual([
      ['2026-05-01', 0],
      ['2026-06-01', 31],
      ['2026-07-01', 61],
      ['2026-08-01', 92],
    ]);
    expect(dayAt(scale, '2026-06-10')).toBe(40);
  });

  test('hold today when nothing is going on, and no more than years', () => {
    expect(timeScale([], today).months.map(({ on }) => on)).toEqual(['2026-06-01']);
    const old = inTime(someFacts({ askedOn: '2019-01-01' }), today);
    const scale = timeScale([old], today);
    expect(monthOf(scale.fromOn)).toBe(monthOf(addDays(today, -540)));
    expect(dayAt(scale, '2019-01-01')).toBe(0);
  });
});
