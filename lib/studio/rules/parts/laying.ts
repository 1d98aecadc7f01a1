import { woven } from './corners';
import {
  areaOf,
  boxOf,
  keptOutline,
  middleOf,
  type Corner,
  type Outline,
  type Shape,
} from './outline';

/** The fewest and the most numbers that a drawing has. */
export const partsLeast = 1;
/** See {@link partsLeast}. */
export const partsMost = 300;

/** A part without a word about it. */
export function bareShape(number: number, outline: Outline): Shape {
  return { number, outline: keptOutline(outline), area: '', note: '', hasSpare: false };
}

/**
 * The whole drawing cut into rows and columns of one size.
 *
 * @param isOffset every second row begins with a half one, as bricks are laid
 * @returns numbered in reading order; empty when they would be fewer than one or too many
 * @example gridOf({ rows: 6, columns: 10, isOffset: false }).length // 60
 */
export function gridOf(grid: { rows: number; columns: number; isOffset: boolean }): Shape[] {
  const { rows, columns, isOffset } = grid;
  if (![rows, columns].every((count) => Number.isInteger(count) && count >= 1)) return [];
  const seamsOf = (row: number) => {
    const isHalved = isOffset && row % 2 === 1;
    const inside = Array.from({ length: isHalved ? columns : columns - 1 }, (_, at) =>
      isHalved ? (at + 0.5) / columns : (at + 1) / columns,
    );
    return [0, ...inside, 1].map((share) => share * 1000);
  };
  const outlines = Array.from({ length: rows }, (_, row): Outline[] => {
    const [top, bottom] = [(row * 1000) / rows, ((row + 1) * 1000) / rows];
    const seams = seamsOf(row);
    return seams.slice(0, -1).map((left, at): Outline => {
      const right = seams[at + 1] ?? 1000;
      return [
        [left, top],
        [right, top],
        [right, bottom],
        [left, bottom],
      ];
    });
  }).flat();
  if (outlines.length > partsMost) return [];
  const kept = outlines.map(keptOutline);
  return kept.map((outline, at) => {
    const corners = kept.flatMap((other) => (other === outline ? [] : other));
    return bareShape(at + 1, isOffset ? woven(outline, corners) : outline);
  });
}

/**
 * Shapes in the order in which one reads: the highest of those that are left begins a row; whose
 * middle lies beside it belongs to the row, from left to right.
 */
export function inReadingOrder(shapes: readonly Shape[]): Shape[] {
  const left = shapes
    .map((shape) => ({ shape, middle: middleOf(shape.outline), box: boxOf(shape.outline) }))
    .toSorted((a, b) => a.middle[1] - b.middle[1] || a.middle[0] - b.middle[0]);
  const read: Shape[] = [];
  while (left[0]) {
    const { box, middle } = left[0];
    const low = Math.max(middle[1], (middle[1] + box.bottom) / 2);
    const row = left.filter((each) => each.middle[1] <= low);
    row.sort((a, b) => a.middle[0] - b.middle[0]);
    read.push(...row.map(({ shape }) => shape));
    left.splice(0, left.length, ...left.filter((each) => !row.includes(each)));
  }
  return read;
}

/** The same shapes, numbered from 1 in reading order; see {@link inReadingOrder}. */
export function renumbered(shapes: readonly Shape[]): Shape[] {
  return inReadingOrder(shapes).map((shape, at) => ({ ...shape, number: at + 1 }));
}

/** A name and the spot where it lies, in thousandths from the upper left. */
export type AreaSpot = { readonly name: string; readonly at: Corner };

/**
 * The colour area that a part most likely belongs to: the one whose spot lies in it, or else
 * nearest to its middle.
 *
 * @param aspect height over width of the drawing
 * @returns empty when the sketch names no areas
 */
export function likelyArea(outline: Outline, areas: readonly AreaSpot[], aspect: number): string {
  const [x, y] = middleOf(outline);
  const far = ({ at }: AreaSpot) => Math.hypot(at[0] - x, (at[1] - y) * aspect);
  const [nearest] = areas.toSorted((a, b) => far(a) - far(b));
  return nearest?.name ?? '';
}

/**
 * Which parts to make twice from the start, when one in ten is: the thinnest and longest, because
 * those are lost first.
 *
 * @param aspect height over width of the drawing
 * @returns their numbers, one for each ten begun
 * @source common practice: a spare of each thin or long part
 */
export function sparesToMake(shapes: readonly Shape[], aspect: number): number[] {
  const slim = (outline: Outline) => {
    const { left, right, top, bottom } = boxOf(outline);
    const long = Math.hypot(right - left, (bottom - top) * aspect);
    return (long * long) / Math.max(1, areaOf(outline) * aspect);
  };
  return shapes
    .map(({ number, outline }) => ({ number, slim: slim(outline) }))
    .toSorted((a, b) => b.slim - a.slim || a.number - b.number)
    .slice(0, Math.ceil(shapes.length / 10))
    .map(({ number }) => number)
    .toSorted((a, b) => a - b);
}
