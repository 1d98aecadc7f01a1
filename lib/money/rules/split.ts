import { invariant } from '@/lib/platform/invariant';

/**
 * Whole numbers that add up to `total` and stay within one of their exact shares.
 *
 * Every share is cut down to a whole number; what is then missing is given out one by one, to the
 * largest cut-off rests first, and to the earlier of two that are equal (largest remainder).
 *
 * @param total the whole to reach; at most half a unit per share away from the exact sum
 * @param quotas the exact shares, each as a numerator over `denominator`
 * @param denominator above zero, the same for all
 * @source Hamilton's method; OpenStax, Contemporary Mathematics, section 11.4
 * @example apportion(10n, [60n, 60n, 20n], 14n) // [4n, 4n, 2n]
 */
export function apportion(total: bigint, quotas: readonly bigint[], denominator: bigint): bigint[] {
  if (total < 0n) {
    const mirrored = quotas.map((quota) => -quota);
    return apportion(-total, mirrored, denominator).map((part) => -part);
  }
  const shares = quotas.map((quota, place) => {
    const rest = ((quota % denominator) + denominator) % denominator;
    return { place, whole: (quota - rest) / denominator, rest };
  });
  const missing = total - shares.reduce((sum, share) => sum + share.whole, 0n);
  invariant(missing >= 0n && missing <= shares.length, 'The shares are the shares of this total.');

  const inOrder = shares.toSorted((a, b) => {
    if (a.rest === b.rest) return a.place - b.place;
    return a.rest > b.rest ? -1 : 1;
  });
  const topped = new Set(inOrder.slice(0, Number(missing)).map((share) => share.place));
  return shares.map((share) => (topped.has(share.place) ? share.whole + 1n : share.whole));
}
