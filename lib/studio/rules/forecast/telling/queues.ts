import { addDays, daysBetween, type Day } from '@/lib/dates/rules';
import type { StudioLoad } from '../load/load';

/** What waits for a kiln of one cone. */
export type ConeQueue = {
  readonly cone: string;
  readonly pieces: number;
  readonly cm3: number;
  /** Since when the longest waiting stand there; null when nobody knows. */
  readonly sinceOn: Day | null;
  readonly kilns: readonly KilnFill[];
};

/** How full a kiln would be with what waits for its cone. */
export type KilnFill = {
  readonly name: string;
  /** Whole percent, up to 100. */
  readonly fillPercent: number;
  readonly leastFillPercent: number;
  /** The day by which it is lit however full it is; null when nobody knows since when they wait. */
  readonly atLatestOn: Day | null;
};

/** What waits for the kilns today, cone by cone, the most first. */
export function queuesOf(load: StudioLoad): ConeQueue[] {
  const waiting = new Map<string, { pieces: number; cm3: number; sinceOn: Day | null }>();
  for (const { job } of load.jobs) {
    for (const { position, pieces, sinceOn, heldBy } of job.standings) {
      const step = job.steps[position - 1];
      if (step?.kind !== 'fire' || heldBy !== null) continue;
      const known = waiting.get(step.cone) ?? { pieces: 0, cm3: 0, sinceOn: null };
      const isSooner = sinceOn !== null && (known.sinceOn === null || sinceOn < known.sinceOn);
      waiting.set(step.cone, {
        pieces: known.pieces + pieces,
        cm3: known.cm3 + pieces * job.pieceCm3,
        sinceOn: isSooner ? sinceOn : known.sinceOn,
      });
    }
  }
  return [...waiting]
    .map(([cone, queue]) => ({ cone, ...queue, kilns: fillsOf(load, cone, queue) }))
    .toSorted((one, other) => other.cm3 - one.cm3);
}

function fillsOf(
  load: StudioLoad,
  cone: string,
  queue: { cm3: number; sinceOn: Day | null },
): KilnFill[] {
  const names = new Map(load.facts.kilns.map(({ id, name }) => [id, name]));
  return load.studio.kilns
    .filter((kiln) => kiln.cones.includes(cone) && kiln.volumeCm3 > 0)
    .map((kiln) => ({
      name: names.get(kiln.id) ?? 'the kiln',
      fillPercent: Math.min(100, Math.round((queue.cm3 * 100) / kiln.volumeCm3)),
      leastFillPercent: kiln.leastFillPercent,
      atLatestOn: queue.sinceOn && laterOf(load.todayOn, queue.sinceOn, kiln.longestWaitDays),
    }));
}

function laterOf(todayOn: Day, sinceOn: Day, waitDays: number): Day {
  const day = addDays(sinceOn, waitDays);
  return daysBetween(todayOn, day) < 0 ? todayOn : day;
}
