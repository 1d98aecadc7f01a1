import { futureKey, mixBits, nextBits } from '../chance';
import { laySteps, type Laid } from './lay';
import { clearLine } from './lines';
import type { Plan } from './plan';
import { casesOfDays } from '../pert';
import { kinds, lotAt, type Lot, type StepNow } from './steps';

/** What can be watched in a future. */
export type Watched = 'arrives' | 'starts' | 'ends' | 'finished';
/** Told of a step's place, its pieces, and: of `starts` the kiln or -1, of `ends` the pieces lost. */
export type Watch = (what: Watched, place: number, pieces: number, more: number) => void;

/**
 * One future at a time, in objects that are used again for the next. Each lot knows the one it
 * came from, so that the way of the last can be followed back.
 */
export type Run = Laid & {
  readonly plan: Plan;
  /** The plan's own, one step nearer: the cases of days, and on which day it is open again. */
  readonly cases: Int16Array;
  readonly opensOn: Int32Array;
  readonly endsOn: (Lot | null)[];
  /** All lots there ever were; the first so many are those of this future. */
  readonly lots: Lot[];
  begun: number;
  today: number;
  /** Since when pieces that arrive now stand there: today, or before where they stood. */
  sinceDay: number;
  jobsLeft: number;
  watch: Watch | null;
};

/** Lays out the steps of a plan for its futures. */
export function startRun(plan: Plan): Run {
  return {
    plan,
    cases: plan.cases.cases,
    opensOn: plan.calendar.opensOn,
    ...laySteps(plan),
    endsOn: new Array<Lot | null>(plan.end).fill(null),
    lots: [],
    begun: 0,
    today: 0,
    sinceDay: 0,
    jobsLeft: 0,
    watch: null,
  };
}

/** Clears what the last future left and gives steps and kilns their luck. */
export function clearRun(run: Run, seed: number, future: number): void {
  const key = futureKey(seed, future);
  for (const step of run.steps) {
    step.stream = mixBits(key ^ step.word);
    step.waits = 0;
    step.gathered = 0;
    step.reached = step.reachedAtFirst;
  }
  for (const kiln of run.kilns) {
    const word = key ^ kiln.word;
    kiln.loads = mixBits(word);
    kiln.inside = mixBits(word + 1);
    kiln.freeOn = 0;
    kiln.week = 0;
    kiln.turns = kiln.turnsTaken;
  }
  for (const job of run.jobs) {
    job.inPlay = job.pieces;
    job.finished = job.finishedAtFirst;
    job.readyDay = -1;
    job.lastLot = null;
  }
  run.benches.forEach(clearLine);
  run.cones.forEach(clearLine);
  run.endsOn.fill(null);
  run.begun = 0;
}

/** A lot begins its step today. It came there on `sinceDay`, unless its caller knows better. */
export function startLot(run: Run, step: StepNow, pieces: number, from: Lot | null): Lot {
  const lot = run.lots[run.begun] ?? oneMore(run, step);
  run.begun += 1;
  lot.step = step;
  lot.pieces = pieces;
  lot.arrived = run.sinceDay < 0 ? 0 : run.sinceDay;
  lot.started = run.today;
  lot.from = from;
  return lot;
}

function oneMore(run: Run, step: StepNow): Lot {
  const lot = lotAt(step);
  run.lots.push(lot);
  return lot;
}

/** Notes on which day a lot is through; a day out of sight never comes. */
export function endLot(run: Run, lot: Lot, day: number): void {
  const { endsOn } = run;
  lot.ended = day;
  if (day >= endsOn.length) return;
  lot.next = endsOn[day] ?? null;
  endsOn[day] = lot;
}

/** The days of a step that begins today, as chance has it. */
export function drawDays(run: Run, step: StepNow): number {
  const from = step.kind === kinds.dry ? casesToday(run, step) : step.casesFrom;
  return run.cases[from + (nextBits(step) >>> 22)] ?? 0;
}

function casesToday({ plan, today }: Run, step: StepNow): number {
  const { seasons } = plan.cases;
  return plan.casesFrom[step.place * seasons + (plan.seasonOf[today] ?? 0)] ?? 0;
}

/** One of the cases from a first one on, each as likely as the others. */
export function caseFrom(bits: number, firstCase: number): number {
  const share = (bits >>> 0) / 4_294_967_296;
  return Math.min(casesOfDays - 1, firstCase + Math.floor(share * (casesOfDays - firstCase)));
}
