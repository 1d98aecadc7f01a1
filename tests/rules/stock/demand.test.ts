import { describe, expect, test } from 'vitest';
import {
  chanceAtMost,
  daysOnOffer,
  demandInLead,
  kindRate,
  sellingRate,
  smallestCovering,
} from '@/lib/stock/rules/demand';
import { expectedLost } from '@/lib/stock/rules/lost-sales';
import { chanceOfGood, reorderPoint, startCount } from '@/lib/stock/rules/reorder';

describe('what is asked for while a lot is made', () => {
  test('a lead that never varies leaves plain Poisson', () => {
    const odds = demandInLead({ perDay: 0.1, leadDays: 30, leadSdDays: 0 });
    expect(odds.size).toBeNull();
    expect(odds.mean).toBeCloseTo(3, 12);
  });

  test('a lead that varies keeps the mean and widens the rest', () => {
    const odds = demandInLead({ perDay: 0.2, leadDays: 30, leadSdDays: 15 });
    expect(odds).toEqual({ mean: 6, size: 4 });
    let mean = 0;
    let square = 0;
    for (let count = 1; count < 400; count += 1) {
      const chance = chanceAtMost(odds, count) - chanceAtMost(odds, count - 1);
      mean += chance * count;
      square += chance * count * count;
    }
    expect(mean).toBeCloseTo(6, 6);
    expect(square - mean ** 2).toBeCloseTo(6 + 9, 6);
  });

  test('a lead that hardly varies comes out as Poisson', () => {
    const odds = demandInLead({ perDay: 0.2, leadDays: 30, leadSdDays: 0.0001 });
    expect(chanceAtMost(odds, 8)).toBeCloseTo(chanceAtMost({ mean: 6, size: null }, 8), 8);
  });

  test('the longer and the less sure the lead, the earlier one begins', () => {
    const pointAt = (leadDays: number, leadSdDays: number) =>
      reorderPoint({ perDay: 0.2, leadDays, leadSdDays, serviceLevel: 0.95 }).reorderPoint;
    expect([pointAt(0, 0), pointAt(30, 0), pointAt(30, 6), pointAt(30, 15)]).toEqual([
      0, 10, 11, 13,
    ]);
    expect(reorderPoint({ perDay: 0, leadDays: 30, leadSdDays: 6, serviceLevel: 0.99 })).toEqual({
      ...{ reorderPoint: 0, expectedDemand: 0, chance: 1 },
    });
  });

  test('many thousands are reckoned too', () => {
    expect(smallestCovering({ mean: 100_000, size: null }, 0.5)).toBe(100_000);
    expect(() => smallestCovering({ mean: 1, size: null }, 1)).toThrow('level');
  });
});

describe('days on offer', () => {
  const span = { fromOn: '2026-03-01', untilOn: '2026-03-11' } as const;

  test.each([
    ['always there', 2, [], 10],
    ['never there', 0, [], 0],
    ['comes on the fifth', 0, [{ on: '2026-03-05', change: 3, sold: 0 }], 6],
    ['the last is sold on the fifth', 1, [{ on: '2026-03-05', change: -1, sold: 1 }], 5],
    ['comes and is sold on the same day', 0, [{ on: '2026-03-05', change: 0, sold: 1 }], 1],
    [
      'gone for four days',
      1,
      [
        { on: '2026-03-03', change: -1, sold: 1 },
        { on: '2026-03-08', change: 2, sold: 0 },
      ],
      6,
    ],
    [
      'first and last day',
      0,
      [
        { on: '2026-03-01', change: 1, sold: 0 },
        { on: '2026-03-10', change: -1, sold: 1 },
      ],
      10,
    ],
  ] as const)('%s', (_label, opening, days, counted) => {
    expect(daysOnOffer({ opening, days, ...span })).toBe(counted);
  });
});

describe('how fast it sells', () => {
  test('a kind that was hardly seen is thought to sell one a month', () => {
    expect(kindRate({ sold: 0, daysOnOffer: 0 })).toBeCloseTo(1 / 30, 12);
    expect(kindRate({ sold: 8, daysOnOffer: 3 })).toBeLessThan(0.2);
    expect(kindRate({ sold: 400, daysOnOffer: 4_000 })).toBeCloseTo(0.1, 2);
  });

  test('nothing known of itself: as its kind', () => {
    const rate = sellingRate({ sold: 0, daysOnOffer: 0, kindPerDay: 0.1 });
    expect(rate.perDay).toBeCloseTo(0.1, 12);
    expect(rate.ownShare).toBe(0);
  });

  test('a year of its own outweighs the kind', () => {
    const rate = sellingRate({ sold: 36, daysOnOffer: 300, kindPerDay: 0.02 });
    expect(rate.perDay).toBeCloseTo((36 + 1.2) / 360, 12);
    expect(rate.ownShare).toBeCloseTo(300 / 360, 12);
    expect(rate.sdPerDay).toBeCloseTo(Math.sqrt(37.2) / 360, 12);
  });

  test('days on which there was none do not slow it down', () => {
    const half = sellingRate({ sold: 6, daysOnOffer: 30, kindPerDay: 0.1 });
    const whole = sellingRate({ sold: 6, daysOnOffer: 60, kindPerDay: 0.1 });
    expect(half.perDay).toBeGreaterThan(whole.perDay);
  });
});

describe('sales that would be lost', () => {
  const three = { mean: 3, size: null };

  test('with none free everyone goes home without', () => {
    expect(expectedLost(three, 0)).toBe(3);
    expect(expectedLost(three, -2)).toBe(3);
  });

  test('with one free, three less the chance that anyone comes', () => {
    expect(expectedLost(three, 1)).toBeCloseTo(3 - (1 - Math.exp(-3)), 12);
  });

  test('it never goes below nothing', () => {
    expect(expectedLost(three, 500)).toBeCloseTo(0, 6);
    expect(expectedLost({ mean: 0, size: null }, 4)).toBe(0);
  });
});

describe('how many to begin with', () => {
  test('nothing wanted, nothing begun', () => {
    const wanted = { good: 0, stepLosses: [0.1], certainty: 0.95 };
    expect(startCount(wanted)).toMatchObject({ start: 0, expectedGood: 0 });
  });

  test('nothing lost, nothing spare', () => {
    expect(startCount({ good: 12, stepLosses: [], certainty: 0.9999 }).start).toBe(12);
    expect(startCount({ good: 12, stepLosses: [0, 0], certainty: 0.9999 }).start).toBe(12);
  });

  test('losses of each step are multiplied, not added', () => {
    const twice = startCount({ good: 50, stepLosses: [0.1, 0.1], certainty: 0.9 });
    expect(twice.goodShare).toBeCloseTo(0.81, 12);
    expect(twice).toEqual(startCount({ good: 50, stepLosses: [1 - 0.9 * 0.9], certainty: 0.9 }));
  });

  test('one fewer would not be sure enough', () => {
    const { start, goodShare } = startCount({ good: 24, stepLosses: [0.133], certainty: 0.95 });
    expect(chanceOfGood({ begun: start, good: 24, goodShare })).toBeGreaterThanOrEqual(0.95);
    expect(chanceOfGood({ begun: start - 1, good: 24, goodShare })).toBeLessThan(0.95);
  });

  test('fewer begun than wanted are never enough', () => {
    expect(chanceOfGood({ begun: 2, good: 3, goodShare: 1 })).toBe(0);
    expect(chanceOfGood({ begun: 0, good: 0, goodShare: 0.5 })).toBe(1);
  });
});
