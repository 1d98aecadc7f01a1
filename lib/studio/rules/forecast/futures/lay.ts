import { mix, wordOf } from '../chance';
import { lossTable } from '../losses';
import type { ForecastStep } from '../model';
import { lineFrom } from './lines';
import type { Plan } from './plan';
import { kinds, stepFrom, type JobNow, type KilnNow, type Line, type StepNow } from './steps';

/** What the futures of a plan go through. */
export type Laid = {
  readonly jobs: readonly JobNow[];
  readonly steps: readonly StepNow[];
  readonly benches: readonly Line[];
  readonly cones: readonly Line[];
  readonly kilns: readonly KilnNow[];
};

/** Lays out jobs, steps, kilns and the lines in which is waited, for any number of futures. */
export function laySteps(plan: Plan): Laid {
  const { studio } = plan;
  const jobs = plan.jobs.map((job, at): JobNow => {
    const { pieces, wanted, pieceCm3 } = job;
    const now = { inPlay: pieces, finished: 0, readyDay: -1, lastLot: null };
    return { pieces, wanted, pieceCm3, finishedAtFirst: plan.opening.finished[at] ?? 0, ...now };
  });
  const benches = studio.benches.map(({ atOnce }, at) =>
    lineFrom(plan.benchCalendars[at] ?? plan.calendar, atOnce),
  );
  const cones = plan.cones.map(() => lineFrom(plan.calendar, 0));
  const lineOf = (step: ForecastStep): Line | null => {
    if (step.kind === 'fire') return cones[plan.cones.indexOf(step.cone)] ?? null;
    if (step.kind !== 'work') return null;
    return benches[studio.benches.findIndex((bench) => bench.id === step.bench)] ?? null;
  };
  const steps = layRoutes(plan, jobs, lineOf);
  for (const line of [...benches, ...cones]) {
    line.waiting = new Int32Array(Math.ceil(line.steps.length / 32));
  }
  return { jobs, steps, benches, cones, kilns: layKilns(plan, cones) };
}

function layRoutes(
  plan: Plan,
  jobs: readonly JobNow[],
  lineOf: (step: ForecastStep) => Line | null,
): StepNow[] {
  const most = Math.max(1, ...jobs.map((job) => job.pieces));
  const rates = [...new Set(plan.jobs.flatMap((job) => job.steps.map((step) => step.lossRate)))];
  const tables = new Map(rates.map((rate) => [rate, lossTable(rate, most)]));
  return plan.jobs.flatMap((job, at) => {
    const now = jobs[at];
    if (!now) return [];
    const first = plan.firstOf[at] ?? 0;
    const route = job.steps.map((step, index) => {
      const line = lineOf(step);
      const laid = stepFrom({
        place: first + index,
        job: now,
        kind: kinds[step.kind],
        isTogether: step.isTogether,
        line,
        seat: line?.steps.length ?? -1,
        losses: step.lossRate > 0 ? (tables.get(step.lossRate) ?? null) : null,
        casesFrom: plan.casesFrom[(first + index) * plan.cases.seasons] ?? 0,
        word: mix(wordOf(job.id) + index) | 0,
        reachedAtFirst: plan.opening.reached[first + index] ?? 0,
      });
      line?.steps.push(laid);
      return laid;
    });
    const bench = route.find((step) => step.kind === kinds.work) ?? route[0];
    route.forEach((step, index) => {
      step.next = route[index + 1] ?? null;
      step.anewAt = bench && bench.place < step.place ? bench : step;
    });
    return route;
  });
}

function layKilns(plan: Plan, cones: readonly Line[]): KilnNow[] {
  return plan.studio.kilns.map((kiln, at) => ({
    at,
    volume: kiln.volumeCm3,
    leastVolume: (kiln.volumeCm3 * kiln.leastFillPercent) / 100,
    longestWait: kiln.longestWaitDays,
    turnsAWeek: kiln.turnsAWeek,
    turnsTaken: kiln.loadsThisWeek,
    lines: kiln.cones.flatMap((cone) => cones[plan.cones.indexOf(cone)] ?? []),
    calendar: plan.kilnCalendars[at] ?? plan.calendar,
    word: wordOf(`kiln ${kiln.id}`) | 0,
    loads: 0,
    inside: 0,
    freeOn: 0,
    week: 0,
    turns: 0,
  }));
}
