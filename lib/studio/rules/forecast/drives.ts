import { kinds } from './futures/steps';
import type { Plan } from './futures/plan';
import { at } from './futures/rows';
import { lotWidth, ofLot, type Run } from './futures/run';

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
    waited: new Float64Array(plan.steps.count),
    taken: new Float64Array(plan.steps.count),
    lost: new Float64Array(plan.jobs.length),
  };
}

/**
 * Follows the pieces that made a job ready back to today, and counts where their days went. The
 * parts add up to the day on which the job was ready.
 */
export function tallyJob(run: Run, job: number, tally: Tally): void {
  const { kindOf } = run.plan.steps;
  const { waited, taken } = tally;
  let lot = at(run.lastLot, job);
  while (lot >= 0) {
    const row = lot * lotWidth;
    const step = at(run.lotRows, row + ofLot.step);
    const arrived = at(run.lotRows, row + ofLot.arrived);
    const waits = at(kindOf, step) <= kinds.fire;
    const started = waits ? at(run.lotRows, row + ofLot.started) : arrived;
    waited[step] = (waited[step] ?? 0) + started - arrived;
    taken[step] = (taken[step] ?? 0) + at(run.lotRows, row + ofLot.ended) - started;
    lot = at(run.lotRows, row + ofLot.from);
    if (lot <= -2) tally.lost[job] = (tally.lost[job] ?? 0) + arrived;
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
  const first = plan.steps.firstOf[job] ?? 0;
  plan.jobs[job]?.steps.forEach((step, at) => {
    if (step.kind === 'work') add('bench', step.bench, tally.waited[first + at] ?? 0);
    if (step.kind === 'fire') add('kiln', step.name, tally.waited[first + at] ?? 0);
    add('step', step.name, tally.taken[first + at] ?? 0);
  });
  add('lost', '', tally.lost[job] ?? 0);
  const drives = [...days.values()].filter((drive) => drive.days > 0);
  return drives.toSorted((one, other) => other.days - one.days);
}
