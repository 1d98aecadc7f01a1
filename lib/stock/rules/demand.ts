import { addDays, daysBetween, type Day } from '@/lib/dates/rules';
import { invariant } from '@/lib/platform/invariant';

/**
 * The chances of a count of pieces: its mean, and the size of the negative binomial that it
 * follows. A size of null is Poisson: nothing varies but chance itself.
 */
export type CountOdds = { readonly mean: number; readonly size: number | null };

/** The surest that can be asked for; certainty itself would want endless pieces. */
export const levelMost = 0.9999;

/**
 * The chances of none, of one, of two and so on, without end.
 *
 * @source Poisson: OpenStax, Introductory Statistics 2e, section 4.6; negative binomial: the same
 *   with a mean that varies by a gamma distribution
 */
export function* chancesFromNone({ mean, size }: CountOdds): Generator<number, never> {
  let log = size === null ? -mean : -size * Math.log1p(mean / size);
  for (let count = 0; ; count += 1) {
    yield Math.exp(log);
    const one = mean / (count + 1);
    log += Math.log(size === null ? one : (one * (count + size)) / (size + mean));
  }
}

/**
 * How likely a count is at most so many.
 *
 * @returns from 0 to 1
 * @example chanceAtMost({ mean: 0, size: null }, 0) // 1: nothing is asked for
 */
export function chanceAtMost(odds: CountOdds, most: number): number {
  const chances = chancesFromNone(odds);
  let sum = 0;
  for (let count = 0; count <= most; count += 1) sum += chances.next().value;
  return Math.min(1, sum);
}

/**
 * The smallest count that is not passed at this level: P(count ≤ answer) is at least the level.
 *
 * @param level above 0, at most {@link levelMost}
 * @example smallestCovering({ mean: 2, size: null }, 0.95) // 5
 */
export function smallestCovering(odds: CountOdds, level: number): number {
  invariant(level > 0 && level <= levelMost, 'A level lies between nothing and certainty.');
  const chances = chancesFromNone(odds);
  let count = 0;
  for (let sum = chances.next().value; sum < level - 1e-12; count += 1) {
    sum += chances.next().value;
  }
  return count;
}

/** How a SKU sells, and how long it takes to make; days may be fractions. */
export type LeadDemand = { perDay: number; leadDays: number; leadSdDays: number };

/**
 * What is asked for while a new lot is being made.
 *
 * Counts of a few a month are Poisson; where the days of making vary, by a gamma distribution of
 * their mean and deviation, the counts become negative binomial with the mean of the lead and
 * variance mean + (rate × deviation)².
 *
 * @source common practice for slow sellers: Poisson demand over a gamma lead time
 * @example a lead that never varies // size null: plain Poisson
 */
export function demandInLead({ perDay, leadDays, leadSdDays }: LeadDemand): CountOdds {
  const mean = perDay * leadDays;
  const size = (leadDays / leadSdDays) ** 2;
  if (mean === 0 || leadSdDays === 0 || size > sizeMost) return { mean, size: null };
  return { mean, size: Math.max(size, 1 / sizeMost) };
}

/** Beyond it the lead varies too little to be told from one that never does. */
const sizeMost = 1e9;

/** What one day changed in the stock of a SKU; `sold` counts pieces. */
export type StockDay = { on: Day; change: number; sold: number };

/**
 * On how many days a SKU could be bought: there was one in the morning or in the evening, or one
 * was sold. Days without any do not count as days on which nobody wanted one.
 *
 * @param days in order, all of them from the first day on and before the last
 * @example nothing there in the morning, one comes and is sold by noon // that day counts
 */
export function daysOnOffer(history: {
  opening: number;
  fromOn: Day;
  /** The first day that is not looked at any more. */
  untilOn: Day;
  days: readonly StockDay[];
}): number {
  const { fromOn, untilOn, days } = history;
  let here = history.opening;
  let reachedOn = fromOn;
  let counted = 0;
  for (const { on, change, sold } of days) {
    const before = here;
    counted += before > 0 ? daysBetween(reachedOn, on) : 0;
    here += change;
    counted += before > 0 || here > 0 || sold > 0 ? 1 : 0;
    reachedOn = addDays(on, 1);
  }
  return counted + (here > 0 ? Math.max(0, daysBetween(reachedOn, untilOn)) : 0);
}

/** How many days on offer the kind's own rate weighs beside those of the SKU. */
export const kindWeighsDays = 60;

/**
 * How many a day one SKU of a kind sells, over all of the kind.
 *
 * A gallery that opened last week is not believed too soon: one a month over sixty days is added
 * to what was seen.
 *
 * @param seen pieces sold, and days on offer added up over all SKUs of the kind
 * @source the same shrinkage as {@link sellingRate}; one a month is a starting value
 * @example kindRate({ sold: 0, daysOnOffer: 0 }) // one in thirty days
 */
export function kindRate(seen: { sold: number; daysOnOffer: number }): number {
  return (seen.sold + kindWeighsDays / 30) / (seen.daysOnOffer + kindWeighsDays);
}

/** How a SKU is thought to sell. */
export type SellingRate = {
  /** Pieces a day. */
  perDay: number;
  /** How far that may be off, one standard deviation, in pieces a day. */
  sdPerDay: number;
  /** How much of it is the SKU's own history, 0 to 1; the rest is how its kind sells. */
  ownShare: number;
};

/**
 * How fast a SKU sells: its sales over the days on which it could be bought, drawn towards the
 * rate of its kind as long as little is known of itself.
 *
 * The kind's rate counts as much as sixty days of the SKU's own.
 *
 * @param kindPerDay pieces a day that one SKU of the kind sells
 * @source gamma prior on a Poisson rate, the textbook shrinkage; its weight is a starting value
 * @example sellingRate({ sold: 0, daysOnOffer: 0, kindPerDay: 0.1 }) // 0.1 a day, all of it the kind's
 */
export function sellingRate(seen: {
  sold: number;
  daysOnOffer: number;
  kindPerDay: number;
}): SellingRate {
  const days = seen.daysOnOffer + kindWeighsDays;
  const pieces = seen.sold + seen.kindPerDay * kindWeighsDays;
  return {
    perDay: pieces / days,
    sdPerDay: Math.sqrt(pieces) / days,
    ownShare: seen.daysOnOffer / days,
  };
}
