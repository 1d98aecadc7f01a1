import type { ToLay } from './packing';

/** How one piece lies on a shelf, in whole micrometres. */
export type PieceLying = Omit<ToLay, 'key'>;

/**
 * How one piece of a job lies on a shelf: flat, with its height as a depth of the shelf; a vessel
 * stands on its foot.
 *
 * @param size as a wall label has it, in whole micrometres; null where it is not known
 * @returns null unless all three sides are known
 * @source common practice: reliefs and tiles are fired flat, vessels upright
 */
export function lyingOf(
  size: { widthUm: number | null; heightUm: number | null; depthUm: number | null },
  isVessel: boolean,
): PieceLying | null {
  const { widthUm, heightUm, depthUm } = size;
  if (widthUm === null || heightUm === null || depthUm === null) return null;
  return isVessel
    ? { widthUm, depthUm, heightUm }
    : { widthUm, depthUm: heightUm, heightUm: depthUm };
}

/**
 * How one part of a numbered drawing lies: the box round its outline.
 *
 * @param outline corners in thousandths of the drawing’s width and height
 * @returns whole micrometres, at least one; null for an outline without corners
 */
export function lyingOfOutline(
  outline: readonly (readonly [number, number])[],
  drawing: { widthUm: number; heightUm: number },
  heightUm: number,
): PieceLying | null {
  if (outline.length === 0) return null;
  const across = outline.map(([x]) => x);
  const down = outline.map(([, y]) => y);
  const side = (marks: readonly number[], wholeUm: number): number =>
    Math.max(1, Math.round(((Math.max(...marks) - Math.min(...marks)) * wholeUm) / 1_000));
  return {
    widthUm: side(across, drawing.widthUm),
    depthUm: side(down, drawing.heightUm),
    heightUm,
  };
}

/**
 * How parts of a numbered drawing lie in the mean, for a line that holds them.
 *
 * @param boxes what each covers of a shelf; null where its drawing has no size
 * @param heightUm how high they stand; null while nobody knows
 * @returns whole micrometres; null where there is no box or no height
 */
export function lyingOfParts(
  boxes: readonly (Pick<PieceLying, 'widthUm' | 'depthUm'> | null)[],
  heightUm: number | null,
): PieceLying | null {
  const known = boxes.flatMap((box) => box ?? []);
  if (known.length === 0 || heightUm === null) return null;
  const mean = (sides: readonly number[]): number =>
    Math.round(sides.reduce((sum, side) => sum + side, 0) / sides.length);
  return {
    widthUm: mean(known.map((box) => box.widthUm)),
    depthUm: mean(known.map((box) => box.depthUm)),
    heightUm,
  };
}

/**
 * The first of these sides that somebody knows.
 *
 * @returns null where nobody knows any
 */
export function firstKnown(...sides: readonly (number | null | undefined)[]): number | null {
  return sides.find((side) => typeof side === 'number') ?? null;
}
