import { createRequire } from 'node:module';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chanceShareAtMost, shareAt } from '@/lib/studio/rules/losses/beta';
import { learnLoss } from '@/lib/studio/rules/losses/learned';
import { chanceOfShort, howManyToStart, shareThrough } from '@/lib/studio/rules/losses/start';

// jStat 1.9.6, an open library of statistics of every kind; it rounds its binomials to ten places.
const { jStat } = createRequire(import.meta.url)('jstat') as {
  jStat: {
    binomial: { cdf(most: number, of: number, share: number): number };
    beta: {
      cdf(share: number, lost: number, kept: number): number;
      inv(chance: number, lost: number, kept: number): number;
      mean(lost: number, kept: number): number;
    };
  };
};

const percent = fc.integer({ min: 0, max: 400 }).map((tenths) => String(tenths / 10));
const steps = fc
  .array(percent, { minLength: 1, maxLength: 6 })
  .map((percents) => percents.map((each, at) => ({ step: `step ${at}`, percent: each })));

describe('beside a general-purpose statistics library: the binomial', () => {
  test('the chance of falling short is the same', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 150 }),
        fc.integer({ min: 0, max: 60 }),
        steps,
        (good, spare, lost) => {
          const share = shareThrough(lost);
          const short = chanceOfShort({ begun: good + spare, good, steps: lost });
          if (!share.ok || !short.ok) return;
          const theirs = jStat.binomial.cdf(good - 1, good + spare, share.value);
          expect(short.value).toBeCloseTo(theirs, 7);
        },
      ),
    );
  });

  test('the number to begin is the least that the library finds sure enough', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 80 }),
        steps,
        fc.constantFrom('50', '80', '90', '95', '99'),
        (good, lost, certaintyPercent) => {
          const share = shareThrough(lost);
          const worked = howManyToStart({ good, steps: lost, certaintyPercent });
          if (!share.ok || !worked.ok) return;
          const sure = (begun: number) => 1 - jStat.binomial.cdf(good - 1, begun, share.value);
          const asked = Number(certaintyPercent) / 100;
          expect(sure(worked.value.start)).toBeGreaterThan(asked - 1e-8);
          if (worked.value.start > good) {
            expect(sure(worked.value.start - 1)).toBeLessThan(asked + 1e-8);
          }
        },
      ),
      { numRuns: 60 },
    );
  });
});

// OpenStax, Introductory Statistics 2e, section 4.3: of 20 with 0.41, at most 12: 0.9738.
test('a published binomial: 20 begun at a loss of 59, fewer than 13 whole: 0.9738', () => {
  const short = chanceOfShort({ begun: 20, good: 13, steps: [{ step: 'all', percent: '59' }] });
  expect(short.ok && short.value).toBeCloseTo(0.9738, 4);
});

// Common practice at the bench: wanted over the product of the good shares, rounded up, plus one.
test('24 press-moulded tiles at 4, 4, 1.5 and 4.5 lost: the rule of thumb says 29', () => {
  const lost = ['4', '4', '1.5', '4.5'].map((each) => ({ step: 'a step', percent: each }));
  const share = shareThrough(lost);
  expect(share.ok && share.value).toBeCloseTo(0.867, 3);
  const byThumb = share.ok ? Math.ceil(24 / share.value) + 1 : 0;
  expect(byThumb).toBe(29);
  const short = chanceOfShort({ begun: byThumb, good: 24, steps: lost });
  expect(short.ok && short.value).toBeGreaterThan(0.1);
});

describe('beside the same library: the beta distribution', () => {
  const counts = fc.record({
    lost: fc.integer({ min: 1, max: 4_000 }).map((halves) => halves / 2),
    kept: fc.integer({ min: 1, max: 4_000 }).map((halves) => halves / 2),
  });

  test('how likely a share is at most so large', () => {
    fc.assert(
      fc.property(counts, fc.double({ min: 0, max: 1, noNaN: true }), (odds, share) => {
        const theirs = jStat.beta.cdf(share, odds.lost, odds.kept);
        expect(chanceShareAtMost(odds, share)).toBeCloseTo(theirs, 7);
      }),
    );
  });

  test('the ends of a span', () => {
    fc.assert(
      fc.property(counts, (odds) => {
        for (const chance of [0.025, 0.975]) {
          const theirs = jStat.beta.inv(chance, odds.lost, odds.kept);
          expect(shareAt(odds, chance)).toBeCloseTo(theirs, 6);
        }
      }),
      { numRuns: 60 },
    );
  });
});

// Gelman and others, Bayesian Data Analysis, section 2.4 (from memory): 437 of 980 births, every
// share as likely before; after it mean 0.446, and 95 in 100 between 0.415 and 0.477.
test('a published posterior: 437 of 980', () => {
  const odds = { lost: 438, kept: 544 };
  expect(odds.lost / (odds.lost + odds.kept)).toBeCloseTo(0.446, 3);
  expect(shareAt(odds, 0.025)).toBeCloseTo(0.415, 3);
  expect(shareAt(odds, 0.975)).toBeCloseTo(0.477, 3);
  const evenBefore = learnLoss({ lost: 437, of: 980 }, { percent: '50', weighsPieces: 2 });
  expect(evenBefore).toMatchObject({ ok: true, value: { lowShare: shareAt(odds, 0.025) } });
});
