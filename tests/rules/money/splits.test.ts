import { describe, expect, test } from 'vitest';
import {
  percentsAddUp,
  shareCents,
  splitByPercents,
  splitCents,
  splitInSteps,
} from '@/lib/money/rules';
import {
  alignDecimals,
  divideRounded,
  formatDecimal,
  parseDecimal,
  type Rounding,
} from '@/lib/money/rules/decimal';

describe('splitting an amount', () => {
  test.each<[string, bigint, bigint[], bigint[]]>([
    ['the first of equal rests gets the cent', 100n, [1n, 1n, 1n], [34n, 33n, 33n]],
    ['two left over go to the first two', 101n, [1n, 1n, 1n], [34n, 34n, 33n]],
    ['a weight of zero gets nothing', 100n, [0n, 1n, 2n], [0n, 33n, 67n]],
    ['the largest rest comes first, wherever it stands', 10n, [61n, 39n], [6n, 4n]],
    ['below zero it mirrors', -100n, [1n, 1n, 1n], [-34n, -33n, -33n]],
    ['nothing splits into nothing', 0n, [3n, 4n], [0n, 0n]],
    ['one takes all', 7n, [5n], [7n]],
    ['fewer cents than shares', 2n, [1n, 1n, 1n], [1n, 1n, 0n]],
  ])('%s', (_label, total, weights, parts) => {
    expect(splitCents(total, weights)).toEqual(parts);
  });

  test.each<[string, bigint[]]>([
    ['no weights', []],
    ['all weights zero', [0n, 0n]],
    ['a weight below zero', [2n, -1n]],
  ])('%s is a broken promise', (_label, weights) => {
    expect(() => splitCents(100n, weights)).toThrow(/weights of zero or more/);
  });

  test('the steps show what was cut off and given out', () => {
    expect(splitInSteps(100n, [1n, 1n, 1n])).toEqual({
      cutDown: [33n, 33n, 33n],
      missing: 1n,
      parts: [34n, 33n, 33n],
    });
  });
});

describe('instalments by percentages', () => {
  test.each<[string, bigint, string[], bigint[]]>([
    ['half, a quarter, a quarter', 123_457n, ['50', '25', '25'], [61_729n, 30_864n, 30_864n]],
    ['thirds written with decimals', 10_000n, ['33.3', '33.3', '33.4'], [3_330n, 3_330n, 3_340n]],
    ['all at once', 999n, ['100'], [999n]],
    ['nothing now', 999n, ['0', '100.00'], [0n, 999n]],
  ])('%s', (_label, cents, percents, parts) => {
    expect(splitByPercents(cents, percents)).toEqual(parts);
  });

  test.each<[string, string[]]>([
    ['short of 100', ['50', '49.99']],
    ['over 100', ['50', '50.01']],
    ['below zero', ['150', '-50']],
    ['just below zero', ['101', '-1']],
    ['not decimals', ['50', 'half']],
    ['none', []],
  ])('percentages %s do not share out a price', (_label, percents) => {
    expect(percentsAddUp(percents)).toBe(false);
    expect(() => splitByPercents(100n, percents)).toThrow(/add up to 100/);
  });
});

describe('a percentage of an amount', () => {
  test.each<[string, [bigint, string, Rounding], bigint]>([
    ['half a cent goes up', [10_001n, '50', 'half-up'], 5_001n],
    ['up is never short', [10_001n, '0.01', 'up'], 2n],
    ['down gives nothing away', [10_001n, '50', 'down'], 5_000n],
    ['exact stays exact', [10_000n, '12.5', 'up'], 1_250n],
    ['below zero it mirrors', [-10_001n, '50', 'half-up'], -5_001n],
    ['below zero up is away from zero', [-1n, '1', 'up'], -1n],
    ['above a hundred', [200n, '150', 'half-up'], 300n],
  ])('%s', (_label, asked, share) => {
    expect(shareCents(...asked)).toBe(share);
  });

  test('a percentage that is no decimal is a broken promise', () => {
    expect(() => shareCents(1n, 'a tenth', 'up')).toThrow(/decimal/);
  });
});

describe('decimals held exactly', () => {
  test.each([
    ['8.375', '8.375'],
    ['008.50', '8.5'],
    ['-0.10', '-0.1'],
    ['0.000', '0'],
    ['7', '7'],
  ])('%s is written %s', (text, written) => {
    const decimal = parseDecimal(text);
    expect(decimal && formatDecimal(decimal)).toBe(written);
  });

  test.each(['', '.5', '5.', '1e3', '1,000', '+1', 'NaN', '1.2.3', '1234567890123456'])(
    '%j is no decimal',
    (text) => {
      expect(parseDecimal(text)).toBeNull();
    },
  );

  test('several are brought to the widest scale', () => {
    const aligned = alignDecimals([
      { units: 5n, scale: 1 },
      { units: 1n, scale: 0 },
      { units: 25n, scale: 2 },
    ]);
    expect(aligned).toEqual({ units: [50n, 100n, 25n], scale: 2 });
  });

  test.each([
    [5n, 10n, 'half-up', 1n],
    [4n, 10n, 'half-up', 0n],
    [-5n, 10n, 'half-up', -1n],
    [1n, 10n, 'up', 1n],
    [10n, 10n, 'up', 1n],
    [19n, 10n, 'down', 1n],
    [-19n, 10n, 'down', -1n],
  ] as const)('%d over %d, %s, is %d', (over, under, rounding, whole) => {
    expect(divideRounded(over, under, rounding)).toBe(whole);
  });
});
