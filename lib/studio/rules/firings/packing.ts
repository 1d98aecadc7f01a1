import { MaxRectsBin } from 'maxrects-packer';

/** The room inside a kiln and its shelves, in whole micrometres. */
export type KilnRoom = {
  readonly insideHeightUm: number;
  readonly shelfWidthUm: number;
  readonly shelfDepthUm: number;
  readonly shelfThickUm: number;
  /** How many shelves there are to lay in. */
  readonly shelves: number;
};

/** One piece as it lies: its sides on the shelf and how high it stands there, in whole micrometres. */
export type ToLay = {
  readonly key: string;
  readonly widthUm: number;
  readonly depthUm: number;
  readonly heightUm: number;
};

/** A piece on its shelf: its upper left corner, and its sides as it was turned. */
export type Laid = ToLay & {
  readonly xUm: number;
  readonly yUm: number;
  readonly isTurned: boolean;
};

/** A shelf with what lies on it; the first one lies at the bottom. */
export type LaidShelf = {
  readonly pieces: readonly Laid[];
  /** How high the posts on it are: its highest piece and the room above. */
  readonly postUm: number;
};

/** How a load lies, and what found no room. */
export type Layout = { readonly shelves: readonly LaidShelf[]; readonly left: readonly ToLay[] };

type OpenShelf = { bin: MaxRectsBin; pieces: Laid[]; postUm: number };

/**
 * Lays pieces on the shelves of a kiln. Pieces of like height share a shelf: the highest are laid
 * first, each on the first shelf that has room for it, and another shelf is put in while posts and
 * shelves stay below the lid. A piece may be turned by a quarter.
 *
 * Each piece keeps `roomAroundUm` free on its four sides and above it.
 *
 * @returns every piece once, on a shelf or in `left`; the same pieces always lie the same way
 * @source the maximal-rectangles method of packing, by the library maxrects-packer
 * @example nine pieces of 152 mm on a shelf of 500 × 500 mm with 6 mm around each // 9, and 0 left
 */
export function layOnShelves(
  room: KilnRoom,
  pieces: readonly ToLay[],
  roomAroundUm: number,
): Layout {
  const shelves: OpenShelf[] = [];
  const left: ToLay[] = [];
  let upUm = 0;
  for (const piece of highestFirst(pieces)) {
    if (shelves.some((shelf) => placeOn(shelf, piece, roomAroundUm))) continue;
    const postUm = piece.heightUm + roomAroundUm;
    const nextUm = upUm + room.shelfThickUm + postUm;
    const mayOpen = shelves.length < room.shelves && nextUm <= room.insideHeightUm;
    const shelf = { bin: emptyShelf(room), pieces: [], postUm };
    if (!mayOpen || !placeOn(shelf, piece, roomAroundUm)) {
      left.push(piece);
      continue;
    }
    shelves.push(shelf);
    upUm = nextUm;
  }
  return { shelves: shelves.map(({ pieces: laid, postUm }) => ({ pieces: laid, postUm })), left };
}

function emptyShelf(room: KilnRoom): MaxRectsBin {
  return new MaxRectsBin(room.shelfWidthUm, room.shelfDepthUm, 0, {
    ...{ smart: false, pot: false, square: false, allowRotation: true },
  });
}

function highestFirst(pieces: readonly ToLay[]): ToLay[] {
  return pieces.toSorted(
    (one, other) =>
      other.heightUm - one.heightUm ||
      other.widthUm * other.depthUm - one.widthUm * one.depthUm ||
      one.key.localeCompare(other.key, 'en'),
  );
}

/** Puts a piece on a shelf if it finds room there. */
function placeOn(shelf: OpenShelf, piece: ToLay, roomAroundUm: number): boolean {
  if (piece.heightUm + roomAroundUm > shelf.postUm) return false;
  const [width, depth] = [piece.widthUm + 2 * roomAroundUm, piece.depthUm + 2 * roomAroundUm];
  const placed = shelf.bin.add(width, depth, null);
  if (!placed) return false;
  shelf.pieces.push({
    ...piece,
    widthUm: placed.width - 2 * roomAroundUm,
    depthUm: placed.height - 2 * roomAroundUm,
    xUm: placed.x + roomAroundUm,
    yUm: placed.y + roomAroundUm,
    isTurned: placed.rot,
  });
  return true;
}

/** How full a load makes a kiln, in whole percent. */
export type Fill = {
  /** Of the shelves that go in with pieces so high: what they and the room around them take. */
  readonly areaPercent: number;
  /** Of the whole room inside. */
  readonly volumePercent: number;
  readonly shelvesUsed: number;
  /** How many shelves would go in, were the rest as low as the lowest of these. */
  readonly shelvesPossible: number;
};

/**
 * How full a kiln is, by the area of its shelves and by its room. Percent are rounded down, so that
 * 100 is said only of what is full.
 *
 * @returns zeros and no shelf for an empty load
 * @source common practice: a load is full when its shelves are
 */
export function fillOf(room: KilnRoom, layout: Layout, roomAroundUm: number): Fill {
  const { shelves } = layout;
  const laid = shelves.flatMap((shelf) => shelf.pieces);
  if (laid.length === 0) {
    return { areaPercent: 0, volumePercent: 0, shelvesUsed: 0, shelvesPossible: 0 };
  }
  const shelfArea = room.shelfWidthUm * room.shelfDepthUm;
  const footOf = (piece: Laid): number =>
    (piece.widthUm + 2 * roomAroundUm) * (piece.depthUm + 2 * roomAroundUm);
  const area = laid.reduce((sum, piece) => sum + footOf(piece), 0);
  const taken = laid.reduce(
    (sum, piece) => sum + footOf(piece) * (piece.heightUm + roomAroundUm + room.shelfThickUm),
    0,
  );
  const upUm = shelves.reduce((sum, { postUm }) => sum + postUm + room.shelfThickUm, 0);
  const lowUm = Math.min(...shelves.map(({ postUm }) => postUm)) + room.shelfThickUm;
  const more = Math.floor((room.insideHeightUm - upUm) / lowUm);
  const shelvesPossible = Math.min(room.shelves, shelves.length + more);
  return {
    areaPercent: Math.floor((area * 100) / (shelfArea * shelvesPossible)),
    volumePercent: Math.floor((taken * 100) / (shelfArea * room.insideHeightUm)),
    shelvesUsed: shelves.length,
    shelvesPossible,
  };
}

/**
 * How many pieces of one size a kiln takes when it holds nothing else.
 *
 * @returns 0 where not one of them finds room
 */
export function takesOf(room: KilnRoom, piece: Omit<ToLay, 'key'>, roomAroundUm: number): number {
  const layerUm = piece.heightUm + roomAroundUm + room.shelfThickUm;
  const layers = Math.min(room.shelves, Math.floor(room.insideHeightUm / layerUm));
  const shelf = emptyShelf(room);
  const [width, depth] = [piece.widthUm + 2 * roomAroundUm, piece.depthUm + 2 * roomAroundUm];
  let onOne = 0;
  while (onOne < piecesOnOneMost && shelf.add(width, depth, null)) onOne += 1;
  return onOne * Math.max(0, layers);
}

/** Beads and buttons are laid by the handful: beyond this nobody counts. */
const piecesOnOneMost = 400;
