import { farBetween, isWhole, nearEnough, woven } from './corners';
import { edgesOf, isInside, isSame, keptCorner, keptOutline, sideOf } from './outline';
import type { Corner, Outline } from './outline';

type Crossing = { at: Corner; edge: number; along: number };

/**
 * Cuts an outline in two along a line.
 *
 * Of a part that the line crosses more than twice, the piece of the line nearest to the middle of
 * what was drawn cuts.
 *
 * @returns both outlines, and the corners that are new; null when the line does not cut it in two,
 *   and where the halves could not be made one again: what grazes a corner or runs along an edge
 *   cuts off less than can be drawn
 */
export function cutInTwo(
  outline: Outline,
  [from, to]: readonly [Corner, Corner],
): { outlines: [Outline, Outline]; corners: [Corner, Corner] } | null {
  if (isSame(from, to)) return null;
  const found = chordOf(outline, from, to);
  if (!found) return null;
  const [first, second] = found;
  const one = [first.at, ...outline.slice(first.edge + 1, second.edge + 1), second.at];
  const other = [
    second.at,
    ...outline.slice(second.edge + 1),
    ...outline.slice(0, first.edge + 1),
    first.at,
  ];
  const outlines: [Outline, Outline] = [keptOutline(one), keptOutline(other)];
  const isClean = outlines.every(isWhole) && typeof madeOne(...outlines) !== 'string';
  return isClean ? { outlines, corners: [first.at, second.at] } : null;
}

function chordOf(outline: Outline, from: Corner, to: Corner): [Crossing, Crossing] | null {
  const crossings = edgesOf(outline)
    .flatMap(([corner, next], edge) => crossingOf([corner, next], edge, [from, to]))
    .toSorted((a, b) => a.along - b.along);
  let best: { pair: [Crossing, Crossing]; far: number } | null = null;
  for (const [at, one] of crossings.entries()) {
    const other = crossings[at + 1];
    if (!other) break;
    const middle: Corner = [(one.at[0] + other.at[0]) / 2, (one.at[1] + other.at[1]) / 2];
    const far = one.along <= 0.5 && 0.5 <= other.along ? 0 : farFromMiddle(one, other);
    if (!isInside(outline, middle) || (best && best.far <= far)) continue;
    best = { pair: one.edge < other.edge ? [one, other] : [other, one], far };
  }
  return best?.pair ?? null;
}

function farFromMiddle(one: Crossing, other: Crossing): number {
  return Math.min(Math.abs(one.along - 0.5), Math.abs(other.along - 0.5));
}

/** A corner that lies on the line counts as lying on its right, so that it is crossed once. */
function crossingOf(
  [corner, next]: [Corner, Corner],
  edge: number,
  [from, to]: [Corner, Corner],
): Crossing[] {
  const [here, there] = [sideOf(from, to, corner), sideOf(from, to, next)];
  if (here >= 0 === there >= 0) return [];
  const share = here / (here - there);
  const exact: Corner = [
    corner[0] + (next[0] - corner[0]) * share,
    corner[1] + (next[1] - corner[1]) * share,
  ];
  const near = [corner, next].find((each) => farBetween(each, exact) <= nearEnough);
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const along = ((exact[0] - from[0]) * dx + (exact[1] - from[1]) * dy) / (dx * dx + dy * dy);
  return [{ at: near ?? keptCorner(exact), edge, along }];
}

/** Why two parts were not made one. */
export type MergeRefusal = 'not_neighbours' | 'would_have_a_hole';

/**
 * Makes one outline of two that share an edge.
 *
 * @param keep corners that stay although they lie on a straight edge: those of other parts
 */
export function madeOne(
  one: Outline,
  other: Outline,
  keep: readonly Corner[] = [],
): Outline | MergeRefusal {
  const [first, second] = [woven(one, other), woven(other, one)].map((each) => edgesOf(each));
  if (!first || !second) return 'not_neighbours';
  const left = [...onlyIn(first, second), ...onlyIn(second, first)];
  if (left.length === first.length + second.length) return 'not_neighbours';
  const loop = loopOf(left);
  if (!loop) return 'would_have_a_hole';
  const outline = keptOutline(withoutStraight(loop, keep));
  return isWhole(outline) ? outline : 'would_have_a_hole';
}

function onlyIn(edges: readonly [Corner, Corner][], others: readonly [Corner, Corner][]) {
  return edges.filter(
    ([from, to]) => !others.some(([start, end]) => isSame(start, to) && isSame(end, from)),
  );
}

/** The one loop that all edges make; null when they make more than one. */
function loopOf(edges: readonly [Corner, Corner][]): Outline | null {
  const left = [...edges];
  const first = left.shift();
  if (!first) return null;
  const loop: Corner[] = [first[0]];
  let [, end] = first;
  while (!isSame(end, first[0])) {
    const here = end;
    const at = left.findIndex(([from]) => isSame(from, here));
    const [next] = at < 0 ? [] : left.splice(at, 1);
    if (!next) return null;
    loop.push(end);
    [, end] = next;
  }
  return left.length === 0 ? loop : null;
}

function withoutStraight(loop: Outline, keep: readonly Corner[]): Outline {
  return loop.filter((corner, at) => {
    const before = loop[(at + loop.length - 1) % loop.length] ?? corner;
    const after = loop[(at + 1) % loop.length] ?? corner;
    return sideOf(before, corner, after) !== 0 || keep.some((each) => isSame(each, corner));
  });
}
