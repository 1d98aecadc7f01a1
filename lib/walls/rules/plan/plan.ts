import { ok, refuse, type Result } from '@/lib/platform/result';
import type { HangingAsked, PieceFacts } from './asked';
import { candidatesFor, rowApartUm, type Candidate } from './candidates';
import { factorAsked, pieceRefusals, wallRefusals } from './checks';
import { placeOn, type Place } from './place';
import type { PlanRefusal } from './refusals';
import { inWoodUm, strengthOf, type Strength } from './strength';
import { nearServices, studsOf } from './uprights';
import type { WallFacts } from './wall';

/** One hole: from the left end of the wall and from the floor, in whole micrometres. */
export type Hole = { readonly xUm: number; readonly yUm: number };

/** How a piece hangs. Loads are weights in whole grams, rounded to the side that is safe. */
export type FixingPlan = {
  readonly place: Place;
  readonly holes: readonly Hole[];
  /** The studs of the wall as far as the piece reaches, whether the cleat is screwed to them or not. */
  readonly studsUm: readonly number[];
  /** Where along the wall it is fixed, and with how many at each place. */
  readonly atUms: readonly number[];
  readonly rows: number;
  /** The load on the fixing that bears most: down, off the wall, and both together. */
  readonly pushEachG: number;
  readonly pullEachG: number;
  readonly loadEachG: number;
  /** What that fixing may bear in the direction of its load. */
  readonly bearsEachG: number;
  /** What one may bear pulled straight out, and sideways, each alone. */
  readonly bearsPullG: number;
  readonly bearsPushG: number;
  readonly factorAsked: number;
  /** How many times over it is borne: by the fixings, or by the rail where that is less. */
  readonly factor: number;
  /** How far a screw goes into the wood; null for an anchor. */
  readonly inWoodUm: number | null;
};

/** What a plan is asked for. */
export type PlanAsked = {
  readonly wall: WallFacts;
  readonly piece: PieceFacts;
  readonly asked: HangingAsked;
};

/**
 * How a piece hangs on a wall: where the cleat is, which studs it meets, how many fixings of the
 * kind that was asked for, and how many times over they bear it.
 *
 * It is no engineer’s approval. Whoever hangs it checks it on site; local codes and a licensed
 * contractor decide.
 *
 * @returns the plan with the fewest fixings that will do; refuses with every reason there is
 *   against it: the weight, the size and the factor, then the wall and what goes into it, then the
 *   place, then studs and holes, and at last the strength
 * @source AWC NDS 2018 for screws in wood, the maker’s rating for anchors, plain statics; the rest
 *   is common practice, named beside each
 * @example 100 lb, 30 in wide, wood studs 16 in apart: the cleat meets two of them, and three are
 *   asked for
 */
export function planFixings(of: PlanAsked): Result<FixingPlan, readonly PlanRefusal[]> {
  const { wall, piece, asked } = of;
  const absurd = pieceRefusals(piece, asked);
  if (absurd.length > 0) return refuse(absurd);
  const against = wallRefusals(wall, piece, asked);
  if (against.some(isTheWallItself)) return refuse(against);
  const { place, refusals: misplaced } = placeOn(wall, piece, asked);
  if (!place) return refuse([...against, ...misplaced]);
  const found = candidatesFor({ wall, piece, asked, place });
  const refusals = [...against, ...misplaced, ...found.refusals];
  if (against.length > 0 || found.candidates.length === 0) return refuse(refusals);
  const chosen = strongEnough(found.candidates, of);
  const plan = planOf(chosen, place, of);
  const last = [...refusals, ...drilledRefusals(plan, wall), ...weakRefusals(plan)];
  return last.length > 0 ? refuse(last) : ok(plan);
}

function isTheWallItself({ code }: PlanRefusal): boolean {
  return code === 'wall_not_known' || code === 'board_alone';
}

type Chosen = { candidate: Candidate; strength: Strength; factor: number };

/** The candidate with the fewest fixings that will do, or the strongest when none will. */
function strongEnough(candidates: readonly Candidate[], of: PlanAsked): Chosen {
  const tried = candidates.map((candidate) => {
    const strength = strengthOf(candidate, of);
    return { candidate, strength, factor: Math.min(strength.factor, railFactor(of)) };
  });
  const asked = factorAsked(of.wall, of.asked);
  const strongest = tried.reduce((best, one) => (one.factor > best.factor ? one : best));
  return tried.find(({ factor }) => factor >= asked) ?? strongest;
}

function railFactor({ asked: { cleat }, piece }: PlanAsked): number {
  return cleat.railRatedG === null ? Infinity : cleat.railRatedG / piece.weightG;
}

function planOf({ candidate, strength, factor }: Chosen, place: Place, of: PlanAsked): FixingPlan {
  const { wall, asked } = of;
  const { fixing } = asked;
  const { load } = strength;
  return {
    place,
    holes: holesOf(candidate, place, rowApartUm(fixing)),
    studsUm: studsOf(wall, place.piece.leftUm + place.piece.widthUm),
    atUms: candidate.atUms,
    rows: candidate.rows,
    pushEachG: Math.ceil(load.pushG),
    pullEachG: Math.ceil(load.pullG),
    loadEachG: Math.ceil(load.togetherG),
    bearsEachG: Math.floor(strength.bearsG),
    bearsPullG: Math.floor(strength.pullG),
    bearsPushG: Math.floor(strength.pushG),
    factorAsked: factorAsked(wall, asked),
    factor,
    inWoodUm: fixing.by === 'screw' ? inWoodUm(wall, asked, fixing.lengthUm) : null,
  };
}

/** The holes, left to right and from the top down; the rows stand about the middle of the cleat. */
function holesOf({ atUms, rows }: Candidate, { cleatUm }: Place, apartUm: number): Hole[] {
  const firstUm = cleatUm + ((rows - 1) * apartUm) / 2;
  return atUms.flatMap((xUm) =>
    Array.from({ length: rows }, (_, row) => ({ xUm, yUm: Math.round(firstUm - row * apartUm) })),
  );
}

function drilledRefusals(plan: FixingPlan, { obstacles }: WallFacts): PlanRefusal[] {
  return nearServices(plan.atUms, plan.place.cleatUm, obstacles).map(({ what, atUm }) => ({
    code: 'fixing_near_services',
    what,
    atUm,
  }));
}

function weakRefusals({ factor, factorAsked: asked }: FixingPlan): PlanRefusal[] {
  return factor >= asked ? [] : [{ code: 'too_weak', factor, asked }];
}
