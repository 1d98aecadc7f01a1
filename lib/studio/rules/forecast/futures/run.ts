import { futureKey, mix, nextChance } from '../chance';
import type { Plan } from './plan';
import { casesOfDays } from '../pert';
import { at } from './rows';
import { kinds } from './steps';

/** No lot came before: it stood here today. */
export const fromToday = -1;

/** How many figures are kept of a lot, and at which place each. */
export const lotWidth = 8;
/** See {@link lotWidth}. `next` is the lot that ends on the same day. */
export const ofLot = {
  step: 0,
  pieces: 1,
  arrived: 2,
  started: 3,
  ended: 4,
  from: 5,
  isAgain: 6,
  next: 7,
} as const;

/** What can be watched in a future. */
export type Watched = 'arrives' | 'starts' | 'ends' | 'finished';
/** Told of a step, its pieces, and: of `starts` the kiln or -1, of `ends` the pieces lost. */
export type Watch = (what: Watched, step: number, pieces: number, more: number) => void;

/**
 * One future at a time, in rows that are used again for the next. Lots are numbered as they begin
 * a step; each knows the lot it came from, so that the way of the last one can be followed back.
 */
export type Run = ReturnType<typeof startRun>;

/** The rows for the futures of a plan. */
export function startRun(plan: Plan) {
  const { steps, queues, kilns } = plan;
  const benches = plan.studio.benches.length;
  return {
    plan,
    today: 0,
    /** Since when pieces that arrive now stand there: today, or before where they stood. */
    sinceDay: 0,
    jobsLeft: 0,
    streams: new Int32Array(steps.count + 2 * kilns.count),
    waiting: new Int32Array(queues.stepAt.length / 32 + 1),
    waitPieces: new Int32Array(steps.count),
    waitSince: new Int32Array(steps.count),
    waitFrom: new Int32Array(steps.count),
    gathered: new Int32Array(steps.count),
    reached: new Int32Array(steps.count),
    waitVolume: new Float64Array(queues.count),
    oldest: new Int32Array(queues.count),
    benchFree: new Int32Array(benches),
    kilnFreeOn: new Int32Array(kilns.count),
    kilnWeek: new Int32Array(kilns.count),
    kilnTurns: new Int32Array(kilns.count),
    finished: new Int32Array(plan.jobs.length),
    readyDay: new Int32Array(plan.jobs.length),
    lastLot: new Int32Array(plan.jobs.length),
    endsOn: new Int32Array(plan.end),
    lots: 0,
    lotRows: new Int32Array(1_024 * lotWidth),
    watch: null as Watch | null,
  };
}

/** Clears the rows for a future and gives its steps and kilns their luck. */
export function clearRun(run: Run, seed: number, future: number): void {
  const { steps, kilns, opening, studio } = run.plan;
  const key = futureKey(seed, future);
  for (let step = 0; step < steps.count; step += 1) {
    run.streams[step] = mix(key ^ (steps.words[step] ?? 0));
  }
  for (let kiln = 0; kiln < kilns.count; kiln += 1) {
    const word = key ^ (kilns.words[kiln] ?? 0);
    run.streams[steps.count + kiln] = mix(word);
    run.streams[steps.count + kilns.count + kiln] = mix(word + 1);
  }
  run.waiting.fill(0);
  run.waitPieces.fill(0);
  run.gathered.fill(0);
  run.reached.set(opening.reached);
  run.waitVolume.fill(0);
  studio.benches.forEach((bench, at) => (run.benchFree[at] = bench.atOnce));
  run.kilnFreeOn.fill(0);
  run.kilnWeek.fill(0);
  run.kilnTurns.set(kilns.turnsTaken);
  run.finished.set(opening.finished);
  run.readyDay.fill(-1);
  run.lastLot.fill(fromToday);
  run.endsOn.fill(-1);
  run.lots = 0;
}

/** A lot that came today begins its step. */
export function startLot(run: Run, step: number, pieces: number, from: number): number {
  const lot = run.lots;
  const row = lot * lotWidth;
  if (row === run.lotRows.length) makeRoom(run);
  const rows = run.lotRows;
  run.lots = lot + 1;
  rows[row + ofLot.step] = step;
  rows[row + ofLot.pieces] = pieces;
  rows[row + ofLot.arrived] = Math.max(0, run.sinceDay);
  rows[row + ofLot.started] = run.today;
  rows[row + ofLot.from] = from;
  rows[row + ofLot.isAgain] = isAgain(run, from) ? 1 : 0;
  return lot;
}

/** Notes since when a lot had waited for its bench or its kiln; what was before today is not told. */
export function cameOn(run: Run, lot: number, day: number): void {
  run.lotRows[lot * lotWidth + ofLot.arrived] = Math.max(0, day);
}

/** Notes on which day a lot is through; a day out of sight never comes. */
export function endLot(run: Run, lot: number, day: number): void {
  const row = lot * lotWidth;
  run.lotRows[row + ofLot.ended] = day;
  if (day >= run.plan.end) return;
  run.lotRows[row + ofLot.next] = at(run.endsOn, day);
  run.endsOn[day] = lot;
}

/** How a lot that replaces lost pieces names the lot in which they were lost. */
export function againFrom(lot: number): number {
  return -2 - lot;
}

/** Whether pieces that come from there are made a second time. */
export function isAgain(run: Run, from: number): boolean {
  return from <= -2 || (from >= 0 && at(run.lotRows, from * lotWidth + ofLot.isAgain) === 1);
}

/** The days of a step that begins today, as chance has it. */
export function drawDays(run: Run, step: number): number {
  const { steps, seasonOf } = run.plan;
  const season = at(steps.kindOf, step) === kinds.dry ? at(seasonOf, run.today) : 0;
  const from = at(steps.casesFrom, step * steps.seasons + season);
  return steps.cases[from + (nextChance(run.streams, step) >>> 22)] ?? 0;
}

/** One of the cases from a first one on, each as likely as the others. */
export function drawCase(run: Run, stream: number, firstCase: number): number {
  const share = nextChance(run.streams, stream) / 4_294_967_296;
  return firstCase + Math.floor(share * (casesOfDays - firstCase));
}

function makeRoom(run: Run): void {
  const wider = new Int32Array(run.lotRows.length * 2);
  wider.set(run.lotRows);
  run.lotRows = wider;
}
