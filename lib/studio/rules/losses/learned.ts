import { parseDecimal } from '@/lib/money/rules/decimal';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { shareAt, type ShareOdds } from './beta';
import type { StepLoss } from './start';

/** What a studio has counted at a step: of so many pieces, so many were lost there. */
export type Counted = { readonly lost: number; readonly of: number };

/** What is thought of a step before anything was counted, and how many pieces that weighs. */
export type Stated = {
  /** A decimal string in percent, above '0' and below '100'. */
  readonly percent: string;
  /** Whole pieces, 1 to {@link weighsMost}. */
  readonly weighsPieces: number;
};

/** What is known of a step's loss; all shares are 0 to 1. */
export type LearnedLoss = {
  readonly counted: Counted;
  /** Whether anything was thought of it before. */
  readonly isStated: boolean;
  /** The share to reckon with. */
  readonly share: number;
  /** With nineteen chances of twenty the true share lies between these two. */
  readonly lowShare: number;
  readonly highShare: number;
  /** How much of it is the studio's own count, 0 to 1; the rest is what was stated. */
  readonly ownShare: number;
};

/** Why a loss was not learned. */
export type LearnRefusal =
  | { code: 'counts_do_not_fit' }
  | { code: 'stated_out_of_range'; percent: string }
  | { code: 'weight_out_of_range' };

/** The most pieces a stated rate may weigh. */
export const weighsMost = 10_000;

/** How many pieces of its own count a stated rate weighs, unless a studio says otherwise. */
export const statedWeighsPieces = 20;

/** The most pieces that were counted at one step. */
const countedMost = 10_000_000;

/** What a span leaves out at each end. */
const tail = 0.025;

/** Says in a full sentence why a loss was not learned. */
export function learnRefusalMessage(refusal: LearnRefusal): string {
  switch (refusal.code) {
    case 'counts_do_not_fit':
      return 'Write how many went through the step and how many of them were lost, no more than all.';
    case 'stated_out_of_range':
      return 'No step loses nothing for ever, nor all: state more than 0 and less than 100 of a hundred.';
    case 'weight_out_of_range':
      return `A stated loss weighs as much as 1 to ${weighsMost} pieces of your own.`;
  }
}

/**
 * What a step loses, as far as the studio's own pieces tell: a stated rate stands at first, and
 * gives way as counts come in.
 *
 * The stated rate counts as `weighsPieces` pieces that were seen before, of which its share was
 * lost. Where nothing is stated, half a piece lost and half a piece kept stand in for it.
 *
 * @returns the mean of what is then thought, and the span that leaves out one chance in forty at
 *   each end; refuses, in this order: counts that do not fit, a stated rate of 0 or 100 or beyond,
 *   a weight out of range
 * @source beta prior on a binomial share, as in Gelman and others, Bayesian Data Analysis, section
 *   2.4; half a piece each way is Jeffreys' prior (both from memory). The weight is a starting value
 * @example learnLoss({ lost: 3, of: 40 }, null) // share 0.085, between 0.02 and 0.19
 */
export function learnLoss(
  counted: Counted,
  stated: Stated | null,
): Result<LearnedLoss, LearnRefusal> {
  if (!countsFit(counted)) return refuse({ code: 'counts_do_not_fit' });
  const before = stated ? oddsStated(stated) : ok({ lost: 0.5, kept: 0.5 });
  if (!before.ok) return before;
  const { lost, of } = counted;
  const odds = { lost: before.value.lost + lost, kept: before.value.kept + of - lost };
  const weight = odds.lost + odds.kept;
  return ok({
    counted,
    isStated: stated !== null,
    share: odds.lost / weight,
    lowShare: shareAt(odds, tail),
    highShare: shareAt(odds, 1 - tail),
    ownShare: of / weight,
  });
}

function countsFit({ lost, of }: Counted): boolean {
  const areWhole = Number.isInteger(lost) && Number.isInteger(of);
  return areWhole && lost >= 0 && lost <= of && of <= countedMost;
}

function oddsStated({ percent, weighsPieces }: Stated): Result<ShareOdds, LearnRefusal> {
  const decimal = parseDecimal(percent);
  const share = decimal ? Number(decimal.units) / 10 ** (decimal.scale + 2) : Number.NaN;
  if (!(share > 0 && share < 1)) return refuse({ code: 'stated_out_of_range', percent });
  const isWeight = Number.isInteger(weighsPieces) && weighsPieces >= 1;
  if (!isWeight || weighsPieces > weighsMost) return refuse({ code: 'weight_out_of_range' });
  return ok({ lost: share * weighsPieces, kept: (1 - share) * weighsPieces });
}

/**
 * A learned loss as a step's loss to plan with.
 *
 * @param side `likely` is the share to reckon with; `high` the most that the counts still allow
 * @returns a decimal string to a hundredth of a percent
 * @example planWith('drying', learned, 'likely') // { step: 'drying', percent: '8.54' }
 */
export function planWith(step: string, learned: LearnedLoss, side: 'likely' | 'high'): StepLoss {
  const share = side === 'likely' ? learned.share : learned.highShare;
  const hundredths = Math.min(9_999, Math.round(share * 10_000));
  return { step, percent: String(hundredths / 100) };
}
