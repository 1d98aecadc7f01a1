/** One strip of tiles across a wall: a column or a row, from where to how wide. */
export type Strip = {
  /** From the left edge or the lower edge of the tiled field. */
  readonly fromUm: number;
  readonly sizeUm: number;
  /** Less than a whole tile: cut to fit the edge. */
  readonly isCut: boolean;
};

/** From where tiles are laid out: a joint or a tile in the middle, or a whole tile at the start. */
export type TileStart = 'joint' | 'tile' | 'edge';

/** How tiles fall along one side of a wall. */
export type TileAxis = {
  readonly start: TileStart;
  readonly strips: readonly Strip[];
  readonly fullCount: number;
  /** How wide the cut tile at an end is; 0 where none is cut. */
  readonly endCutUm: number;
  /** What is left bare at each end that has no cut tile, less than a joint. */
  readonly endGapUm: number;
  /** Whether no end is cut smaller than half a tile. */
  readonly isHalfOrMore: boolean;
};

/** A side of a wall with its tiles; whole micrometres, the joint 0 or more. */
export type SideToTile = {
  readonly wallUm: number;
  readonly tileUm: number;
  readonly jointUm: number;
};

/**
 * Lays tiles along one side of a wall with equal cuts at both ends: once with a joint in the middle
 * and once with a tile, and takes the one whose end cuts are half a tile or more.
 *
 * Of the two one always is, unless the wall is narrower than a tile.
 *
 * @returns whole tiles, cuts, joints and bare ends together are the wall, to the micrometre
 * @source ANSI A108.02-2017, section 4.3.2: centre and balance, usually no cut smaller than half
 * @example a wall of 100 in, tiles of 12 in, joints of 1/4 in: 7 whole ones and 7 in at each end
 */
export function centredAxis(side: SideToTile): TileAxis {
  const [byTile, byJoint] = [axisFrom(side, 'tile'), axisFrom(side, 'joint')];
  if (!byJoint) return byTile ?? wholeWall(side);
  if (!byTile) return byJoint;
  if (byTile.isHalfOrMore !== byJoint.isHalfOrMore) return byTile.isHalfOrMore ? byTile : byJoint;
  return isBetter(byJoint, byTile) ? byJoint : byTile;
}

/** Of two that are alike, none cut goes before cut, and a larger cut before a smaller. */
function isBetter(one: TileAxis, other: TileAxis): boolean {
  if (one.endCutUm === 0 || other.endCutUm === 0) return one.endCutUm < other.endCutUm;
  return one.endCutUm > other.endCutUm;
}

/**
 * Lays tiles with a joint or a tile in the middle, whichever is asked.
 *
 * @returns null where the wall is too narrow for that
 */
export function axisFrom(side: SideToTile, start: 'joint' | 'tile'): TileAxis | null {
  const { wallUm, tileUm, jointUm } = side;
  const pitchUm = tileUm + jointUm;
  const middle = start === 'tile' ? 1 : 0;
  // Whole tiles in all: one more on each side as long as both find room.
  const room = wallUm + jointUm - middle * pitchUm;
  const each = room < 0 ? -1 : Math.floor(room / (2 * pitchUm));
  const fullCount = middle + 2 * each;
  // A wall of less than two tiles has none whole beside a joint in its middle, but two large cuts.
  if (fullCount < (start === 'joint' && wallUm > tileUm ? 0 : 1)) return null;
  const left = wallUm - (fullCount * pitchUm - jointUm);
  return axisOf(side, { start, fullCount, leftUm: left, ends: 2 });
}

/**
 * Lays tiles from one edge, a whole one first and what is cut at the far end: the rows over a
 * counter, where the lowest is seen most.
 */
export function axisFromEdge(side: SideToTile): TileAxis {
  const { wallUm, tileUm, jointUm } = side;
  const pitchUm = tileUm + jointUm;
  const fullCount = Math.floor((wallUm + jointUm) / pitchUm);
  if (fullCount < 1) return wholeWall(side);
  const leftUm = wallUm - (fullCount * pitchUm - jointUm);
  return axisOf(side, { start: 'edge', fullCount, leftUm, ends: 1 });
}

/** A wall narrower than one tile: a single tile, cut to its width. */
function wholeWall({ wallUm, tileUm }: SideToTile): TileAxis {
  return {
    start: 'tile',
    strips: [{ fromUm: 0, sizeUm: wallUm, isCut: wallUm < tileUm }],
    ...{ fullCount: wallUm < tileUm ? 0 : 1, endCutUm: wallUm < tileUm ? wallUm : 0, endGapUm: 0 },
    isHalfOrMore: wallUm * 2 >= tileUm,
  };
}

type Laid = { start: TileStart; fullCount: number; leftUm: number; ends: 1 | 2 };

function axisOf({ tileUm, jointUm }: SideToTile, laid: Laid): TileAxis {
  const { start, fullCount, leftUm, ends } = laid;
  const pitchUm = tileUm + jointUm;
  // An odd micrometre goes to the far end.
  const firstUm = ends === 2 ? Math.floor(leftUm / 2) : 0;
  const lastUm = leftUm - firstUm;
  const hasCut = leftUm / ends > jointUm;
  const full = Array.from({ length: fullCount }, (_each, at) => ({
    ...{ fromUm: firstUm + at * pitchUm, sizeUm: tileUm, isCut: false },
  }));
  const endUm = firstUm + fullCount * pitchUm - jointUm;
  const cutUm = leftUm / ends - jointUm;
  const first = { fromUm: 0, sizeUm: firstUm - jointUm, isCut: true };
  const last = { fromUm: endUm + jointUm, sizeUm: lastUm - jointUm, isCut: true };
  return {
    start,
    strips: hasCut ? [...(ends === 2 ? [first] : []), ...full, last] : full,
    fullCount,
    endCutUm: hasCut ? cutUm : 0,
    endGapUm: hasCut ? 0 : leftUm / ends,
    isHalfOrMore: !hasCut || cutUm * 2 >= tileUm,
  };
}
