import { describe, expect, test } from 'vitest';
import {
  judgeLeachTest,
  leachLimits,
  leachRefusalMessage,
  leachWords,
  provenForFood,
  wareKindOf,
  type LeachReading,
  type LeachTest,
  type WareKind,
} from '@/lib/clay/rules/leach';
import type { Day } from '@/lib/dates/rules';

const today: Day = '2026-11-28';
const six = (reading: LeachReading): LeachReading[] => Array.from({ length: 6 }, () => reading);
const aTest = (over: Partial<LeachTest> = {}): LeachTest => ({
  ...{ laboratory: 'Fern Inlet Laboratory', testedOn: '2026-05-04', ware: 'cup_or_mug' },
  readings: six({ lead: '0.12', cadmium: '<0.02' }),
  ...over,
});
const beyond = (over: Partial<LeachTest>) => {
  const judged = judgeLeachTest(aTest(over), today);
  return judged.ok ? judged.value.beyond : judged.refusal.code;
};

describe('a leach test', () => {
  test('holds when no piece goes beyond its limit', () => {
    expect(judgeLeachTest(aTest(), today)).toEqual({
      ok: true,
      value: { holds: true, beyond: [] },
    });
  });

  test('one piece of six is enough to go beyond, where each has to hold', () => {
    const readings = [
      ...six({ lead: '0.1', cadmium: '0' }).slice(1),
      { lead: '0.51', cadmium: '0' },
    ];
    expect(beyond({ readings })).toEqual(['lead']);
  });

  test('flat ware is averaged: one high piece among low ones holds', () => {
    const low = six({ lead: '1.0', cadmium: '0.1' }).slice(1);
    const plate = { ware: 'flatware' } as const;
    expect(beyond({ ...plate, readings: [...low, { lead: '9', cadmium: '0.1' }] })).toEqual([]);
    expect(beyond({ ...plate, readings: [...low, { lead: '14', cadmium: '0.1' }] })).toEqual([
      'lead',
    ]);
  });

  test('an average is not rounded', () => {
    const plate = { ware: 'flatware' } as const;
    const readings = six({ lead: '3.0', cadmium: '0.5' });
    expect(beyond({ ...plate, readings })).toEqual([]);
    const over = [...readings.slice(1), { lead: '3.000001', cadmium: '0.5' }];
    expect(beyond({ ...plate, readings: over })).toEqual(['lead']);
  });

  test('none seen counts as what could have been seen', () => {
    expect(beyond({ readings: six({ lead: '<0.5', cadmium: '< 0.6' }) })).toEqual(['cadmium']);
  });

  test.each<[Partial<LeachTest>, string]>([
    [{ laboratory: ' ', testedOn: '2026-12-01' }, 'no_laboratory'],
    [{ testedOn: '2026-11-29', readings: [] }, 'tested_later_than_today'],
    [{ readings: [{ lead: 'none', cadmium: '' }] }, 'too_few_tested'],
    [{ readings: six({ lead: 'none', cadmium: '0' }) }, 'not_a_reading'],
    [{ readings: six({ lead: '0.1', cadmium: '-0.1' }) }, 'not_a_reading'],
    [{ readings: six({ lead: '0.1', cadmium: '>0.1' }) }, 'not_a_reading'],
  ])('refuses in this order: %j', (over, code) => {
    expect(beyond(over)).toBe(code);
    const judged = judgeLeachTest(aTest(over), today);
    expect(!judged.ok && leachRefusalMessage(judged.refusal)).toMatch(/^[A-Z].*\.$/);
  });
});

describe('what may be said of food', () => {
  const bad = { readings: six({ lead: '0.9', cadmium: '0' }) };

  test('nothing, before a test holds', () => {
    expect(provenForFood([], 'cup_or_mug', today)).toBe('not_proven');
    expect(provenForFood([aTest({ laboratory: '' })], 'cup_or_mug', today)).toBe('not_proven');
    const few = aTest({ readings: six({ lead: '0', cadmium: '0' }).slice(1) });
    expect(provenForFood([few], 'cup_or_mug', today)).toBe('not_proven');
  });

  test('that it is proven, once one does, and only for that ware', () => {
    expect(provenForFood([aTest()], 'cup_or_mug', today)).toBe('proven');
    expect(provenForFood([aTest()], 'pitcher', today)).toBe('not_proven');
  });

  test('the latest test decides, in whatever order they come', () => {
    const later = aTest({ ...bad, testedOn: '2026-09-01' });
    expect(provenForFood([aTest(), later], 'cup_or_mug', today)).toBe('decorative_only');
    expect(provenForFood([later, aTest()], 'cup_or_mug', today)).toBe('decorative_only');
    const since = aTest({ testedOn: '2026-10-01' });
    expect(provenForFood([since, later], 'cup_or_mug', today)).toBe('proven');
  });

  test('of two on one day the worse one decides', () => {
    expect(provenForFood([aTest(), aTest(bad)], 'cup_or_mug', today)).toBe('decorative_only');
    expect(provenForFood([aTest(bad), aTest()], 'cup_or_mug', today)).toBe('decorative_only');
  });

  test('it is told with who tested it, and when', () => {
    expect(leachWords(aTest(), { holds: true, beyond: [] })).toBe(
      'Tested by Fern Inlet Laboratory on 4 May 2026: within the limits for lead and cadmium.',
    );
    expect(leachWords(aTest(), { holds: false, beyond: ['lead', 'cadmium'] })).toBe(
      'Tested by Fern Inlet Laboratory on 4 May 2026: more lead and cadmium than is allowed. Not for food.',
    );
  });
});

test('ware is told apart by depth and by what it holds', () => {
  const rows: [number, number, WareKind][] = [
    [25_000, 2_000, 'flatware'],
    [25_001, 1_099, 'small_hollowware'],
    [25_001, 1_100, 'large_hollowware'],
  ];
  for (const [depth, holds, kind] of rows) expect(wareKindOf(depth, holds)).toBe(kind);
});

test('every kind of ware has a limit for both metals', () => {
  const kinds = Object.keys(leachLimits.lead);
  expect(kinds).toHaveLength(5);
  expect(Object.keys(leachLimits.cadmium)).toEqual(kinds);
});
