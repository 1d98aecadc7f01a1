import { describe, expect, test } from 'vitest';
import { currencySigns, splitByPercents, splitCents } from '@/lib/money/rules';

// OpenStax, Contemporary Mathematics, sections 11.4 and 11.5: Hamilton's method.
describe('apportionment as OpenStax prints it', () => {
  test.each<[string, bigint, bigint[], bigint[]]>([
    ['ten seats', 10n, [6n, 6n, 2n], [4n, 4n, 2n]],
    ['eleven seats: the smallest loses one', 11n, [6n, 6n, 2n], [5n, 5n, 1n]],
    ['three states', 38n, [894_000n, 696_000n, 215_000n], [19n, 15n, 4n]],
  ])('%s', (_label, total, weights, parts) => {
    expect(splitCents(total, weights)).toEqual(parts);
  });
});

// Worked from the same rule, with the first of two equal rests served first.
describe('largest remainder on amounts of money', () => {
  test.each<[bigint, bigint[], bigint[]]>([
    [100n, [1n, 1n, 1n], [34n, 33n, 33n]],
    [1_003n, [50n, 50n], [502n, 501n]],
    [10_001n, [50n, 30n, 20n], [5_001n, 3_000n, 2_000n]],
    [101n, [17n, 55n, 28n], [17n, 56n, 28n]],
    [100n, [0n, 1n, 2n], [0n, 33n, 67n]],
    [10n, [61n, 39n], [6n, 4n]],
    [-100n, [1n, 1n, 1n], [-34n, -33n, -33n]],
  ])('%d by %s', (total, weights, parts) => {
    expect(splitCents(total, weights)).toEqual(parts);
  });

  test('1,000.01 in 50, 30 and 20 percent', () => {
    const percents = ['50', '30', '20'];
    expect(splitByPercents(100_001n, percents)).toEqual([50_001n, 30_000n, 20_000n]);
  });
});

// ISO 4217: these currencies have two places; the platform's own table says so too.
test.each(Object.keys(currencySigns))('%s has a hundred cents', (currency) => {
  const written = new Intl.NumberFormat('en-US', { style: 'currency', currency });
  expect(written.resolvedOptions().maximumFractionDigits).toBe(2);
});
