import type { Plan } from './futures/plan';
import { anew, kinds, type JobNow } from './futures/steps';

/**
 * What a job's days go into, in mean days of the calendar: waiting for a bench, waiting for a kiln
 * at a step, a step itself, or pieces that were lost and their making until then.
 */
export type Drive = {
  readonly kind: 'bench' | 'kiln' | 'step' | 'lost';
  /** The bench, or the step as the route names it; empty for `lost`. */
  readonly name: string;
  readonly days: number;
};

/** Days by step and by job, added up over the futures. */
export type Tally = {
  readonly waited: Float64Array;
  readonly taken: Float64Array;
  readonly lost: Float64Array;
};

/** A tally in which nothing is counted yet. */
export function openTally(plan: Plan): Tally {
  return {
    waited: new Float64Array(plan.firstOf.at(-1) ?? 0),
    taken: new Float64Array(plan.firstOf.at(-1) ?? 0),
    lost: new Float64Array(plan.jobs.length),
  };
}

/**
 * Follows the pieces that made a job ready back to today, and counts where their days went. The
 * parts add up to the day on which the job was ready.
 */
export function tallyJob(job: JobNow, at: number, tally: Tally): void {
  const { waited, taken } = tally;
  let lot = job.lastLot;
  while (lot !== null && lot !== anew) {
    const { step, arrived, from } = lot;
    const started = step.kind <= kinds.fire ? lot.started : arrived;
    waited[step.place] = (waited[step.place] ?? 0) + started - arrived;
    taken[step.place] = (taken[step.place] ?? 0) + lot.ended - started;
    if (from === anew) tally.lost[at] = (tally.lost[at] ?? 0) + arrived;
    lot = from;
  }
}

/**
 * What drives the date of a job, the most days first; what takes none is left out.
 *
 * @param counted in how many futures the job was ready
 */
export function drivesOf(plan: Plan, job: number, tally: Tally, counted: number): Drive[] {
  if (counted === 0) return [];
  const days = new Map<string, { kind: Drive['kind']; name: string; days: number }>();
  const add = (kind: Drive['kind'], name: string, sum: number): void => {
    const known = days.get(`${kind} ${name}`) ?? { kind, name, days: 0 };
    days.set(`${kind} ${name}`, { ...known, days: known.days + sum / counted });
  };
  const first = plan.firstOf[job] ?? 0;
  plan.jobs[job]?.steps.forEach((step, at) => {
    if (step.kind === 'work') add('bench', step.bench, tally.waited[first + at] ?? 0);
    if (step.kind === 'fire') add('kiln', step.name, tally.waited[first + at] ?? 0);
    add('step', step.name, tally.taken[first + at] ?? 0);
  });
  add('lost', '', tally.lost[job] ?? 0);
  const drives = [...days.values()].filter((drive) => drive.days > 0);
  return drives.toSorted((one, other) => other.days - one.days);
}
