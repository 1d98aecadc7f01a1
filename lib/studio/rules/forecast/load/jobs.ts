import { daysBetween, type Day } from '@/lib/dates/rules';
import {
  missingBeforeClay,
  refusalToBegin,
  standingsOf,
  type BeforeClay,
  type Standing,
} from '@/lib/studio/rules';
import type { RouteStep } from '@/lib/studio/rules/routes';
import type { ForecastJob, ForecastStanding, ForecastStep, Holding } from '../model';
import type { JobInLoad, LoadFacts } from './facts';
import { lossRateOf } from './losing';
import { kilnRoomOf, type SizeFrom } from './sizes';

/** An open job with what the forecast makes of it. */
export type LoadJob = {
  readonly job: ForecastJob;
  readonly number: number;
  readonly title: string;
  readonly neededOn: Day | null;
  readonly commission: { id: string; number: number; collector: string } | null;
  readonly sizeFrom: SizeFrom;
  /** What its commission waits for before the clay; empty when it may begin. */
  readonly missing: readonly BeforeClay[];
};

/** How a step is called at which the collector's answers are waited for. */
export const answersName = 'what the collector still has to say';
/** How the days are called in which the collector may cancel. */
export const cancelDaysName = 'the days in which they may cancel';

/** Brings the open jobs into the form that a forecast reads, the first opened first. */
export function jobsOf(facts: LoadFacts): LoadJob[] {
  const all = facts.jobs.map((job) => loadJobOf(facts, job));
  const held = heldAtBenches(facts, all);
  return all.map((one) => ({ ...one, job: { ...one.job, standings: held(one.job) } }));
}

function loadJobOf(facts: LoadFacts, row: JobInLoad): LoadJob {
  const room = kilnRoomOf(row.size, row.skuSize, facts.roomAroundUm);
  const steps = forecastSteps(facts, row);
  const standings = standingsIn(row);
  const isBegun = standings.some(({ position }) => position > 0);
  const begin = row.commission?.begin ?? null;
  const missing = begin && !isBegun && refusalToBegin(begin) ? missingBeforeClay(begin) : [];
  const before = stepsBefore(facts, missing, begin?.clayFromOn ?? null);
  return {
    job: {
      id: row.id,
      pieces: standings.reduce((sum, one) => sum + one.pieces, 0),
      wanted: row.wanted,
      pieceCm3: room.cm3,
      steps: [...before, ...steps],
      standings: standings.map((one) =>
        one.position === 0 ? one : { ...one, position: one.position + before.length },
      ),
      neededOn: row.neededOn,
    },
    ...{ number: row.number, title: row.title, neededOn: row.neededOn, missing },
    commission: row.commission && {
      ...{ id: row.commission.id, number: row.commission.number },
      collector: row.commission.collector,
    },
    sizeFrom: room.from,
  };
}

/** The steps of a route as a forecast reads them, with the losses that were learned. */
export function forecastSteps(
  facts: Pick<LoadFacts, 'losses'>,
  of: Pick<JobInLoad, 'technique' | 'steps'>,
): ForecastStep[] {
  return of.steps.map((step) => {
    const lossRate = lossRateOf(of.technique, step, facts.losses);
    const least = step.kind === 'fire' || lossRate > 0 ? 1 : 0;
    return {
      ...holdingOf(step),
      name: step.name,
      shortestDays: Math.max(least, step.shortestDays),
      likelyDays: Math.max(least, step.likelyDays),
      longestDays: Math.max(least, step.longestDays),
      isTogether: step.isTogether,
      lossRate,
    };
  });
}

function holdingOf({ kind, benchId, cone }: RouteStep): Holding {
  if (kind === 'work') return { kind, bench: benchId ?? '' };
  return kind === 'fire' ? { kind, cone } : { kind };
}

/** What a commission waits for before its clay, as steps: the days of the law, then their answers. */
export function stepsBefore(
  facts: Pick<LoadFacts, 'todayOn' | 'answerDays'>,
  missing: readonly BeforeClay[],
  clayFromOn: Day | null,
): ForecastStep[] {
  const free = { isTogether: false, lossRate: 0 };
  const steps: ForecastStep[] = [];
  if (missing.includes('days_to_cancel') && clayFromOn) {
    const days = Math.max(0, daysBetween(facts.todayOn, clayFromOn));
    const three = { shortestDays: days, likelyDays: days, longestDays: days };
    steps.push({ kind: 'wait', name: cancelDaysName, ...three, ...free });
  }
  if (missing.some((one) => one !== 'days_to_cancel')) {
    const { answerDays } = facts;
    const three = { shortestDays: 1, likelyDays: answerDays, longestDays: 3 * answerDays };
    steps.push({ kind: 'collector', name: answersName, ...three, ...free });
  }
  return steps;
}

/** Where its pieces stand; those in a lit kiln by themselves, and what is too few not begun yet. */
function standingsIn(row: JobInLoad): ForecastStanding[] {
  const standing = standingsOf(row, row.moves).flatMap((one) => inAndOut(row, one));
  const all = standing.reduce((sum, one) => sum + one.pieces, 0);
  const tooFew = Math.max(0, row.wanted - all);
  return tooFew === 0
    ? standing
    : [{ position: 0, pieces: tooFew, sinceOn: null, heldBy: null }, ...standing];
}

function inAndOut(row: JobInLoad, { position, pieces, sinceOn }: Standing): ForecastStanding[] {
  const inside = row.inKilns
    .filter((one) => one.position === position)
    .map(({ pieces: fired, kilnId, litOn }) => ({
      ...{ position, pieces: fired, sinceOn: litOn, heldBy: kilnId },
    }));
  const fired = inside.reduce((sum, one) => sum + one.pieces, 0);
  const waiting = { position, pieces: pieces - fired, sinceOn, heldBy: null };
  return waiting.pieces > 0 ? [...inside, waiting] : inside;
}

/**
 * Who is at work at the benches: as many jobs as each takes at once, those that stand there longest.
 * The others wait for their turn.
 */
function heldAtBenches(
  facts: LoadFacts,
  all: readonly LoadJob[],
): (job: ForecastJob) => ForecastStanding[] {
  const atBenches = all.flatMap(({ job }) =>
    job.standings.flatMap((standing) => {
      const step = job.steps[standing.position - 1];
      return step?.kind === 'work' ? [{ bench: step.bench, standing }] : [];
    }),
  );
  const begun = new Map<ForecastStanding, string>();
  for (const { id, atOnce } of facts.benches) {
    atBenches
      .filter(({ bench, standing }) => bench === id && standing.sinceOn !== null)
      .map(({ standing }) => standing)
      .toSorted((one, other) => (one.sinceOn ?? '').localeCompare(other.sinceOn ?? ''))
      .slice(0, atOnce)
      .forEach((standing) => begun.set(standing, id));
  }
  return (job) =>
    job.standings.map((one) => ({ ...one, heldBy: one.heldBy ?? begun.get(one) ?? null }));
}
