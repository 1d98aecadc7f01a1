import { areaOf, edgesOf, isSame, isSimple, keptCorner, keptOutline } from './outline';
import type { Corner, Outline, Shape } from './outline';

/** A corner nearer to an edge than this lies on it, in thousandths. */
export const nearEnough = 0.6;

/** No part is smaller than this, in square thousandths: less is a slip of the finger. */
export const leastArea = 20;

/** The spot of an edge that is nearest to a corner, and how far it is, in thousandths. */
export function nearestOn(
  [from, to]: readonly [Corner, Corner],
  corner: Corner,
  aspect = 1,
): { spot: Corner; far: number } {
  const [dx, dy] = [to[0] - from[0], (to[1] - from[1]) * aspect];
  const long = dx * dx + dy * dy;
  const along = (corner[0] - from[0]) * dx + (corner[1] - from[1]) * aspect * dy;
  const share = long === 0 ? 0 : Math.min(1, Math.max(0, along / long));
  const spot: Corner = [from[0] + (to[0] - from[0]) * share, from[1] + (to[1] - from[1]) * share];
  return { spot, far: farBetween(spot, corner, aspect) };
}

/** How far two corners are apart, in thousandths of the drawing's width. */
export function farBetween(one: Corner, other: Corner, aspect = 1): number {
  return Math.hypot(one[0] - other[0], (one[1] - other[1]) * aspect);
}

/**
 * Where a touch lands: on the nearest corner within reach, else on the nearest edge of a part or of
 * the drawing, else where it was. So neighbours share their corners and no slivers arise.
 *
 * @param reach in thousandths of the drawing's width
 * @param aspect height over width of the drawing
 */
export function landsOn(
  touch: Corner,
  outlines: readonly Outline[],
  reach: number,
  aspect = 1,
): Corner {
  const whole: Outline = [
    [0, 0],
    [1000, 0],
    [1000, 1000],
    [0, 1000],
  ];
  const all = [...outlines, whole];
  const corners = all.flat().map((spot) => ({ spot, far: farBetween(spot, touch, aspect) }));
  const corner = nearest(corners);
  if (corner && corner.far <= reach) return corner.spot;
  const edge = nearest(all.flatMap(edgesOf).map((each) => nearestOn(each, touch, aspect)));
  return keptCorner(edge && edge.far <= reach ? edge.spot : touch);
}

function nearest<Found extends { far: number }>(found: readonly Found[]): Found | null {
  return found.reduce<Found | null>(
    (best, each) => (best === null || each.far < best.far ? each : best),
    null,
  );
}

/**
 * An outline with those corners put into its edges that lie on them: where parts meet, both know
 * the corner.
 */
export function woven(outline: Outline, corners: readonly Corner[]): Outline {
  return edgesOf(outline).flatMap(([from, to]) => {
    const between = corners.filter((corner) => liesWithin(from, to, corner));
    const inOrder = between.toSorted((a, b) => farBetween(from, a) - farBetween(from, b));
    return [
      from,
      ...inOrder.filter((corner, at) => at === 0 || !isSame(corner, inOrder[at - 1] ?? from)),
    ];
  });
}

function liesWithin(from: Corner, to: Corner, corner: Corner): boolean {
  if (farBetween(from, corner) <= nearEnough || farBetween(to, corner) <= nearEnough) return false;
  const outOfTheWay =
    corner[0] < Math.min(from[0], to[0]) - nearEnough ||
    corner[0] > Math.max(from[0], to[0]) + nearEnough ||
    corner[1] < Math.min(from[1], to[1]) - nearEnough ||
    corner[1] > Math.max(from[1], to[1]) + nearEnough;
  return !outOfTheWay && nearestOn([from, to], corner).far <= nearEnough;
}

/** Shapes with those corners put into every edge that they lie on; see {@link woven}. */
export function wovenShapes(shapes: readonly Shape[], corners: readonly Corner[]): Shape[] {
  return shapes.map((shape) => {
    const outline = woven(shape.outline, corners);
    return isSimple(outline) ? { ...shape, outline } : shape;
  });
}

/**
 * Moves a corner, and with it the same corner of every neighbour.
 *
 * @returns null when a part would cross itself or shrink to nothing
 */
export function cornerMoved(
  shapes: readonly Shape[],
  from: Corner,
  wanted: Corner,
): readonly Shape[] | null {
  const to = keptCorner(wanted);
  const moved = shapes.map((shape) => {
    if (!shape.outline.some((corner) => isSame(corner, from))) return shape;
    const outline = keptOutline(shape.outline.map((each) => (isSame(each, from) ? to : each)));
    return { ...shape, outline };
  });
  const isSound = moved.every((shape, at) => shape === shapes[at] || isWhole(shape.outline));
  return isSound ? wovenShapes(moved, [to]) : null;
}

/**
 * Takes a corner away, from every part that has it.
 *
 * @returns null when a part would be left with two corners, cross itself or shrink to nothing
 */
export function cornerTaken(shapes: readonly Shape[], gone: Corner): readonly Shape[] | null {
  const left = shapes.map((shape) => {
    const outline = shape.outline.filter((corner) => !isSame(corner, gone));
    return outline.length === shape.outline.length ? shape : { ...shape, outline };
  });
  return left.every((shape, at) => shape === shapes[at] || isWhole(shape.outline)) ? left : null;
}

/** Whether an outline is that of a part: it goes round once, and is not next to nothing. */
export function isWhole(outline: Outline): boolean {
  return isSimple(outline) && areaOf(outline) >= leastArea;
}
