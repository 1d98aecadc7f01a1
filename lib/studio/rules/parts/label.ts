import { farBetween, nearestOn } from './corners';
import { boxOf, edgesOf, isInside, middleOf, type Corner, type Outline } from './outline';

/** Where the number of a part stands, and how much room it has round it. */
export type LabelSpot = {
  readonly at: Corner;
  /** To the nearest edge, in thousandths of the drawing's width. */
  readonly room: number;
};

type Cell = LabelSpot & { readonly half: readonly [number, number]; readonly most: number };

/** Good enough: so much more room is not looked for, as a share of the most there could be. */
const fineness = 0.04;
const cellsMost = 1_000;

/**
 * The spot inside an outline that is farthest from its edge: a number stands there inside its part
 * however the part bends.
 *
 * The box is cut into cells; a cell that cannot hold a better spot is left out, the most promising
 * one is cut in four.
 *
 * @param aspect height over width of the drawing
 * @source the pole of inaccessibility, found by halving cells
 */
export function labelSpot(outline: Outline, aspect = 1): LabelSpot {
  const box = boxOf(outline);
  const half: [number, number] = [(box.right - box.left) / 2, (box.bottom - box.top) / 2];
  const middle = cellAt(outline, middleOf(outline), [0, 0], aspect);
  const whole = cellAt(outline, [box.left + half[0], box.top + half[1]], half, aspect);
  let best = whole.room > middle.room ? whole : middle;
  // No spot has more room than half the shorter side of the box.
  const roomMost = Math.min(half[0], half[1] * aspect);
  const enough = roomMost * fineness;
  const open: Cell[] = best.room >= roomMost - enough ? [] : [whole];
  for (let looked = 0; looked < cellsMost; looked += 1) {
    const cell = mostPromising(open);
    if (!cell || cell.most - best.room <= enough) break;
    for (const quarter of quartersOf(outline, cell, aspect)) {
      if (quarter.room > best.room) best = quarter;
      if (quarter.most > best.room + enough) open.push(quarter);
    }
  }
  return { at: best.at, room: Math.max(0, best.room) };
}

function mostPromising(open: Cell[]): Cell | null {
  let at = 0;
  for (const [place, cell] of open.entries()) {
    if (cell.most > (open[at]?.most ?? 0)) at = place;
  }
  return open.splice(at, 1)[0] ?? null;
}

function quartersOf(outline: Outline, { at, half }: Cell, aspect: number): Cell[] {
  const [x, y] = [half[0] / 2, half[1] / 2];
  const corners: Corner[] = [
    [at[0] - x, at[1] - y],
    [at[0] + x, at[1] - y],
    [at[0] - x, at[1] + y],
    [at[0] + x, at[1] + y],
  ];
  return corners.map((corner) => cellAt(outline, corner, [x, y], aspect));
}

function cellAt(outline: Outline, at: Corner, half: [number, number], aspect: number): Cell {
  const nearest = Math.min(...edgesOf(outline).map((edge) => nearestOn(edge, at, aspect).far));
  const room = isInside(outline, at) ? nearest : -nearest;
  return { at, room, half, most: room + farBetween([0, 0], half, aspect) };
}
