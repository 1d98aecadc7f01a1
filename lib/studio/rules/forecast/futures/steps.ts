import type { Calendar } from '../calendar';
import type { LossTable } from '../losses';

/** The kinds of step by their numbers; those up to `fire` wait for something. */
export const kinds = { work: 0, fire: 1, dry: 2, wait: 3, collector: 4 } as const;

/** A job while a future goes on. */
export type JobNow = {
  readonly pieces: number;
  readonly wanted: number;
  readonly pieceCm3: number;
  readonly finishedAtFirst: number;
  /** How many of its pieces stand somewhere, the finished ones among them. */
  inPlay: number;
  finished: number;
  /** The day on which enough were finished; -1 until then. */
  readyDay: number;
  /** The lot that made it ready. */
  lastLot: Lot | null;
};

/** What of a step is the same in every future. */
export type StepFixed = {
  /** Its place among the steps of all jobs. */
  readonly place: number;
  readonly job: JobNow;
  readonly kind: number;
  readonly isTogether: boolean;
  /** Where they wait for their turn; null where they need neither bench nor kiln. */
  readonly line: Line | null;
  readonly seat: number;
  /** Null where nothing is lost. */
  readonly losses: LossTable | null;
  /** Where its cases of days begin; of drying those of the first season. */
  readonly casesFrom: number;
  /** The name of its luck. */
  readonly word: number;
  /** How many had come so far or further when the future began. */
  readonly reachedAtFirst: number;
};

/** A step of a job while a future goes on. Whole numbers of 32 bits with a sign are kept best. */
export type StepNow = StepFixed & {
  /** The step after it; null after the last. */
  next: StepNow | null;
  /** Where lost pieces begin anew; null for here. */
  anewAt: StepNow | null;
  stream: number;
  waits: number;
  waitsSince: number;
  waitsFrom: Lot | null;
  gathered: number;
  reached: number;
};

/** Pieces that go through a step together. */
export type Lot = {
  step: StepNow;
  pieces: number;
  arrived: number;
  started: number;
  ended: number;
  /** The lot they came from; null when they stood here today. */
  from: Lot | null;
  /** The next of the lots that end on the same day. */
  next: Lot | null;
};

/**
 * Who waits for a bench, or for a kiln of one cone. Every step that may wait has a seat, one bit;
 * seats stand in the order of turns, so that the first bit that is set is whose turn it is.
 */
export type Line = {
  readonly steps: StepNow[];
  waiting: Int32Array;
  /** Of a bench: when somebody works there, and how many more jobs it takes. */
  readonly calendar: Calendar;
  readonly atOnce: number;
  free: number;
  /** Of a cone: what waits in cm³, and since when. */
  volume: number;
  oldest: number;
};

/** A kiln while a future goes on. */
export type KilnNow = {
  readonly at: number;
  readonly volume: number;
  /** What waits together before it is lit. */
  readonly leastVolume: number;
  readonly longestWait: number;
  readonly turnsAWeek: number;
  readonly turnsTaken: number;
  /** What it is filled from, one line a cone. */
  readonly lines: readonly Line[];
  readonly calendar: Calendar;
  readonly word: number;
  /** The luck of the loads to come, and of what is in it today. */
  loads: number;
  inside: number;
  freeOn: number;
  week: number;
  turns: number;
};

/** A step as it is before the first future. */
export function stepFrom(fixed: StepFixed): StepNow {
  return {
    place: fixed.place,
    job: fixed.job,
    kind: fixed.kind,
    isTogether: fixed.isTogether,
    line: fixed.line,
    seat: fixed.seat,
    losses: fixed.losses,
    casesFrom: fixed.casesFrom,
    word: fixed.word,
    reachedAtFirst: fixed.reachedAtFirst,
    next: null,
    anewAt: null,
    stream: 0,
    waits: 0,
    waitsSince: 0,
    waitsFrom: null,
    gathered: 0,
    reached: 0,
  };
}

/** A lot of no pieces yet, at some step. */
export function lotAt(step: StepNow): Lot {
  return { step, pieces: 0, arrived: 0, started: 0, ended: 0, from: null, next: null };
}

const nobody: JobNow = {
  pieces: 0,
  wanted: 0,
  pieceCm3: 0,
  finishedAtFirst: 0,
  inPlay: 0,
  finished: 0,
  readyDay: -1,
  lastLot: null,
};

/** Where pieces come from that replace lost ones. */
export const anew: Lot = lotAt(
  stepFrom({
    place: -1,
    job: nobody,
    kind: kinds.wait,
    isTogether: false,
    line: null,
    seat: -1,
    losses: null,
    casesFrom: 0,
    word: 0,
    reachedAtFirst: 0,
  }),
);

/** Whether pieces that come from there are made a second time. */
export function isAgain(from: Lot | null): boolean {
  let lot = from;
  while (lot !== null && lot !== anew) lot = lot.from;
  return lot === anew;
}
