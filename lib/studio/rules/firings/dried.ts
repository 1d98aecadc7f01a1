import { daysBetween, type Day } from '@/lib/dates/rules';
import { movesThatHold, type Move } from '@/lib/studio/rules';

/** A step of a route, as far as drying asks. */
export type StepDrying = { readonly kind: string; readonly shortestDays: number };

/** Pieces of a load that stood at their drying for fewer days than it commonly takes. */
export type DriedShort = {
  readonly pieces: number;
  /** The fewest days that any of them stood there. */
  readonly driedDays: number;
  readonly needsDays: number;
  /** The last day on which one of them left it. */
  readonly leftOn: Day;
};

/**
 * For how many days clay dries at the least in a month: the step’s shortest days, times the season.
 *
 * @param percent of the month, 100 for a dry one
 * @returns whole days, rounded up
 */
export function driesForDays(shortestDays: number, percent: number): number {
  return Math.ceil((shortestDays * percent) / 100);
}

/**
 * Which pieces of a load stood at their drying step for fewer days than they should. Who came first
 * leaves first; those that left last still stand at the steps after it.
 *
 * @param job its steps from position 1 on, and its moves in order
 * @param of `position` the firing step; `pieces` how many go in; `inFire` how many that stand there
 *   are in a kiln already; `percentOf` the season’s percent on a day
 * @returns null when all have dried long enough, or no drying comes before this firing
 * @source common practice: only what is bone dry goes into a kiln
 */
export function driedShort(
  job: { steps: readonly StepDrying[]; moves: readonly Move[]; standing: readonly number[] },
  of: { position: number; pieces: number; inFire: number; percentOf: (day: Day) => number },
): DriedShort | null {
  const place = dryingBefore(job.steps, of.position);
  const step = place === null ? undefined : job.steps[place - 1];
  if (place === null || !step) return null;
  const stays = staysAt(movesThatHold(job.moves), place);
  const between = job.standing.slice(place + 1, of.position).reduce((sum, each) => sum + each, 0);
  const here = job.standing[of.position] ?? 0;
  if (here === 0) return null;
  const atKiln = stays.slice(0, stays.length - between).slice(-here);
  const goIn = atKiln.slice(of.inFire, of.inFire + of.pieces);
  const short = goIn.flatMap((stay) => {
    const needsDays = driesForDays(step.shortestDays, of.percentOf(stay.cameOn));
    const driedDays = daysBetween(stay.cameOn, stay.leftOn);
    return driedDays < needsDays ? [{ driedDays, needsDays, leftOn: stay.leftOn }] : [];
  });
  const worst = short.toSorted((one, other) => one.driedDays - other.driedDays)[0];
  if (!worst) return null;
  const leftOn =
    short
      .map((stay) => stay.leftOn)
      .toSorted()
      .at(-1) ?? worst.leftOn;
  return { ...worst, pieces: short.length, leftOn };
}

/** The drying step before a firing, when no other firing lies between. */
function dryingBefore(steps: readonly StepDrying[], position: number): number | null {
  for (let place = position - 1; place >= 1; place -= 1) {
    const kind = steps[place - 1]?.kind;
    if (kind === 'dry') return place;
    if (kind === 'fire') return null;
  }
  return null;
}

type Stay = { cameOn: Day; leftOn: Day };

/** When each piece came to a step and went on from it, in the order in which they went. */
function staysAt(held: readonly Move[], place: number): Stay[] {
  const came: Day[] = [];
  const stays: Stay[] = [];
  for (const move of held) {
    if (move.toPosition === place) {
      for (let piece = 0; piece < move.pieces; piece += 1) came.push(move.movedOn);
    }
    if (move.fromPosition !== place) continue;
    const gone = came.splice(0, move.pieces);
    // What was lost there dries for nobody.
    if (move.toPosition < place) continue;
    for (const cameOn of gone) stays.push({ cameOn, leftOn: move.movedOn });
  }
  return stays;
}
