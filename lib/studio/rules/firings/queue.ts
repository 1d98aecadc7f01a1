import type { Day } from '@/lib/dates/rules';
import { daysBetween } from '@/lib/dates/rules';
import type { KilnFacts } from '@/lib/studio/rules/kilns/keeping';
import {
  byNeedAndWait,
  loadReady,
  piecesToLay,
  proposeLoad,
  queueOf,
  type LoadReady,
  type Queue,
  type WaitingForFire,
} from './load';
import { fillOf, layOnShelves, type Fill } from './packing';
import type { FiringKind } from './schedule';

/** Pieces of a job that wait, with what they wait for and what they are called. */
export type WaitingNamed = WaitingForFire & {
  readonly title: string;
  readonly kind: FiringKind;
  readonly cone: string;
};

/** What waits for one cone, and what a load of it in one kiln would be. */
export type ConeWaiting = {
  readonly kind: FiringKind;
  readonly cone: string;
  readonly pieces: number;
  /** By need and wait. */
  readonly jobs: readonly WaitingNamed[];
  /** Since when the longest waiting stand there, and for how many days. */
  readonly sinceOn: Day | null;
  readonly waitedDays: number;
  readonly neededOn: Day | null;
  /** How many pieces a proposed load holds, and how full it is. */
  readonly loadPieces: number;
  readonly fill: Fill;
  readonly ready: LoadReady;
  readonly queue: Queue;
};

/**
 * What waits for the cones of a kiln: bisque before glaze, the cooler cone first.
 *
 * @param waiting of all cones; those that this kiln is not fired to are left out
 */
export function waitingByCone(
  kiln: KilnFacts,
  waiting: readonly WaitingNamed[],
  of: { roomAroundUm: number; todayOn: Day },
): ConeWaiting[] {
  const free = waiting.filter(({ pieces, cone }) => pieces > 0 && kiln.cones.includes(cone));
  const places = [...new Set(free.map(({ kind, cone }) => `${kind} ${cone}`))];
  return places
    .map((place) =>
      ofOneCone(
        kiln,
        free.filter((one) => `${one.kind} ${one.cone}` === place),
        of,
      ),
    )
    .flatMap((one) => one ?? [])
    .toSorted(
      (one, other) =>
        one.kind.localeCompare(other.kind, 'en') ||
        kiln.cones.indexOf(one.cone) - kiln.cones.indexOf(other.cone),
    );
}

function ofOneCone(
  kiln: KilnFacts,
  waiting: readonly WaitingNamed[],
  of: { roomAroundUm: number; todayOn: Day },
): ConeWaiting | null {
  const jobs = waiting.toSorted(byNeedAndWait);
  const [first] = jobs;
  if (!first) return null;
  const { roomAroundUm, todayOn } = of;
  const lines = proposeLoad(kiln, jobs, roomAroundUm);
  const pieces = lines.flatMap((line) =>
    piecesToLay(`${line.jobId}/${line.position}`, line.lying, line.pieces),
  );
  const fill = fillOf(kiln, layOnShelves(kiln, pieces, roomAroundUm), roomAroundUm);
  const sinceOn = earliest(jobs.map((job) => job.sinceOn));
  const waitedDays = sinceOn === null ? 0 : Math.max(0, daysBetween(sinceOn, todayOn));
  return {
    ...{ kind: first.kind, cone: first.cone, jobs, sinceOn, waitedDays, fill },
    pieces: jobs.reduce((sum, job) => sum + job.pieces, 0),
    neededOn: earliest(jobs.map((job) => job.neededOn)),
    loadPieces: lines.reduce((sum, line) => sum + line.pieces, 0),
    ready: loadReady(fill.areaPercent, waitedDays, kiln),
    queue: queueOf(kiln, jobs, { roomAroundUm, turnsAWeek: kiln.turnsAWeek }),
  };
}

function earliest(days: readonly (Day | null)[]): Day | null {
  return days.flatMap((day) => day ?? []).toSorted()[0] ?? null;
}

/** What waits for a kiln altogether, in turns and weeks of it. */
export function wholeQueue(
  cones: readonly Pick<ConeWaiting, 'queue'>[],
  turnsAWeek: number,
): Queue {
  const turnHundredths = cones.reduce((sum, { queue }) => sum + queue.turnHundredths, 0);
  return {
    turnHundredths,
    notReckoned: cones.reduce((sum, { queue }) => sum + queue.notReckoned, 0),
    weekTenths: Math.ceil(turnHundredths / (10 * turnsAWeek)),
  };
}
