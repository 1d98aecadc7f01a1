import type { ForecastJob, ForecastStudio, Holding } from '../model';

/**
 * Who waits for what. Every step of every job that needs a bench or a kiln has a seat, one bit, in
 * the row of that bench or cone; seats stand in the order of turns, so that the first bit that is
 * set is whose turn it is.
 */
export type Queues = {
  /** Benches first, then cones. */
  readonly count: number;
  readonly cones: readonly string[];
  /** The words of 32 seats that belong to a queue: from, and up to. */
  readonly wordFrom: Int32Array;
  readonly wordTo: Int32Array;
  /** The step that sits on a seat. */
  readonly stepAt: Int32Array;
  /** By step: its seat and its queue, -1 where it needs neither bench nor kiln. */
  readonly seatOf: Int32Array;
  readonly queueOf: Int32Array;
};

/** Gives every step that has to wait for something its seat. */
export function layQueues(studio: ForecastStudio, jobs: readonly ForecastJob[]): Queues {
  const all = jobs.flatMap((job) => job.steps);
  const cones = [...new Set(all.flatMap((step) => (step.kind === 'fire' ? [step.cone] : [])))];
  const benches = studio.benches.map((bench) => bench.id);
  const queueOf = Int32Array.from(all, (step) => queueAt(step, benches, cones));
  const count = benches.length + cones.length;
  const members = Array.from({ length: count }, () => [] as number[]);
  queueOf.forEach((queue, step) => members[queue]?.push(step));
  const wordFrom = new Int32Array(count);
  const wordTo = new Int32Array(count);
  let words = 0;
  members.forEach((steps, queue) => {
    wordFrom[queue] = words;
    words += Math.ceil(steps.length / 32);
    wordTo[queue] = words;
  });
  const stepAt = new Int32Array(words * 32).fill(-1);
  const seatOf = new Int32Array(all.length).fill(-1);
  members.forEach((steps, queue) =>
    steps.forEach((step, at) => {
      const seat = (wordFrom[queue] ?? 0) * 32 + at;
      seatOf[step] = seat;
      stepAt[seat] = step;
    }),
  );
  return { count, cones, wordFrom, wordTo, stepAt, seatOf, queueOf };
}

function queueAt(step: Holding, benches: readonly string[], cones: readonly string[]): number {
  if (step.kind === 'work') return benches.indexOf(step.bench);
  return step.kind === 'fire' ? benches.length + cones.indexOf(step.cone) : -1;
}

/** Lets a step sit down in its queue, or get up again. */
export function setSeat(waiting: Int32Array, seat: number, waits: boolean): void {
  const word = waiting[seat >>> 5] ?? 0;
  waiting[seat >>> 5] = waits ? word | (1 << (seat & 31)) : word & ~(1 << (seat & 31));
}

/**
 * The first seat from a seat on that somebody waits on.
 *
 * @param wordTo where the queue's words end
 * @returns -1 when nobody waits there
 */
export function nextSeat(waiting: Int32Array, fromSeat: number, wordTo: number): number {
  let at = fromSeat >>> 5;
  let word = (waiting[at] ?? 0) & (-1 << (fromSeat & 31));
  while (at < wordTo) {
    if (word !== 0) return at * 32 + 31 - Math.clz32(word & -word);
    at += 1;
    word = waiting[at] ?? 0;
  }
  return -1;
}
