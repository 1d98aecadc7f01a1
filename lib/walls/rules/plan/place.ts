import { umPerInch } from '@/lib/units/rules';
import { hangingHeight } from '../hanging';
import type { HangingAsked, PieceFacts } from './asked';
import type { PlanRefusal } from './refusals';
import { obstacleNamed, type Obstacle, type WallFacts } from './wall';

/** How far a piece is lifted to go over its cleat: 1 1/2 inches, common practice. */
export const liftOverUm = 38_100;
/** How much shorter a cleat is than its piece where nothing is said: an inch at either end. */
const cleatShortUm = 2 * umPerInch;

/** A rectangle on the wall, from its left end and from the floor; whole micrometres. */
export type Rectangle = {
  readonly leftUm: number;
  readonly bottomUm: number;
  readonly widthUm: number;
  readonly heightUm: number;
};

/** Where the piece and its cleat are on the wall. */
export type Place = {
  readonly piece: Rectangle;
  readonly cleat: Rectangle;
  /** The middle of the cleat above the floor. */
  readonly cleatUm: number;
};

/**
 * Where a piece and its cleat are on the wall, and what there is against it.
 *
 * @returns the place as far as it can be told, and every reason against it: the cleat is not behind
 *   the piece, the ceiling is not known, it does not fit, there is no room above, it stands over the
 *   end, behind furniture, or on something
 */
export function placeOn(
  wall: WallFacts,
  piece: PieceFacts,
  asked: HangingAsked,
): { place: Place | null; refusals: PlanRefusal[] } {
  const hung = { heightUm: piece.heightUm, cleatFromTopUm: asked.cleat.fromTopUm };
  const height = hangingHeight(hung, asked.height);
  if (!height.ok) {
    const { refusal } = height;
    return refusal.code === 'lower_edge_below_the_floor'
      ? { place: null, refusals: [belowTheFloor(wall, piece, refusal.missingUm)] }
      : { place: null, refusals: [{ code: 'cleat_off_the_piece' }] };
  }
  const { cleatUm, bottomUm } = height.value;
  const body = {
    leftUm: Math.round(asked.middleUm - piece.widthUm / 2),
    bottomUm,
    widthUm: piece.widthUm,
    heightUm: piece.heightUm,
  };
  const lengthUm = asked.cleat.lengthUm ?? Math.max(piece.widthUm - cleatShortUm, 1);
  const cleat = {
    leftUm: Math.round(asked.middleUm - lengthUm / 2),
    bottomUm: Math.round(cleatUm - asked.cleat.heightUm / 2),
    widthUm: lengthUm,
    heightUm: asked.cleat.heightUm,
  };
  const refusals = [
    ...(isBehind(cleat, body) ? [] : [{ code: 'cleat_off_the_piece' as const }]),
    ...fits(wall, body),
    ...isFree(wall, body),
  ];
  return { place: { piece: body, cleat, cleatUm }, refusals };
}

function belowTheFloor(wall: WallFacts, piece: PieceFacts, missingUm: number): PlanRefusal {
  const clearUm = wall.ceilingUm;
  return clearUm !== null && piece.heightUm + liftOverUm > clearUm
    ? { code: 'does_not_fit', heightUm: piece.heightUm, clearUm }
    : { code: 'below_the_floor', missingUm };
}

function isBehind(cleat: Rectangle, piece: Rectangle): boolean {
  return (
    cleat.widthUm <= piece.widthUm &&
    cleat.bottomUm >= piece.bottomUm &&
    topOf(cleat) <= topOf(piece)
  );
}

function fits(wall: WallFacts, piece: Rectangle): PlanRefusal[] {
  const refusals: PlanRefusal[] = [];
  const clearUm = clearAbove(wall, piece);
  if (clearUm === null) refusals.push({ code: 'ceiling_not_known' });
  else if (piece.heightUm + liftOverUm > clearUm) {
    refusals.push({ code: 'does_not_fit', heightUm: piece.heightUm, clearUm });
  } else if (topOf(piece) + liftOverUm > clearUm) {
    const highestMiddleUm = Math.floor(clearUm - liftOverUm - piece.heightUm / 2);
    refusals.push({ code: 'no_room_above', topUm: topOf(piece), clearUm, highestMiddleUm });
  }
  const isOver = wall.wallWidthUm !== null && rightOf(piece) > wall.wallWidthUm;
  if (piece.leftUm < 0 || isOver) refusals.push({ code: 'beyond_the_wall' });
  return refusals;
}

/** Up to where the wall is free above a piece: the ceiling, or a moulding below it. */
function clearAbove({ ceilingUm, obstacles }: WallFacts, piece: Rectangle): number | null {
  if (ceilingUm === null) return null;
  const crowns = obstacles
    .filter((one) => isCrown(one, ceilingUm) && sharesWidth(one, piece))
    .map(({ bottomUm }) => bottomUm);
  return Math.min(ceilingUm, ...crowns);
}

/** A moulding in the upper half of the wall ends it; one below is something in the way. */
function isCrown({ kind, bottomUm }: Obstacle, ceilingUm: number): boolean {
  return kind === 'moulding' && bottomUm > ceilingUm / 2;
}

function isFree(wall: WallFacts, piece: Rectangle): PlanRefusal[] {
  const { furnitureUm, ceilingUm, obstacles } = wall;
  const inTheWay = obstacles.filter(
    (one) =>
      !isInTheWall(one) &&
      !(ceilingUm !== null && isCrown(one, ceilingUm)) &&
      sharesWidth(one, piece) &&
      one.bottomUm < topOf(piece) &&
      topOf(one) > piece.bottomUm,
  );
  const isBehindSome = furnitureUm !== null && piece.bottomUm < furnitureUm;
  return [
    ...(isBehindSome
      ? [{ code: 'behind_furniture' as const, bottomUm: piece.bottomUm, furnitureUm }]
      : []),
    ...inTheWay.map((one) => ({ code: 'hits_obstacle' as const, what: obstacleNamed(one) })),
  ];
}

/** Whether something is in the wall and only minds the drill: a wire or a pipe. */
export function isInTheWall({ kind }: Pick<Obstacle, 'kind'>): boolean {
  return kind === 'wire' || kind === 'pipe';
}

function sharesWidth(one: Rectangle, other: Rectangle): boolean {
  return one.leftUm < rightOf(other) && rightOf(one) > other.leftUm;
}

/** The upper edge of a rectangle above the floor. */
export function topOf({ bottomUm, heightUm }: Rectangle): number {
  return bottomUm + heightUm;
}

/** The right edge of a rectangle from the left end of the wall. */
export function rightOf({ leftUm, widthUm }: Rectangle): number {
  return leftUm + widthUm;
}
