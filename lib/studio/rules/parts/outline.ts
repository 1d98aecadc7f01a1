/** A corner in thousandths of the drawing's width and height, from its upper left. */
export type Corner = readonly [x: number, y: number];

/** The outline of a part: its corners in order, at least three; the last joins the first. */
export type Outline = readonly Corner[];

/** One numbered part of a drawing. */
export type Shape = {
  readonly number: number;
  readonly outline: Outline;
  /** The colour area it belongs to; empty while nobody said. */
  readonly area: string;
  readonly note: string;
  /** Two are made of it from the start. */
  readonly hasSpare: boolean;
};

/** How finely corners are kept: ten steps to a thousandth. */
const stepsToOne = 10;

/** A corner as it is kept: inside the drawing, on the nearest tenth of a thousandth. */
export function keptCorner([x, y]: Corner): Corner {
  return [kept(x), kept(y)];
}

function kept(value: number): number {
  const step = Math.round(value * stepsToOne) / stepsToOne;
  return Math.min(1000, Math.max(0, step));
}

/** Whether two corners are one. */
export function isSame(one: Corner, other: Corner): boolean {
  return one[0] === other[0] && one[1] === other[1];
}

/** The edges of an outline, each from a corner to the next. */
export function edgesOf(outline: Outline): [Corner, Corner][] {
  return outline.flatMap((corner, at) => {
    const next = outline[(at + 1) % outline.length];
    return next ? [[corner, next]] : [];
  });
}

/** On which side of the line from `from` to `to` a corner lies, as twice the triangle's area. */
export function sideOf(from: Corner, to: Corner, corner: Corner): number {
  return (to[0] - from[0]) * (corner[1] - from[1]) - (to[1] - from[1]) * (corner[0] - from[0]);
}

/**
 * The area inside an outline with its sign: above zero when its corners go round with the clock,
 * as the drawing is looked at.
 *
 * @returns square thousandths: the whole drawing is 1_000_000
 * @source the shoelace formula
 */
export function signedArea(outline: Outline): number {
  return edgesOf(outline).reduce((sum, [[x, y], [u, v]]) => sum + x * v - u * y, 0) / 2;
}

/**
 * The area inside an outline.
 *
 * @returns square thousandths: the whole drawing is 1_000_000
 * @example areaOf([[0, 0], [100, 0], [100, 50], [0, 50]]) // 5_000
 */
export function areaOf(outline: Outline): number {
  return Math.abs(signedArea(outline));
}

/** The box round an outline, in thousandths. */
export function boxOf(outline: Outline): {
  left: number;
  top: number;
  right: number;
  bottom: number;
} {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  return {
    left: Math.min(...xs),
    top: Math.min(...ys),
    right: Math.max(...xs),
    bottom: Math.max(...ys),
  };
}

/** The middle of an outline's area; the middle of its box where it has no area. */
export function middleOf(outline: Outline): Corner {
  const whole = signedArea(outline);
  if (whole === 0) {
    const box = boxOf(outline);
    return [(box.left + box.right) / 2, (box.top + box.bottom) / 2];
  }
  let [middleX, middleY] = [0, 0];
  for (const [[x, y], [u, v]] of edgesOf(outline)) {
    const cross = x * v - u * y;
    middleX += (x + u) * cross;
    middleY += (y + v) * cross;
  }
  return [middleX / (6 * whole), middleY / (6 * whole)];
}

/** Whether a spot lies inside an outline; one on the edge may be told either way. */
export function isInside(outline: Outline, [x, y]: Corner): boolean {
  let inside = false;
  for (const [[fromX, fromY], [toX, toY]] of edgesOf(outline)) {
    if (fromY > y === toY > y) continue;
    if (x < ((toX - fromX) * (y - fromY)) / (toY - fromY) + fromX) inside = !inside;
  }
  return inside;
}

/**
 * An outline as it is kept: corners on their steps, none twice in a row, going round with the clock.
 */
export function keptOutline(outline: Outline): Outline {
  const corners = outline
    .map(keptCorner)
    .filter((corner, at, all) => !isSame(corner, all[(at + 1) % all.length] ?? corner));
  return signedArea(corners) < 0 ? corners.toReversed() : corners;
}

/**
 * Whether an outline goes round once without crossing, touching or doubling back on itself.
 */
export function isSimple(outline: Outline): boolean {
  if (outline.length < 3) return false;
  const edges = edgesOf(outline);
  return edges.every((edge, at) =>
    edges.every((other, place) => {
      if (place <= at) return true;
      if (place === at + 1) return !foldsBack(edge, other);
      if (at === 0 && place === edges.length - 1) return !foldsBack(other, edge);
      return !doMeet(edge, other);
    }),
  );
}

function foldsBack([from, by]: [Corner, Corner], [, to]: [Corner, Corner]): boolean {
  if (sideOf(from, by, to) !== 0) return false;
  return (by[0] - from[0]) * (to[0] - by[0]) + (by[1] - from[1]) * (to[1] - by[1]) <= 0;
}

function doMeet([a, b]: [Corner, Corner], [c, d]: [Corner, Corner]): boolean {
  const [ofC, ofD] = [Math.sign(sideOf(a, b, c)), Math.sign(sideOf(a, b, d))];
  const [ofA, ofB] = [Math.sign(sideOf(c, d, a)), Math.sign(sideOf(c, d, b))];
  if (ofC * ofD < 0 && ofA * ofB < 0) return true;
  const onLine: [number, Corner, Corner, Corner][] = [
    [ofC, a, b, c],
    [ofD, a, b, d],
    [ofA, c, d, a],
    [ofB, c, d, b],
  ];
  return onLine.some(([side, from, to, corner]) => side === 0 && isBetween(from, to, corner));
}

function isBetween(from: Corner, to: Corner, [x, y]: Corner): boolean {
  return (
    Math.min(from[0], to[0]) <= x &&
    x <= Math.max(from[0], to[0]) &&
    Math.min(from[1], to[1]) <= y &&
    y <= Math.max(from[1], to[1])
  );
}
