import { invariant } from '@/lib/platform/invariant';

/** The days a step takes: at least, mostly, at most. */
export type ThreeDays = {
  readonly shortestDays: number;
  readonly likelyDays: number;
  readonly longestDays: number;
};

/** How many equally likely cases the days of a step are laid out in. */
export const casesOfDays = 1_024;

/** A job's pieces and a step's days stay below this. */
const longestOfAll = 3_000;

/**
 * What three days come to: the mean, (shortest + 4 likely + longest) / 6, in days, and the
 * variance, ((longest - shortest) / 6) squared, in days squared.
 *
 * @source D. G. Malcolm, J. H. Roseboom, C. E. Clark, W. Fazar, Operations Research 7, 1959
 * @example pert({ shortestDays: 5, likelyDays: 8, longestDays: 17 }) // { mean: 9, variance: 4 }
 */
export function pert(days: ThreeDays): { mean: number; variance: number } {
  checkDays(days);
  const { shortestDays, likelyDays, longestDays } = days;
  return {
    mean: (shortestDays + 4 * likelyDays + longestDays) / 6,
    variance: ((longestDays - shortestDays) / 6) ** 2,
  };
}

/**
 * How likely each whole number of days is: a beta curve from shortest to longest with its peak at
 * the likely days, whose mean is that of {@link pert}. What lies between two whole days is shared
 * between them by nearness, which leaves the mean as it is.
 *
 * @returns at place n the probability of n days; they add up to 1
 */
export function likelihoods(days: ThreeDays): number[] {
  checkDays(days);
  const { shortestDays, likelyDays, longestDays } = days;
  const shares = new Array<number>(Math.ceil(longestDays) + 1).fill(0);
  const share = (day: number, weight: number) => {
    const whole = Math.floor(day);
    const over = day - whole;
    shares[whole] = (shares[whole] ?? 0) + weight * (1 - over);
    if (over > 0) shares[whole + 1] = (shares[whole + 1] ?? 0) + weight * over;
  };
  const range = longestDays - shortestDays;
  if (range === 0) {
    share(shortestDays, 1);
    return shares;
  }
  const before = (4 * (likelyDays - shortestDays)) / range;
  const after = 4 - before;
  const slices = 2_048;
  let whole = 0;
  for (let slice = 0; slice < slices; slice += 1) {
    const at = (slice + 0.5) / slices;
    const weight = at ** before * (1 - at) ** after;
    whole += weight;
    share(shortestDays + range * at, weight);
  }
  return shares.map((weight) => weight / whole);
}

/**
 * The days of a step as {@link casesOfDays} equally likely cases, from the shortest up: a chance
 * picks one. With the same chance, longer days never give a shorter case.
 */
export function casesOf(days: ThreeDays): Int16Array {
  const cases = new Int16Array(casesOfDays);
  const shares = likelihoods(days);
  let day = 0;
  let reached = shares[0] ?? 0;
  for (let at = 0; at < casesOfDays; at += 1) {
    while (reached < (at + 0.5) / casesOfDays && day < shares.length - 1) {
      day += 1;
      reached += shares[day] ?? 0;
    }
    cases[at] = day;
  }
  return cases;
}

function checkDays({ shortestDays, likelyDays, longestDays }: ThreeDays): void {
  invariant(shortestDays >= 0 && longestDays < longestOfAll, 'A step takes 0 to 3,000 days.');
  invariant(
    shortestDays <= likelyDays && likelyDays <= longestDays,
    'The likely days of a step lie between its shortest and its longest.',
  );
}
