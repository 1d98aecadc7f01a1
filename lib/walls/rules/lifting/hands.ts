import { ok, refuse, type Result } from '@/lib/platform/result';
import { formatLength, formatWeight, umPerInch, type LengthSystem } from '@/lib/units/rules';
import { liftingIndex, liftingLimit } from './limit';
import { handsFromG } from './weights';

/** One person, two, three, or a lift table and hired hands. */
export type Hands = 'one' | 'two' | 'three' | 'lift';

/** Who lifts, in words. */
export const handsWords: Readonly<Record<Hands, string>> = {
  one: 'one person',
  two: 'two people',
  three: 'three people',
  lift: 'a lift table, or hired hands with one',
};

/** A piece on its way from the floor to the wall; lengths in micrometres, weight in grams. */
export type Raising = {
  readonly weightG: number;
  readonly widthUm: number;
  readonly heightUm: number;
  readonly depthUm: number;
  /** What its lower edge stands on at first: 0 for the floor, or the height of a table. */
  readonly standsAtUm: number;
  /** Where its lower edge will hang above the floor. */
  readonly bottomUm: number;
};

/** Why nobody can be told for a lift. */
export type HandsRefusal = { code: 'nothing_to_lift' };

/** How much of their sum two and three people may lift together. */
export type TeamShares = { readonly two: number; readonly three: number };

/**
 * Two thirds of the sum for two, a half for three: the equation itself says nothing of teams.
 *
 * @source British practice for manual handling (HSE), from memory; a setting, not a law
 */
export const teamShares: TeamShares = { two: 2 / 3, three: 1 / 2 };

/** What a number of people may lift of this piece, and how far beyond that it is. */
export type HandsShare = {
  readonly people: 1 | 2 | 3;
  readonly limitG: number;
  /** The weight divided by that; null where nothing may be lifted so. */
  readonly index: number | null;
};

/** Who is to lift, and why; grams. */
export type HandsTold = {
  readonly advised: Hands;
  readonly byEquation: Hands;
  readonly byPractice: Hands;
  readonly shares: readonly HandsShare[];
  /** Full sentences: what is advised, and what it rests on. */
  readonly words: readonly string[];
  readonly steps: readonly string[];
};

const order: readonly Hands[] = ['one', 'two', 'three', 'lift'];
const fourFeetUm = 48 * umPerInch;
const eightFeetUm = 96 * umPerInch;

/**
 * Who is to lift a piece to its place: the stricter of the lifting equation and of practice.
 *
 * Reckoned for one lift with both hands at the middle of its sides, close to the body, not turned,
 * with a fair grip, the floor before the wall clear. Whatever stands there, a ladder or a stair is
 * no part of the equation: then it is a lift, or hired hands.
 *
 * @param system in which the sentences speak
 * @returns refuses a weight or a side that is not above zero
 * @source the equation: NIOSH 94-110, with its own way to tell the distance of the hands from the
 *   depth of the load; practice: two over 50 lb or 4 ft, three over 100 lb, a lift table or hired
 *   hands over 150 lb or above 8 ft
 * @example 100 lb, 30 × 48 in, to eye height // a lift by the equation, three people by practice
 */
export function handsFor(
  raising: Raising,
  system: LengthSystem,
  team: TeamShares = teamShares,
): Result<HandsTold, HandsRefusal> {
  const { weightG, widthUm, heightUm, depthUm } = raising;
  const isThere = [weightG, widthUm, heightUm, depthUm].every((number) => number > 0);
  if (!isThere || raising.standsAtUm < 0 || raising.bottomUm < 0) {
    return refuse({ code: 'nothing_to_lift' });
  }
  const alone = aloneG(raising);
  const shares = ([1, 2, 3] as const).map((people) => {
    const limitG = Math.floor(alone * togetherOf(people, team));
    return { people, limitG, index: liftingIndex(weightG, limitG) };
  });
  const byEquation = byEquationOf(shares);
  const byPractice = byPracticeOf(raising);
  const advised = order[Math.max(order.indexOf(byEquation), order.indexOf(byPractice))] ?? 'lift';
  const told = { advised, byEquation, byPractice, shares };
  return ok({
    ...told,
    words: wordsOf(told, raising, system),
    steps: stepsOf(told, raising, system),
  });
}

function togetherOf(people: 1 | 2 | 3, team: TeamShares): number {
  if (people === 1) return 1;
  return people === 2 ? 2 * team.two : 3 * team.three;
}

/** What one may lift, in grams: the worse of the start and the end of the lift. */
function aloneG(raising: Raising): number {
  const half = raising.heightUm / 2;
  const start = (raising.standsAtUm + half) / 10_000;
  const end = (raising.bottomUm + half) / 10_000;
  const limits = [start, end].map((vertical) => {
    const limit = liftingLimit({
      ...{ horizontal: handsOutCm(raising.depthUm, vertical), vertical },
      ...{ travel: Math.abs(end - start), asymmetryDeg: 0 },
      ...{ liftsPerMinute: 0.2, hours: 1, coupling: 'fair' },
    });
    return limit.ok ? limit.value.limit : 0;
  });
  return Math.min(...limits) * 1_000;
}

/** How far out the hands are for a load of this depth, as NIOSH 94-110 tells it. */
function handsOutCm(depthUm: number, vertical: number): number {
  return (vertical >= 25 ? 20 : 25) + depthUm / 20_000;
}

function byEquationOf(shares: readonly HandsShare[]): Hands {
  const enough = shares.find(({ index }) => index !== null && index <= 1);
  return order[(enough?.people ?? 4) - 1] ?? 'lift';
}

function byPracticeOf({ weightG, widthUm, heightUm, bottomUm }: Raising): Hands {
  if (weightG > handsFromG.lift || bottomUm + heightUm > eightFeetUm) return 'lift';
  if (weightG > handsFromG.three) return 'three';
  const isLarge = widthUm > fourFeetUm || heightUm > fourFeetUm;
  return weightG > handsFromG.two || isLarge ? 'two' : 'one';
}

type Told = Omit<HandsTold, 'words' | 'steps'>;

function wordsOf(told: Told, { weightG }: Raising, system: LengthSystem): string[] {
  const weight = formatWeight(weightG, system === 'in' ? 'lb' : 'kg');
  const words = [`Lift ${weight} with ${handsWords[told.advised]}.`];
  const three = told.shares.at(-1);
  if (told.byEquation === 'lift') {
    words.push(
      three?.index
        ? `Even three people would each lift ${times(three.index)} what the lifting equation advises.`
        : 'So high, or so far to go, the lifting equation allows no lift by hand at all.',
    );
  }
  if (told.advised !== told.byPractice) {
    words.push(`Common practice would be content with ${handsWords[told.byPractice]}.`);
  } else if (told.advised !== told.byEquation) {
    words.push(`The equation alone would be content with ${handsWords[told.byEquation]}.`);
  }
  return words;
}

/** A ratio in a sentence: `1.9 times`; never less than it is. */
function times(index: number): string {
  return `${Math.ceil(index * 10) / 10} times`;
}

function stepsOf(told: Told, raising: Raising, system: LengthSystem): string[] {
  const weightSystem = system === 'in' ? 'lb' : 'kg';
  const half = Math.round(raising.heightUm / 2);
  const [start, end] = [raising.standsAtUm + half, raising.bottomUm + half];
  const limits = told.shares.map(({ people, limitG }) => {
    const who = { 1: 'One person', 2: 'Two together', 3: 'Three together' }[people];
    return `${who} may lift ${limitG > 0 ? formatWeight(limitG, weightSystem) : 'nothing'} so.`;
  });
  return [
    `The hands go from ${formatLength(start, system)} to ${formatLength(end, system)} above the floor.`,
    ...limits,
    `The piece weighs ${formatWeight(raising.weightG, weightSystem)}.`,
  ];
}
