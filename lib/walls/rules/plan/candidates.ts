import { umPerInch } from '@/lib/units/rules';
import { screws } from '../fixings/screws';
import type { FixingAsked, HangingAsked, PieceFacts } from './asked';
import type { Place } from './place';
import type { PlanRefusal } from './refusals';
import { evenlyAlong, fewestAlong, studsMet } from './uprights';
import type { WallFacts } from './wall';

/** From here on two studs, or two places, are asked for: 50 lb, in grams; common practice. */
export const twoStudsG = 22_680;
/** From here on three: 100 lb. */
export const threeStudsG = 45_359;
/** How many fixings stand in one upright, or along a cleat in masonry, at most. */
const rowsMost = 4;
const alongMost = 12;
/** How far off the only stud the middle of a piece may be: an inch. */
const besideMostUm = umPerInch;

/** Fixings as they could stand: along the cleat, and how many above each other at each place. */
export type Candidate = { readonly atUms: readonly number[]; readonly rows: number };

/** What holds: studs in their places, or something that holds wherever one drills. */
export type Holds = 'studs' | 'anywhere';

/** What the fixings of this wall go into. */
export function holdsIn(wall: WallFacts, asked: HangingAsked): Holds {
  const isStuds = wall.wall === 'wood_studs' || wall.wall === 'plaster_on_lath';
  const inWood = asked.fixing.by === 'screw' && asked.backingUm !== null;
  if (inWood) return 'anywhere';
  return isStuds || wall.wall === 'steel_studs' ? 'studs' : 'anywhere';
}

/**
 * The ways the fixings could stand, the fewest first, and what there is against it.
 *
 * @source common practice: two studs from 50 lb and three from 100 lb, two screws in each; masonry
 *   has a fixing at least every 16 inches
 */
export function candidatesFor(of: {
  wall: WallFacts;
  piece: PieceFacts;
  asked: HangingAsked;
  place: Place;
}): { candidates: Candidate[]; refusals: PlanRefusal[] } {
  return holdsIn(of.wall, of.asked) === 'studs' ? inStuds(of) : alongTheCleat(of);
}

type Of = Parameters<typeof candidatesFor>[0];

function inStuds({ wall, piece, asked, place }: Of): ReturnType<typeof candidatesFor> {
  if (wall.studSpacingUm === null || wall.firstStudUm === null) {
    return { candidates: [], refusals: [{ code: 'studs_not_known' }] };
  }
  const atUms = studsMet(wall, place);
  const { weightG } = piece;
  const needed = placesNeeded(weightG);
  if (atUms.length < needed) {
    const met = atUms.length;
    return { candidates: [], refusals: [{ code: 'too_few_studs', met, needed, weightG }] };
  }
  if (!isBetween(asked.middleUm, atUms)) {
    return { candidates: [], refusals: [{ code: 'middle_beside_studs' }] };
  }
  const rows = rowsTried(asked, weightG);
  if (rows.length === 0) {
    const wanted = asked.fixing.perUpright ?? leastRows(asked.fixing, weightG);
    return { candidates: [], refusals: [{ code: 'cleat_too_low', rows: wanted }] };
  }
  return { candidates: rows.map((many) => ({ atUms, rows: many })), refusals: [] };
}

function alongTheCleat({ piece, asked, place }: Of): ReturnType<typeof candidatesFor> {
  const least = fewestAlong(place, Math.max(placesNeeded(piece.weightG), 2));
  const { fixing } = asked;
  const apartUm = fixing.by === 'anchor' ? fixing.leastApartUm : 2 * umPerInch;
  const tried = fixing.perUpright === null ? upTo(least, alongMost) : [fixing.perUpright];
  const candidates = tried
    .filter((many) => many >= least)
    .map((many) => ({ atUms: evenlyAlong(place, many, apartUm), rows: 1 }))
    .filter(({ atUms }) => atUms.length > 0);
  const none: PlanRefusal[] = [{ code: 'cleat_too_short' }];
  return { candidates, refusals: candidates.length > 0 ? [] : none };
}

function placesNeeded(weightG: number): number {
  if (weightG >= threeStudsG) return 3;
  return weightG >= twoStudsG ? 2 : 1;
}

function isBetween(middleUm: number, atUms: readonly number[]): boolean {
  const [first, last] = [Math.min(...atUms), Math.max(...atUms)];
  const play = atUms.length === 1 ? besideMostUm : 0;
  return middleUm >= first - play && middleUm <= last + play;
}

/** How many rows can be tried in one stud: as many as were asked for, or what there is room for. */
function rowsTried(asked: HangingAsked, weightG: number): number[] {
  const room = Math.min(rowsRoom(asked), rowsMost);
  const { perUpright } = asked.fixing;
  if (perUpright !== null) return perUpright >= 1 && perUpright <= room ? [perUpright] : [];
  return upTo(leastRows(asked.fixing, weightG), room);
}

function leastRows({ by }: FixingAsked, weightG: number): number {
  return by === 'screw' && weightG >= twoStudsG ? 2 : 1;
}

/**
 * How many fixings there is room for above each other on a cleat.
 *
 * @source AWC NDS 2018, table 12.5.1: four diameters between them and to the edge they press on, one
 *   and a half to the other
 */
export function rowsRoom({ cleat, fixing }: HangingAsked): number {
  if (fixing.by === 'anchor') return 1 + Math.floor(cleat.heightUm / 2 / fixing.leastApartUm);
  const diameterUm = screws[fixing.screw].diameterIn * umPerInch;
  const edgesUm = (cleat.made === 'aluminium' ? 3 : 5.5) * diameterUm;
  if (cleat.heightUm < edgesUm) return 0;
  return 1 + Math.floor((cleat.heightUm - edgesUm) / rowApartUm(fixing));
}

/** How far apart the rows of a fixing are, in whole micrometres. */
export function rowApartUm(fixing: FixingAsked): number {
  if (fixing.by === 'anchor') return fixing.leastApartUm;
  return Math.round(4 * screws[fixing.screw].diameterIn * umPerInch);
}

function upTo(least: number, most: number): number[] {
  return Array.from({ length: Math.max(most - least + 1, 0) }, (_, at) => least + at);
}
