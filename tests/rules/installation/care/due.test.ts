import { describe, expect, test } from 'vitest';
import { careRefusalMessage } from '@/lib/installation/rules/care/refusals';
import {
  afterCareAsks,
  afterCareDue,
  afterCareKinds,
  afterCareWords,
  type JustHung,
} from '@/lib/installation/rules/care/due';

const hung: JustHung = {
  ...{ kind: 'hanging', handedOn: '2026-05-04', isOutdoors: false, freezes: false },
  ...{ weightG: 10_000, fixingsLookMonths: 60 },
};
const due = (change: Partial<JustHung> = {}) =>
  Object.fromEntries(afterCareDue({ ...hung, ...change }).map(({ kind, dueOn }) => [kind, dueOn]));

describe('a piece that was handed over', () => {
  test('is looked after in two days, in thirty, and in a year', () => {
    expect(due()).toEqual({
      two_days: '2026-05-06',
      thirty_days: '2026-06-03',
      a_year: '2027-05-04',
    });
  });

  test.each([
    ['2026-09-30', '2026-10-01'],
    ['2026-10-01', '2027-10-01'],
    ['2026-12-24', '2027-10-01'],
  ] as const)('outdoors on %s is seen before the frost on %s', (handedOn, frostOn) => {
    const place = { handedOn, isOutdoors: true, freezes: true };
    expect(due(place)['before_frost']).toBe(frostOn);
    expect(due({ ...place, freezes: false })['before_frost']).toBeUndefined();
    expect(due({ ...place, isOutdoors: false })['before_frost']).toBeUndefined();
  });

  test('of 50 lb and more has its fixings looked at, where it was hung', () => {
    expect(due({ weightG: 22_680 })['fixings']).toBe('2031-05-04');
    expect(due({ weightG: 22_679 })['fixings']).toBeUndefined();
    expect(due({ weightG: null })['fixings']).toBeUndefined();
    expect(due({ weightG: 90_000, kind: 'delivery' })['fixings']).toBeUndefined();
  });

  test.each([
    ['2028-02-29', 12, '2029-02-28'],
    ['2026-08-31', 1, '2026-09-30'],
    ['2026-11-30', 3, '2027-02-28'],
    ['2026-12-31', 600, '2076-12-31'],
  ] as const)('%s and %i months is %s', (handedOn, fixingsLookMonths, on) => {
    expect(due({ handedOn, fixingsLookMonths, weightG: 50_000 })['fixings']).toBe(on);
  });
});

test('every look has a name and says what is asked', () => {
  for (const kind of afterCareKinds) {
    expect(afterCareWords[kind]).toMatch(/^A /);
    expect(afterCareAsks[kind].length).toBeGreaterThan(20);
  }
});

test('every refusal says when, or what helps', () => {
  const say = careRefusalMessage;
  expect(say({ code: 'looked_after_already', on: '2026-05-06' })).toContain('6 May 2026');
  expect(say({ code: 'before_hand_over', handedOn: '2026-05-04' })).toContain('4 May 2026');
  expect(say({ code: 'unknown_care' })).toContain('Open the page');
  expect(say({ code: 'unknown_visit' })).toContain('book one');
  expect(say({ code: 'not_handed_over_yet' })).toContain('not handed over');
  expect(say({ code: 'looks_are_set' })).toContain('already');
  expect(say({ code: 'ended_early', endedOn: '2026-05-04' })).toContain('ended');
  expect(say({ code: 'not_allowed', permission: 'installation.do' })).toContain('tick off');
});
