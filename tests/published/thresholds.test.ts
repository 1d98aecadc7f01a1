import { describe, expect, test } from 'vitest';
import { countedSpans, thresholdStanding, type Threshold } from '@/lib/tax/rules/threshold';

const kept = (cents: bigint, sales: number | null, needsBoth = false): Threshold => ({
  ...{ thresholdCents: cents, thresholdSales: sales, needsBoth },
});
const kindOf = (threshold: Threshold, cents: bigint, sales: number) => {
  const spans = countedSpans('this_calendar_year', '2025-12-31');
  const counted = spans.map((span) => ({ ...span, sent: { cents, sales } }));
  return thresholdStanding(threshold, counted).kind;
};

// Lists of economic nexus by state: suttax.avior.tax, as of 31 December 2025, and for New York and
// Texas statetaxtools.com. They are here for their shapes; the figures that count are the ones that
// the owner looks up and keeps.
describe('the shapes of published thresholds', () => {
  test.each([
    ['Alabama, 250,000', kept(25_000_000n, null), 25_000_000n, 1, 'reached'],
    ['Alabama, many small sales', kept(25_000_000n, null), 1_000_000n, 900, 'below'],
    ['Georgia, 100,000 or 200', kept(10_000_000n, 200), 10_000_000n, 3, 'reached'],
    ['Georgia, by number alone', kept(10_000_000n, 200), 400_000n, 200, 'reached'],
    ['Connecticut, 100,000 and 200', kept(10_000_000n, 200, true), 90_000_000n, 199, 'near'],
    ['Connecticut, both', kept(10_000_000n, 200, true), 10_000_000n, 200, 'reached'],
    ['New York, 500,000 and 100', kept(50_000_000n, 100, true), 50_000_000n, 79, 'below'],
    ['Texas, 500,000', kept(50_000_000n, null), 40_000_000n, 5, 'near'],
  ] as const)('%s', (...[, threshold, cents, sales, kind]) => {
    expect(kindOf(threshold, cents, sales)).toBe(kind);
  });
});
