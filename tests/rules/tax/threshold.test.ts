import { describe, expect, test } from 'vitest';
import {
  countedSpans,
  thresholdStanding,
  thresholdWindows,
  type Threshold,
} from '@/lib/tax/rules/threshold';

const threshold = (over: Partial<Threshold> = {}): Threshold => ({
  ...{ thresholdCents: 10_000_000n, thresholdSales: null, needsBoth: false },
  ...over,
});
const thisYear = countedSpans('this_calendar_year', '2026-11-25');
const counted = (cents: bigint, sales = 0) =>
  thisYear.map((span) => ({ ...span, sent: { cents, sales } }));
const kindOf = (kept: Threshold, cents: bigint, sales = 0) =>
  thresholdStanding(kept, counted(cents, sales)).kind;

describe('the days that are counted', () => {
  test.each([
    ['this_calendar_year', [['2026-01-01', '2027-01-01']]],
    [
      'this_or_last_calendar_year',
      [
        ['2026-01-01', '2027-01-01'],
        ['2025-01-01', '2026-01-01'],
      ],
    ],
    ['twelve_months', [['2025-11-26', '2026-11-26']]],
  ] as const)('%s', (window, days) => {
    const spans = countedSpans(window, '2026-11-25');
    expect(spans.map(({ fromOn, untilOn }) => [fromOn, untilOn])).toEqual(days);
  });

  test.each([
    ['2028-02-28', '2027-02-28', '2028-02-29'],
    ['2028-02-29', '2027-03-01', '2028-03-01'],
    ['2026-12-31', '2026-01-01', '2027-01-01'],
  ] as const)('twelve months that end on %s', (today, fromOn, untilOn) => {
    expect(countedSpans('twelve_months', today)).toMatchObject([{ fromOn, untilOn }]);
  });

  test.each(thresholdWindows)('today is counted in %s', (window) => {
    const [span] = countedSpans(window, '2026-12-31');
    expect(span && span.fromOn <= '2026-12-31' && '2026-12-31' < span.untilOn).toBe(true);
  });
});

describe('how near', () => {
  test.each([
    ['a cent below eighty in a hundred', 7_999_999n, 'below'],
    ['eighty in a hundred', 8_000_000n, 'near'],
    ['a cent below', 9_999_999n, 'near'],
    ['to the cent', 10_000_000n, 'reached'],
    ['more came back than was sent', -500n, 'below'],
  ] as const)('%s', (_label, cents, kind) => {
    expect(kindOf(threshold(), cents)).toBe(kind);
  });

  test('the number of sales alone is enough where one is enough', () => {
    const either = threshold({ thresholdSales: 200 });
    expect(kindOf(either, 5_000n, 200)).toBe('reached');
    expect(kindOf(either, 5_000n, 160)).toBe('near');
    expect(kindOf(threshold({ thresholdCents: null, thresholdSales: 200 }), 0n, 199)).toBe('near');
  });

  // New York asks for both: more than $500,000 and more than 100 sales; figures from memory.
  test('both are needed where both are needed', () => {
    const both = threshold({ thresholdCents: 50_000_000n, thresholdSales: 100, needsBoth: true });
    expect(kindOf(both, 60_000_000n, 40)).toBe('below');
    expect(kindOf(both, 60_000_000n, 80)).toBe('near');
    expect(kindOf(both, 60_000_000n, 100)).toBe('reached');
    expect(kindOf(both, 100n, 900)).toBe('below');
  });

  test('last year counts when this year is further behind', () => {
    const spans = countedSpans('this_or_last_calendar_year', '2026-01-02');
    const sent = [
      { cents: 1_000n, sales: 1 },
      { cents: 9_000_000n, sales: 30 },
    ];
    const standing = thresholdStanding(
      threshold(),
      spans.map((span, at) => ({ ...span, sent: sent[at] ?? { cents: 0n, sales: 0 } })),
    );
    expect(standing).toEqual({
      kind: 'near',
      words: '$90,000.00 of $100,000.00 and 30 sales last calendar year.',
    });
  });
});

describe('in words', () => {
  test.each([
    [threshold(), '$38,400.00 of $100,000.00 and 41 sales this calendar year.'],
    [
      threshold({ thresholdSales: 200 }),
      '$38,400.00 of $100,000.00 and 41 of 200 sales this calendar year.',
    ],
    [
      threshold({ thresholdCents: null }),
      '$38,400.00 and 41 sales this calendar year; no threshold is kept.',
    ],
  ])('%#', (kept, words) => {
    expect(thresholdStanding(kept, counted(3_840_000n, 41)).words).toBe(words);
  });

  test('nothing is nothing', () => {
    const { words } = thresholdStanding(threshold({ thresholdCents: null }), counted(0n));
    expect(words).toBe('nothing this calendar year; no threshold is kept.');
  });

  test('one sale is one sale', () => {
    expect(thresholdStanding(threshold(), counted(100n, 1)).words).toMatch(/ and 1 sale this /);
  });
});
