import { parseDecimal } from '@/lib/money/rules/decimal';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { levelMost } from '@/lib/stock/rules/demand';
import { chanceOfGood, startCount } from '@/lib/stock/rules/reorder';

/** A step of a route, and what it loses: a decimal string in percent, '0' to below '100'. */
export type StepLoss = { readonly step: string; readonly percent: string };

/** What is to come out whole, along which way, and how surely. */
export type StartAsked = {
  /** Whole pieces that are wanted, 1 to {@link goodMost}. */
  readonly good: number;
  readonly steps: readonly StepLoss[];
  /** A decimal string in percent, above '0' and at most '99.99'. */
  readonly certaintyPercent: string;
};

/** How many to begin, and what may be expected of them; chances and shares are 0 to 1. */
export type Start = {
  readonly start: number;
  /** How many of them come out whole on average. */
  readonly expectedGood: number;
  /** How many of all pieces come through every step. */
  readonly goodShare: number;
  /** How likely fewer than wanted come out whole, of those that are begun. */
  readonly shortChance: number;
  /** The same if just as many were begun as are wanted. */
  readonly shortChanceWithoutSpare: number;
};

/** Why it was not worked out how many to begin. */
export type StartRefusal =
  | { code: 'pieces_out_of_range' }
  | { code: 'loss_out_of_range'; step: string; percent: string }
  | { code: 'nothing_comes_through' }
  | { code: 'certainty_out_of_range' };

/** The most pieces that are reckoned with at once. */
export const goodMost = 10_000;

/** Below so many of all pieces a way is not reckoned with: it would want endless pieces. */
const shareLeast = 0.01;

/** Says in a full sentence why it was not worked out how many to begin. */
export function startRefusalMessage(refusal: StartRefusal): string {
  switch (refusal.code) {
    case 'pieces_out_of_range':
      return `Write how many are wanted, from 1 to ${goodMost}.`;
    case 'loss_out_of_range':
      return `What is lost at ${refusal.step} is 0 to less than 100 of a hundred: write it as 4 or 4.5.`;
    case 'nothing_comes_through':
      return 'Of a hundred pieces not one comes through. Look at the losses of each step once more.';
    case 'certainty_out_of_range':
      return 'Write how sure it is to be in a hundred, more than 0 and at most 99.99, such as 95.';
  }
}

/**
 * How many pieces to begin so that enough come out whole: the least number for which at least as
 * many as wanted come through every step with the certainty asked for.
 *
 * A piece is lost at a step or not, whatever becomes of the others; a shelf that falls takes many
 * at once, and no count of spare pieces covers that.
 *
 * @returns refuses, in this order: pieces out of range, the first loss out of range, hardly
 *   anything comes through, a certainty out of range
 * @source least n with P(binomial(n, product of the survivals) ≥ wanted) ≥ certainty, as
 *   {@link startCount}
 * @example 10 good, one step that loses '10', 95 in a hundred // start 13
 */
export function howManyToStart(asked: StartAsked): Result<Start, StartRefusal> {
  const { good } = asked;
  if (!isCount(good, 1)) return refuse({ code: 'pieces_out_of_range' });
  const share = shareThrough(asked.steps);
  if (!share.ok) return share;
  const certainty = shareOf(asked.certaintyPercent);
  if (certainty === null || certainty <= 0 || certainty > levelMost) {
    return refuse({ code: 'certainty_out_of_range' });
  }
  const goodShare = share.value;
  const { start } = startCount({ good, stepLosses: [1 - goodShare], certainty });
  const short = (begun: number) => 1 - chanceOfGood({ begun, good, goodShare });
  return ok({
    ...{ start, goodShare, expectedGood: start * goodShare },
    ...{ shortChance: short(start), shortChanceWithoutSpare: short(good) },
  });
}

/**
 * How likely fewer than wanted come out whole of so many that are begun.
 *
 * @param of `begun` pieces, 0 to {@link goodMost}, `good` wanted
 * @returns 0 to 1; refuses as {@link howManyToStart} does, but for the certainty
 * @source 1 − P(binomial(begun, product of the survivals) ≥ wanted)
 * @example 2 begun, 1 wanted, one step that loses '20' // 0.04
 */
export function chanceOfShort(of: {
  begun: number;
  good: number;
  steps: readonly StepLoss[];
}): Result<number, StartRefusal> {
  const { begun, good } = of;
  if (!isCount(begun, 0) || !isCount(good, 1)) return refuse({ code: 'pieces_out_of_range' });
  const share = shareThrough(of.steps);
  return share.ok ? ok(1 - chanceOfGood({ begun, good, goodShare: share.value })) : share;
}

/**
 * How many of all pieces come through every step: the product of what each step leaves.
 *
 * @returns above 0, at most 1; refuses the first loss out of range, then a product below a
 *   hundredth
 * @example steps that lose '4', '4', '1.5' and '4.5' // about 0.867
 */
export function shareThrough(steps: readonly StepLoss[]): Result<number, StartRefusal> {
  let share = 1;
  for (const { step, percent } of steps) {
    const lost = shareOf(percent);
    if (lost === null || lost < 0 || lost >= 1) {
      return refuse({ code: 'loss_out_of_range', step, percent });
    }
    share *= 1 - lost;
  }
  return share < shareLeast ? refuse({ code: 'nothing_comes_through' }) : ok(share);
}

function shareOf(percent: string): number | null {
  const decimal = parseDecimal(percent);
  return decimal && Number(decimal.units) / 10 ** (decimal.scale + 2);
}

function isCount(pieces: number, least: number): boolean {
  return Number.isInteger(pieces) && pieces >= least && pieces <= goodMost;
}
