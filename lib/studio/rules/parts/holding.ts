import { finishedPosition } from '@/lib/studio/rules/jobs/standing';
import type { NumberNow } from './fates';

/** A step as the way from here needs it. */
export type WayStep = {
  readonly name: string;
  readonly isTogether: boolean;
  /** Whole days at the step itself, without any waiting for a bench or a kiln. */
  readonly shortestDays: number;
  readonly likelyDays: number;
  readonly longestDays: number;
};

/** What one number holds up, and its way from here to where it is waited for. */
export type HoldsUp = {
  /** The step that begins when all are there; its position from 1. */
  readonly togetherAt: number;
  readonly togetherName: string;
  /** The numbers that stand there and wait for it. */
  readonly waiting: readonly number[];
  /** How many others are nearer to it than this one. */
  readonly ahead: number;
  /** The steps still before it, the one at which it stands included. */
  readonly steps: readonly string[];
  readonly shortestDays: number;
  readonly likelyDays: number;
  readonly longestDays: number;
};

/**
 * What a number holds up: the next step that begins when all are there, who waits at it, and how
 * far it is from here in days.
 *
 * The days are those of the steps alone; what is spent of the step it stands at is not taken off.
 *
 * @param of the number, and where it begins again when nothing of it is left: 0
 * @returns null when it stands at such a step or behind the last one, or the route has none
 */
export function holdsUp(
  steps: readonly WayStep[],
  of: NumberNow,
  all: readonly NumberNow[],
): HoldsUp | null {
  const here = of.best?.position ?? 0;
  if (here >= finishedPosition({ pieces: 1, steps })) return null;
  if (steps[here - 1]?.isTogether) return null;
  const at = steps.findIndex((step, index) => step.isTogether && index + 1 > here);
  const together = steps[at];
  if (!together) return null;
  const togetherAt = at + 1;
  const positionOf = (each: NumberNow) => each.best?.position ?? 0;
  const others = all.filter(({ number }) => number !== of.number);
  const left = steps.slice(Math.max(0, here - 1), at);
  const sum = (days: (step: WayStep) => number) =>
    left.reduce((total, step) => total + days(step), 0);
  return {
    togetherAt,
    togetherName: together.name,
    waiting: others.filter((each) => positionOf(each) === togetherAt).map(({ number }) => number),
    ahead: others.filter((each) => positionOf(each) > here && positionOf(each) < togetherAt).length,
    steps: left.map(({ name }) => name),
    shortestDays: sum((step) => step.shortestDays),
    likelyDays: sum((step) => step.likelyDays),
    longestDays: sum((step) => step.longestDays),
  };
}

/** Numbers that hold up a step at which others wait already, those farthest behind first. */
export function holdingUp(steps: readonly WayStep[], all: readonly NumberNow[]): NumberNow[] {
  return all
    .filter((each) => (holdsUp(steps, each, all)?.waiting.length ?? 0) > 0)
    .toSorted((one, other) => (one.best?.position ?? 0) - (other.best?.position ?? 0));
}
