import { fc, test as propTest } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { chanceShareAtMost, shareAt } from '@/lib/studio/rules/losses/beta';

const shares = [0.001, 0.02, 0.1, 0.25, 0.5, 0.75, 0.9, 0.999];

// Where a count is 1 or both are small and whole, the chance is a short polynomial.
describe('where it can be written out', () => {
  test.each(shares)('at most %d', (x) => {
    expect(chanceShareAtMost({ lost: 1, kept: 1 }, x)).toBeCloseTo(x, 12);
    expect(chanceShareAtMost({ lost: 3, kept: 1 }, x)).toBeCloseTo(x ** 3, 12);
    expect(chanceShareAtMost({ lost: 1, kept: 7 }, x)).toBeCloseTo(1 - (1 - x) ** 7, 12);
    const twoThree = 6 * x ** 2 - 8 * x ** 3 + 3 * x ** 4;
    expect(chanceShareAtMost({ lost: 2, kept: 3 }, x)).toBeCloseTo(twoThree, 12);
    const halves = (2 / Math.PI) * Math.asin(Math.sqrt(x));
    expect(chanceShareAtMost({ lost: 0.5, kept: 0.5 }, x)).toBeCloseTo(halves, 12);
  });
});

const counts = fc.record({
  lost: fc.double({ min: 0.05, max: 3_000, noNaN: true }),
  kept: fc.double({ min: 0.05, max: 3_000, noNaN: true }),
});

propTest.prop([counts, fc.double({ min: 0.001, max: 0.999, noNaN: true })])(
  'lost and kept are each other’s mirror',
  (odds, x) => {
    const mirrored = chanceShareAtMost({ lost: odds.kept, kept: odds.lost }, 1 - x);
    expect(chanceShareAtMost(odds, x) + mirrored).toBeCloseTo(1, 9);
  },
);

propTest.prop([counts, fc.double({ min: 0.01, max: 0.99, noNaN: true })])(
  'the share at a chance has that chance',
  ({ lost, kept }, chance) => {
    const odds = { lost: lost + 0.5, kept: kept + 0.5 };
    expect(chanceShareAtMost(odds, shareAt(odds, chance))).toBeCloseTo(chance, 7);
  },
);

test('nothing is below none, and all is at most all', () => {
  expect(chanceShareAtMost({ lost: 2, kept: 5 }, 0)).toBe(0);
  expect(chanceShareAtMost({ lost: 2, kept: 5 }, 1)).toBe(1);
});

test('counts of nothing and certain chances are bugs, not answers', () => {
  expect(() => chanceShareAtMost({ lost: 0, kept: 1 }, 0.5)).toThrow('above zero');
  expect(() => shareAt({ lost: 1, kept: 1 }, 1)).toThrow('between never and always');
});
