import { invariant } from '@/lib/platform/invariant';

/** A beta distribution of a share: `lost` and `kept` are its two counts, both above zero. */
export type ShareOdds = { readonly lost: number; readonly kept: number };

/**
 * How likely the share is at most so large.
 *
 * @param share 0 to 1
 * @returns 0 to 1, right to about ten places
 * @source regularized incomplete beta function: NIST Digital Library of Mathematical Functions,
 *   8.17.22 (continued fraction), 8.17.4 (its mirror); from memory
 * @example chanceShareAtMost({ lost: 1, kept: 1 }, 0.3) // 0.3: every share is as likely
 */
export function chanceShareAtMost(odds: ShareOdds, share: number): number {
  const { lost, kept } = odds;
  invariant(lost > 0 && kept > 0, 'Both counts of a share are above zero.');
  if (share <= 0) return 0;
  if (share >= 1) return 1;
  const front = Math.exp(
    logGamma(lost + kept) -
      logGamma(lost) -
      logGamma(kept) +
      lost * Math.log(share) +
      kept * Math.log1p(-share),
  );
  // The fraction converges fast on this side of the middle, and on the other for its mirror.
  if (share < (lost + 1) / (lost + kept + 2)) return (front * fraction(lost, kept, share)) / lost;
  return 1 - (front * fraction(kept, lost, 1 - share)) / kept;
}

/**
 * The share that is passed no more often than that: the other way round from
 * {@link chanceShareAtMost}.
 *
 * @param chance above 0, below 1
 * @returns 0 to 1, by halving the span until nothing is left to halve
 * @example shareAt({ lost: 1, kept: 1 }, 0.25) // 0.25
 */
export function shareAt(odds: ShareOdds, chance: number): number {
  invariant(chance > 0 && chance < 1, 'A chance lies between never and always.');
  let low = 0;
  let high = 1;
  for (let halving = 0; halving < halvings; halving += 1) {
    const middle = (low + high) / 2;
    if (chanceShareAtMost(odds, middle) < chance) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

const halvings = 60;
const tiny = 1e-300;
const close = 1e-15;
const termsMost = 1_000;

/** The continued fraction, by Lentz’s way of working one out from its front. */
function fraction(a: number, b: number, x: number): number {
  let c = 1;
  let d = 1 / awayFromZero(1 - ((a + b) * x) / (a + 1));
  let product = d;
  for (let term = 1; term <= termsMost; term += 1) {
    const twice = 2 * term;
    const even = (term * (b - term) * x) / ((a + twice - 1) * (a + twice));
    const odd = (-(a + term) * (a + b + term) * x) / ((a + twice) * (a + twice + 1));
    let step = 1;
    for (const part of [even, odd]) {
      d = 1 / awayFromZero(1 + part * d);
      c = awayFromZero(1 + part / c);
      step = c * d;
      product *= step;
    }
    if (Math.abs(step - 1) < close) return product;
  }
  return product;
}

function awayFromZero(number: number): number {
  return Math.abs(number) < tiny ? tiny : number;
}

/**
 * The logarithm of the gamma function, for numbers above zero.
 *
 * Stirling’s series, after the number was raised to where four terms are enough.
 */
function logGamma(number: number): number {
  let raised = number;
  let log = 0;
  for (; raised < 15; raised += 1) log -= Math.log(raised);
  const over = 1 / (raised * raised);
  const series = (1 / 12 - over * (1 / 360 - over * (1 / 1_260 - over / 1_680))) / raised;
  return log + (raised - 0.5) * Math.log(raised) - raised + Math.log(2 * Math.PI) / 2 + series;
}
