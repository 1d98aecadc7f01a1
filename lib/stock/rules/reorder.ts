import { invariant } from '@/lib/platform/invariant';
import { chanceAtMost, demandInLead, smallestCovering, type LeadDemand } from './demand';

/** When to begin a new lot: as soon as no more than so many are left or on their way. */
export type ReorderPoint = {
  reorderPoint: number;
  /** Pieces asked for, on average, while a new lot is being made. */
  expectedDemand: number;
  /** How likely the reorder point lasts that long, 0 to 1; at least the service level. */
  chance: number;
};

/**
 * How few may be left before a new lot is begun.
 *
 * @param asked `serviceLevel` above 0 and at most {@link levelMost}: how often nobody is to go
 *   home without one
 * @source smallest r with P(demand in the lead time ≤ r) ≥ service level, {@link demandInLead}
 * @example nothing is ever sold // 0
 */
export function reorderPoint(asked: LeadDemand & { serviceLevel: number }): ReorderPoint {
  const odds = demandInLead(asked);
  const point = smallestCovering(odds, asked.serviceLevel);
  return { reorderPoint: point, expectedDemand: odds.mean, chance: chanceAtMost(odds, point) };
}

/** How many to begin with so that enough come out whole. */
export type StartCount = {
  start: number;
  /** How many come out whole on average. */
  expectedGood: number;
  /** What one piece's way through all steps comes to, 0 to 1. */
  goodShare: number;
  /** How likely at least as many as wanted come out whole; at least the certainty. */
  chance: number;
};

/**
 * How many pieces to begin with.
 *
 * Each is lost at each step or not, whatever becomes of the others; so those lost before the last
 * good one are negative binomial.
 *
 * @param wanted whole `good` pieces, losses of each step from 0 to below 1, `certainty` above 0
 *   and at most {@link levelMost}
 * @source smallest n with P(binomial(n, good share) ≥ wanted) ≥ certainty
 * @example startCount({ good: 10, stepLosses: [0.1], certainty: 0.95 }).start // 13
 */
export function startCount(wanted: {
  good: number;
  stepLosses: readonly number[];
  certainty: number;
}): StartCount {
  const { good, stepLosses, certainty } = wanted;
  const goodShare = stepLosses.reduce((share, loss) => share * (1 - loss), 1);
  invariant(goodShare > 0, 'Something comes out whole.');
  if (good === 0) return { start: 0, expectedGood: 0, goodShare, chance: 1 };
  const lost = { mean: (good * (1 - goodShare)) / goodShare, size: good };
  const spare = smallestCovering(lost, certainty);
  const start = good + spare;
  return { start, expectedGood: start * goodShare, goodShare, chance: chanceAtMost(lost, spare) };
}

/**
 * How likely at least so many come out whole of those that were begun.
 *
 * @source P(binomial(begun, good share) ≥ good); OpenStax, Introductory Statistics 2e, section 4.3
 * @example chanceOfGood({ begun: 2, good: 3, goodShare: 1 }) // 0: there are only two
 */
export function chanceOfGood(of: { begun: number; good: number; goodShare: number }): number {
  const { begun, good, goodShare } = of;
  if (good <= 0) return 1;
  if (begun < good) return 0;
  const lost = { mean: (good * (1 - goodShare)) / goodShare, size: good };
  return chanceAtMost(lost, begun - good);
}
