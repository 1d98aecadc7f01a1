import { allocate, dinero, toSnapshot } from 'dinero.js/bigint';
import { USD } from 'dinero.js/bigint/currencies';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { splitCents } from '@/lib/money/rules';

/** The same split by a general-purpose money library, which knows nothing of ours. */
function splitByLibrary(total: bigint, weights: readonly bigint[]): bigint[] {
  const money = dinero({ amount: total, currency: USD });
  return allocate(money, [...weights]).map((part) => toSnapshot(part).amount);
}

const total = fc.bigInt({ min: 0n, max: 10_000_000_000n });
const weights = fc
  .array(fc.bigInt({ min: 0n, max: 1_000n }), { minLength: 1, maxLength: 12 })
  .filter((all) => all.some((weight) => weight > 0n));

// dinero.js 2.0.2, an open library for money of every kind: it gives the cents that are left over
// to the parts in their order, we give them to the largest rests.
describe('beside a general-purpose money library', () => {
  test.each<[bigint, bigint[]]>([
    [100n, [1n, 1n, 1n]],
    [1_003n, [50n, 50n]],
    [10_001n, [50n, 30n, 20n]],
    [101n, [17n, 55n, 28n]],
    [100n, [0n, 1n, 2n]],
  ])('%d by %s is the same split', (cents, by) => {
    expect(splitCents(cents, by)).toEqual(splitByLibrary(cents, by));
  });

  test('equal parts are the same, whatever the amount', () => {
    fc.assert(
      fc.property(total, fc.integer({ min: 1, max: 24 }), (cents, parts) => {
        const equal = Array.from({ length: parts }, () => 1n);
        expect(splitCents(cents, equal)).toEqual(splitByLibrary(cents, equal));
      }),
    );
  });

  test('by any weights both lose nothing, and no part differs by more than a cent', () => {
    fc.assert(
      fc.property(total, weights, (cents, by) => {
        const ours = splitCents(cents, by);
        const theirs = splitByLibrary(cents, by);
        const sum = (parts: readonly bigint[]) => parts.reduce((all, part) => all + part, 0n);
        expect([sum(ours), sum(theirs)]).toEqual([cents, cents]);
        for (const [at, part] of ours.entries()) {
          const gap = part - (theirs[at] ?? 0n);
          expect(gap >= -1n && gap <= 1n).toBe(true);
        }
      }),
    );
  });

  test('where they differ, ours is the one whose rest is larger', () => {
    expect(splitByLibrary(10n, [61n, 39n])).toEqual([7n, 3n]);
    expect(splitCents(10n, [61n, 39n])).toEqual([6n, 4n]);
  });
});
