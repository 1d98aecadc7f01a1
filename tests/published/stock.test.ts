import { describe, expect, test } from 'vitest';
import { chanceAtMost, smallestCovering } from '@/lib/stock/rules/demand';
import { chanceOfGood, reorderPoint, startCount } from '@/lib/stock/rules/reorder';
import { valueStock } from '@/lib/stock/rules/value';

describe('OpenStax, Principles of Accounting, volume 1, section 10.3: perpetual inventory', () => {
  const movements = [
    { quantity: 150, unitCostCents: 2_100n },
    { quantity: -120, unitCostCents: null },
    { quantity: 225, unitCostCents: 2_700n },
    { quantity: -180, unitCostCents: null },
    { quantity: 210, unitCostCents: 3_300n },
  ];

  // Cost of goods sold 7,200, ending inventory 8,955.
  test('first in, first out', () => {
    expect(valueStock(movements).fifo).toEqual({
      costOfGoodsCents: 720_000n,
      endingCents: 895_500n,
      endingUnits: 285,
    });
  });

  // Printed in whole dollars: cost of goods sold 7,253, ending inventory 8,902.
  test('moving average, within the dollar that the book rounds to', () => {
    const { costOfGoodsCents, endingCents, endingUnits } = valueStock(movements).movingAverage;
    expect([costOfGoodsCents, endingCents, endingUnits]).toEqual([725_294n, 890_206n, 285]);
    expect(Math.abs(Number(costOfGoodsCents) / 100 - 7_253)).toBeLessThan(1);
    expect(Math.abs(Number(endingCents) / 100 - 8_902)).toBeLessThan(1);
  });
});

describe('OpenStax, Introductory Statistics 2e, section 4.6: Poisson', () => {
  test.each([
    [147, 160, 0.8666],
    [1.7292, 2, 0.7495],
    [5.5, 6, 0.686],
    [5.5, 8, 0.8944],
    [2.5, 3, 0.7576],
    [3, 4, 0.8153],
  ])('with mean %d, at most %d: %d', (mean, most, published) => {
    expect(chanceAtMost({ mean, size: null }, most)).toBeCloseTo(published, 4);
  });

  test('with mean 2.5, more than 5: 0.0420', () => {
    expect(1 - chanceAtMost({ mean: 2.5, size: null }, 5)).toBeCloseTo(0.042, 4);
  });
});

// The standard table of the cumulative Poisson distribution.
test.each([
  [2, 0.9, 4],
  [2, 0.95, 5],
  [3, 0.95, 6],
  [4, 0.95, 8],
  [5, 0.95, 9],
  [5, 0.99, 11],
  [10, 0.95, 15],
])('slow sellers: mean %d at %d is covered by %d', (mean, level, count) => {
  expect(smallestCovering({ mean, size: null }, level)).toBe(count);
  const fixedLead = { perDay: mean / 10, leadDays: 10, leadSdDays: 0 };
  expect(reorderPoint({ ...fixedLead, serviceLevel: level }).reorderPoint).toBe(count);
});

describe('OpenStax, Introductory Statistics 2e, section 4.3: binomial', () => {
  test.each([
    [20, 0.41, 12, 0.9738],
    [150, 0.09, 10, 0.1987],
    [150, 0.09, 25, 0.9991],
    [15, 0.281, 5, 0.7754],
    [100, 0.03, 4, 0.8179],
  ])('of %d with %d, at most %d: %d', (begun, goodShare, most, published) => {
    expect(1 - chanceOfGood({ begun, good: most + 1, goodShare })).toBeCloseTo(published, 4);
  });

  test('of 10 with 0.5, more than 6: 0.171875', () => {
    expect(chanceOfGood({ begun: 10, good: 7, goodShare: 0.5 })).toBeCloseTo(0.171875, 10);
  });
});

// Worked out from the binomial distribution by a published statistics library.
test.each([
  [10, 0.1, 0.95, 13, 0.9658],
  [20, 0.1, 0.95, 25, 0.9666],
  [24, 0.1, 0.95, 30, 0.9742],
  [50, 0.05, 0.95, 56, 0.9788],
  [100, 0.05, 0.95, 109, 0.9533],
  [100, 0.08, 0.95, 114, 0.9614],
  [100, 0.1, 0.9, 116, 0.9298],
  [100, 0.1, 0.95, 117, 0.9569],
  [100, 0.1, 0.99, 120, 0.9921],
  [200, 0.12, 0.95, 237, 0.9609],
  [1, 0.2, 0.95, 2, 0.96],
])('for %d good at a loss of %d and a certainty of %d, begin %d', (...row) => {
  const [good, loss, certainty, start, chance] = row;
  const worked = startCount({ good, stepLosses: [loss], certainty });
  expect(worked.start).toBe(start);
  expect(worked.chance).toBeCloseTo(chance, 4);
});
