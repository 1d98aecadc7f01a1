/** How clay becomes a piece here. */
export type Technique = 'slab_relief' | 'slip_cast' | 'press_moulded' | 'thrown';

/** The techniques, the most asked for first. */
export const techniques = [
  'slab_relief',
  'slip_cast',
  'press_moulded',
  'thrown',
] as const satisfies readonly Technique[];

/** The states of the making, from wet clay to a piece that can hang, in their order. */
export const pegs = ['clay', 'dry', 'bisque', 'glaze', 'assembled', 'finished'] as const;
/** One of {@link pegs}: what a step fills on a commission's band. */
export type Peg = (typeof pegs)[number];

/** What can hold pieces at a step: hands at a bench, a kiln, the air, time, or the collector. */
export const stepKinds = ['work', 'fire', 'dry', 'wait', 'collector'] as const;
/** One of {@link stepKinds}. */
export type StepKind = (typeof stepKinds)[number];

/** One step of a route: where pieces stand, what holds them, and for how many days. */
export type RouteStep = {
  /** Reads after "moved to": `drying`, `the bisque kiln`. */
  name: string;
  peg: Peg;
  kind: StepKind;
  /** The bench of a `work` step; null at the others. */
  benchId: string | null;
  /** The cone of a `fire` step; empty at the others. */
  cone: string;
  /** Whole days at the step itself: nobody's waiting for a bench or a full kiln is in them. */
  shortestDays: number;
  likelyDays: number;
  longestDays: number;
  /** It begins when all pieces of the job are there. */
  isTogether: boolean;
  /** What is thought to be lost here, in percent: a decimal string, '0' to below '100'. */
  lossPercent: string;
  /** Hands at it for one piece, in minutes: a decimal string. */
  minutesEach: string;
  /** What to mind while pieces stand there; empty when nothing is. */
  caution: string;
};

/** What of a step its days are told from. */
export type StepDays = Pick<
  RouteStep,
  'name' | 'peg' | 'shortestDays' | 'likelyDays' | 'longestDays'
>;

/** A technique in words, for lists and headings. */
export const techniqueWords: Readonly<Record<Technique, string>> = {
  slab_relief: 'hand-built slab relief',
  slip_cast: 'slip-cast',
  press_moulded: 'press-moulded',
  thrown: 'thrown',
};

/** What holds pieces, in words, for a form. */
export const stepKindWords: Readonly<Record<StepKind, string>> = {
  work: 'hands at a bench',
  fire: 'a kiln',
  dry: 'drying',
  wait: 'waiting, such as curing',
  collector: 'the collector’s answer',
};

/** A peg in words, for a form. */
export const pegWords: Readonly<Record<Peg, string>> = {
  clay: 'clay',
  dry: 'dry',
  bisque: 'bisque',
  glaze: 'glaze',
  assembled: 'assembled',
  finished: 'finished',
};

/** A peg by the name that is kept in a row; a name that is no longer used counts as clay. */
export function pegOf(name: string): Peg {
  return pegs.find((peg) => peg === name) ?? 'clay';
}

/**
 * Where a step stands along the bench, for putting rows from clay to finished.
 *
 * @param of its peg, its position from 1 and how many steps its route has
 * @returns lower is nearer the clay
 */
export function benchPlace(of: { peg: Peg; position: number; steps: number }): number {
  return pegs.indexOf(of.peg) + Math.min(0.99, of.position / (of.steps + 1));
}

/**
 * What to mind while pieces stand at a step: its own caution, and before a kiln also the kiln's,
 * because wet clay is found out before the door is shut, not after.
 *
 * @param position from 1; a position outside the route has nothing to mind
 */
export function cautionsAt(
  steps: readonly Pick<RouteStep, 'peg' | 'caution'>[],
  position: number,
): string[] {
  const here = steps[position - 1];
  if (!here) return [];
  const next = steps[position];
  const ahead = next?.peg === 'bisque' && here.peg !== 'bisque' ? next.caution : '';
  return [here.caution, ahead].filter((caution) => caution !== '');
}

/** What a route takes, in likely days, without any waiting for a bench or a kiln. */
export function likelyDaysOf(steps: readonly Pick<RouteStep, 'likelyDays'>[]): number {
  return steps.reduce((sum, step) => sum + step.likelyDays, 0);
}
