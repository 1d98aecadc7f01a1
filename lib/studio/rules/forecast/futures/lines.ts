import type { Calendar } from '../calendar';
import type { Line, StepNow } from './steps';

/** A line in which nobody has a seat yet. */
export function lineFrom(calendar: Calendar, atOnce: number): Line {
  return {
    steps: [],
    waiting: new Int32Array(0),
    calendar,
    atOnce,
    free: atOnce,
    volume: 0,
    oldest: 0,
  };
}

/** Nobody waits any more. */
export function clearLine(line: Line): void {
  line.waiting.fill(0);
  line.free = line.atOnce;
  line.volume = 0;
  line.oldest = 0;
}

/** Lets a step sit down in its line, or get up again. */
export function sitDown(line: Line, seat: number): void {
  const { waiting } = line;
  waiting[seat >>> 5] = (waiting[seat >>> 5] ?? 0) | (1 << (seat & 31));
}

/** See {@link sitDown}. */
export function getUp(line: Line, seat: number): void {
  const { waiting } = line;
  waiting[seat >>> 5] = (waiting[seat >>> 5] ?? 0) & ~(1 << (seat & 31));
}

/**
 * The step of the first seat from a seat on that somebody waits on.
 *
 * @returns null when nobody waits there
 */
export function nextInLine(line: Line, fromSeat: number): StepNow | null {
  const { waiting } = line;
  let at = fromSeat >>> 5;
  if (at >= waiting.length) return null;
  let word = (waiting[at] ?? 0) & (-1 << (fromSeat & 31));
  while (word === 0) {
    at += 1;
    if (at >= waiting.length) return null;
    word = waiting[at] ?? 0;
  }
  return line.steps[at * 32 + 31 - Math.clz32(word & -word)] ?? null;
}
