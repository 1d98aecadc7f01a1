import { umPerInch } from '@/lib/units/rules';
import { carefulSafetyFactor, type AnchorKind, type HangingAsked, type PieceFacts } from './asked';
import { twoStudsG } from './candidates';
import type { PlanRefusal } from './refusals';
import { inWoodUm } from './strength';
import type { WallFacts, WallKind } from './wall';

/** The heaviest piece that is planned here, in grams: 300 lb. Above it an engineer plans. */
export const planMostG = 136_078;
/** The longest side that is planned here: 16 ft, in micrometres; and how far it may stand out. */
const sideMostUm = 192 * umPerInch;
const outMostUm = 24 * umPerInch;
/** How much of a screw sits in wood at least: 1 1/2 in, common practice. */
export const inWoodLeastUm = 38_100;
/** How deep a stud is where nobody measured it: 3 1/2 in. */
const studDeepUm = 88_900;
/** From this gauge on, thinner, the steel of a stud is light. */
const lightGauge = 21;

/**
 * What there is against a piece and its figures, whatever the wall.
 *
 * @returns an absurd weight, an absurd size, a factor that is not asked for here
 */
export function pieceRefusals(piece: PieceFacts, asked: HangingAsked): PlanRefusal[] {
  const refusals: PlanRefusal[] = [];
  const { weightG, widthUm, heightUm, depthUm } = piece;
  if (!(weightG > 0 && weightG <= planMostG)) {
    refusals.push({ code: 'no_such_weight', mostG: planMostG });
  }
  const isSized = [widthUm, heightUm].every((side) => side > 0 && side <= sideMostUm);
  if (!isSized || !(depthUm > 0 && depthUm <= outMostUm)) {
    refusals.push({ code: 'no_such_size', mostUm: sideMostUm, outMostUm });
  }
  const { safetyFactor } = asked;
  if (!(safetyFactor >= 2 && safetyFactor <= 4)) refusals.push({ code: 'factor_out_of_range' });
  return refusals;
}

/** How many times over the fixings are asked to bear it, with what the wall itself asks for. */
export function factorAsked(wall: WallFacts, asked: HangingAsked): number {
  const isCareful = wall.isOverPeople === true || wall.wall === 'gypsum_board';
  return isCareful ? Math.max(asked.safetyFactor, carefulSafetyFactor) : asked.safetyFactor;
}

/**
 * What there is against a wall and against these fixings in it.
 *
 * @returns in this order: nobody knows the wall, board alone under a heavy piece, loose plaster,
 *   wood or rust outdoors, a fixing that does not belong in this wall, steel too light, nothing
 *   rated, a screw too short or too long
 * @source common practice; the anchors by what their makers make them for
 */
export function wallRefusals(
  wall: WallFacts,
  piece: PieceFacts,
  asked: HangingAsked,
): PlanRefusal[] {
  if (wall.wall === null) return [{ code: 'wall_not_known' }];
  const { weightG } = piece;
  const isBoard = wall.wall === 'gypsum_board' && asked.backingUm === null;
  if (isBoard && weightG > twoStudsG) return [{ code: 'board_alone', weightG, mostG: twoStudsG }];
  const isLoose = wall.wall === 'plaster_on_lath' && wall.isPlasterSound === false;
  return [
    ...(isLoose ? [{ code: 'plaster_not_sound' as const }] : []),
    ...weatherRefusals(wall, asked),
    ...backingRefusals(wall, asked),
    ...belongs(wall.wall, wall, { weightG, asked }),
    ...ratedRefusals(asked),
    ...screwRefusals(wall, asked),
  ];
}

function weatherRefusals({ isOutdoors }: WallFacts, asked: HangingAsked): PlanRefusal[] {
  if (isOutdoors !== true) return [];
  return [
    ...(asked.cleat.made === 'aluminium' ? [] : [{ code: 'wood_outdoors' as const }]),
    ...(asked.fixing.isStainless ? [] : [{ code: 'rusts_outdoors' as const }]),
  ];
}

function backingRefusals({ hasBacking }: WallFacts, asked: HangingAsked): PlanRefusal[] {
  const { backingUm, fixing } = asked;
  if (fixing.by !== 'screw') return [];
  const isClaimed = backingUm !== null && (hasBacking !== true || !(backingUm > 0));
  return isClaimed ? [{ code: 'backing_not_measured' }] : [];
}

const anchorsIn: Readonly<Record<WallKind, readonly AnchorKind[]>> = {
  wood_studs: [],
  plaster_on_lath: [],
  steel_studs: ['toggle'],
  gypsum_board: ['toggle'],
  brick: ['screw_anchor', 'sleeve'],
  block: ['sleeve', 'toggle'],
  concrete: ['screw_anchor', 'sleeve', 'wedge'],
};

const insteadWords: Readonly<Record<WallKind, string>> = {
  wood_studs: 'Into wood studs go screws: nothing that spreads in the board holds such a piece.',
  plaster_on_lath:
    'Behind plaster on lath only the studs hold: screws into them, never anything in the lath.',
  steel_studs:
    'Wood screws do not hold in steel studs: use toggles through the face of the stud, rated by their maker, or have wood put in.',
  gypsum_board: 'In board alone only rated toggles are of use, and only for a light piece.',
  brick: 'In brick use sleeve or screw anchors, into the brick and not into the joint.',
  block:
    'Block is hollow unless somebody proved it solid: use sleeves or toggles made for it, no wedge anchors and no screws.',
  concrete: 'In concrete use screw, sleeve or wedge anchors to the depth their maker says.',
};

function belongs(
  kind: WallKind,
  { steelGauge }: WallFacts,
  of: { weightG: number; asked: HangingAsked },
): PlanRefusal[] {
  const { fixing, backingUm } = of.asked;
  const inBacking = fixing.by === 'screw' && backingUm !== null;
  if (inBacking) return [];
  const isWood = kind === 'wood_studs' || kind === 'plaster_on_lath';
  const fits = fixing.by === 'screw' ? isWood : anchorsIn[kind].includes(fixing.anchor);
  if (!fits) return [{ code: 'wrong_fixing', wall: kind, words: insteadWords[kind] }];
  const isLight = (steelGauge ?? lightGauge) >= lightGauge;
  const isTooLight = kind === 'steel_studs' && isLight && of.weightG > twoStudsG;
  return isTooLight ? [{ code: 'steel_too_light' }] : [];
}

function ratedRefusals({ cleat, fixing }: HangingAsked): PlanRefusal[] {
  const refusals: PlanRefusal[] = [];
  if (fixing.by === 'anchor') {
    const { ratedPullG, ratedPushG, embedUm, leastApartUm } = fixing;
    const isRated = [ratedPullG, ratedPushG, embedUm, leastApartUm].every((told) => told > 0);
    if (!isRated) refusals.push({ code: 'not_rated', what: 'anchor' });
  }
  if (cleat.made === 'aluminium' && !((cleat.railRatedG ?? 0) > 0)) {
    refusals.push({ code: 'not_rated', what: 'rail' });
  }
  return refusals;
}

function screwRefusals(wall: WallFacts, asked: HangingAsked): PlanRefusal[] {
  const { fixing, backingUm } = asked;
  if (fixing.by !== 'screw') return [];
  if (wall.coverUm === null) return [{ code: 'cover_not_known' }];
  const sunkUm = inWoodUm(wall, asked, fixing.lengthUm);
  const heldUm = backingUm === null ? sunkUm : Math.min(sunkUm, backingUm);
  if (heldUm < inWoodLeastUm) {
    return [{ code: 'too_little_in_wood', inWoodUm: heldUm, leastUm: inWoodLeastUm }];
  }
  const depthUm = backingUm === null ? (wall.studDepthUm ?? studDeepUm) : studDeepUm;
  return sunkUm > depthUm ? [{ code: 'through_the_stud', inWoodUm: sunkUm, depthUm }] : [];
}
