import { invariant } from '@/lib/platform/invariant';

/** A split with its steps: the shares cut down, how many units were then missing, the parts. */
export type SplitSteps = {
  readonly cutDown: readonly bigint[];
  readonly missing: bigint;
  readonly parts: readonly bigint[];
};

/**
 * Whole numbers that add up to `total` and stay within one of their exact shares.
 *
 * Every share is cut down to a whole number; what is then missing is given out one by one, to the
 * largest cut-off rests first, and to the earlier of two that are equal (largest remainder).
 * A total below zero is split as its mirror.
 *
 * @param total the whole to reach; at most half a unit away from the sum of the exact shares
 * @param quotas the exact shares, each as a numerator over `denominator`
 * @param denominator above zero, the same for all
 * @source Hamilton's method; OpenStax, Contemporary Mathematics, section 11.4
 * @example apportion(10n, [60n, 60n, 20n], 14n).parts // [4n, 4n, 2n]
 */
export function apportion(
  total: bigint,
  quotas: readonly bigint[],
  denominator: bigint,
): SplitSteps {
  if (total < 0n) {
    return mirrored(
      apportion(
        -total,
        quotas.map((quota) => -quota),
        denominator,
      ),
    );
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
  return {
    cutDown: shares.map((share) => share.whole),
    missing,
    parts: shares.map((share) => (topped.has(share.place) ? share.whole + 1n : share.whole)),
  };
}

function mirrored({ cutDown, missing, parts }: SplitSteps): SplitSteps {
  return {
    cutDown: cutDown.map((share) => -share),
    missing: -missing,
    parts: parts.map((part) => -part),
  };
}
