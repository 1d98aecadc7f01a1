import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { tilesMost, type Opening, type SetTile, type TileWallAsked } from './asked';
import { axisFromEdge, centredAxis, type Strip, type TileAxis } from './axis';
import { jointFloorUm, withSpare } from './order';
import type { TileRefusal } from './refusals';

/** A rectangle on the wall, from the lower left corner of the tiled field. */
export type OnWall = {
  readonly leftUm: number;
  readonly bottomUm: number;
  readonly widthUm: number;
  readonly heightUm: number;
};

/** What becomes of a cell: a whole tile, one that is cut, none at all, or part of a set tile. */
export type CellKind = 'whole' | 'cut' | 'covered' | 'set';

/** A cell of the field, counted from the left and from below. */
export type Cell = OnWall & {
  readonly column: number;
  readonly row: number;
  readonly kind: CellKind;
};

/** Set tiles that are alike, how many are seen and how many are made. */
export type SetOrder = {
  readonly name: string;
  readonly widthUm: number;
  readonly heightUm: number;
  readonly count: number;
  readonly order: number;
};

/** A wall as it is laid out. */
export type TileLayout = {
  readonly columns: TileAxis;
  readonly rows: TileAxis;
  readonly cells: readonly Cell[];
  readonly wholeCount: number;
  readonly cutCount: number;
  readonly coveredCount: number;
  /** Field tiles to order, spare ones among them. */
  readonly order: number;
  readonly setOrders: readonly SetOrder[];
  /** The narrowest joint that these tiles want; the one asked for may be narrower. */
  readonly jointFloorUm: number;
};

/**
 * Lays field tile over a wall with equal cuts, set tiles among it, and leaves openings free.
 *
 * A tile that is cut takes a whole one: what is left of a hand-made tile has no edge of its own.
 *
 * @returns refuses, in this order: no size, a joint wider than the tile, too many tiles, openings
 *   outside or upon each other, set tiles outside, on cut tiles, upon an opening or each other, a
 *   spare that is no percentage
 */
export function layTiles(asked: TileWallAsked): Result<TileLayout, TileRefusal> {
  const fault = faultOfSizes(asked) ?? faultOfOpenings(asked);
  if (fault) return refuse(fault);
  const columns = centredAxis(sideOf(asked, 'width'));
  const side = sideOf(asked, 'height');
  const rows = asked.rowsFrom === 'bottom' ? axisFromEdge(side) : centredAxis(side);
  const setFault = faultOfSets(asked, columns, rows);
  if (setFault) return refuse(setFault);
  const cells = cellsOf(asked, columns, rows);
  const count = (kind: CellKind) => cells.filter((cell) => cell.kind === kind).length;
  const [wholeCount, cutCount] = [count('whole'), count('cut')];
  const order = withSpare(wholeCount + cutCount, asked.sparePercent);
  if (!order.ok) return order;
  const setOrders = ordersOf(asked);
  if (!setOrders.ok) return setOrders;
  return ok({
    ...{ columns, rows, cells, wholeCount, cutCount, coveredCount: count('covered') },
    ...{ order: order.value, setOrders: setOrders.value, jointFloorUm: jointFloorUm(asked) },
  });
}

function sideOf(asked: TileWallAsked, side: 'width' | 'height') {
  const { jointUm } = asked;
  return side === 'width'
    ? { wallUm: asked.widthUm, tileUm: asked.tileWidthUm, jointUm }
    : { wallUm: asked.heightUm, tileUm: asked.tileHeightUm, jointUm };
}

function faultOfSizes(asked: TileWallAsked): TileRefusal | null {
  const { widthUm, heightUm, tileWidthUm, tileHeightUm, jointUm } = asked;
  const sizes = [widthUm, heightUm, tileWidthUm, tileHeightUm];
  if (sizes.some((um) => !(um > 0)) || !(jointUm >= 0)) return { code: 'no_size' };
  if (jointUm > Math.min(tileWidthUm, tileHeightUm)) return { code: 'joint_wider_than_tile' };
  const across = Math.ceil(widthUm / (tileWidthUm + jointUm)) + 1;
  const tiles = across * (Math.ceil(heightUm / (tileHeightUm + jointUm)) + 1);
  return tiles > tilesMost ? { code: 'too_many_tiles', tiles } : null;
}

function faultOfOpenings({ openings, widthUm, heightUm }: TileWallAsked): TileRefusal | null {
  for (const [at, one] of openings.entries()) {
    const isInside =
      one.leftUm >= 0 &&
      one.bottomUm >= 0 &&
      one.leftUm + one.widthUm <= widthUm &&
      one.bottomUm + one.heightUm <= heightUm;
    if (!isInside) return { code: 'opening_outside', at };
    const isUpon = openings.slice(0, at).some((other) => sharedUm2(one, other) > 0);
    if (isUpon) return { code: 'openings_overlap', at };
  }
  return null;
}

function faultOfSets(asked: TileWallAsked, columns: TileAxis, rows: TileAxis): TileRefusal | null {
  for (const [at, one] of asked.sets.entries()) {
    const place = placeOfSet(one, columns, rows);
    if (!place) return { code: 'set_outside', at };
    if (place.isOnCut) return { code: 'set_on_a_cut', at };
    if (asked.openings.some((opening) => sharedUm2(place, opening) > 0)) {
      return { code: 'set_over_an_opening', at };
    }
    const before = asked.sets.slice(0, at);
    if (before.some((other) => isUpon(one, other))) return { code: 'sets_overlap', at };
  }
  return null;
}

/** Where a set tile lies; null where it reaches beyond the wall. */
export function placeOfSet(
  set: SetTile,
  columns: TileAxis,
  rows: TileAxis,
): (OnWall & { isOnCut: boolean }) | null {
  const across = stripsOf(columns, set.column, set.across);
  const down = stripsOf(rows, set.row, set.down);
  if (!across || !down) return null;
  return {
    ...{ leftUm: across.fromUm, bottomUm: down.fromUm },
    ...{ widthUm: across.sizeUm, heightUm: down.sizeUm },
    isOnCut: across.isCut || down.isCut,
  };
}

function stripsOf(axis: TileAxis, from: number, count: number): Strip | null {
  const strips = axis.strips.slice(from, from + count);
  const [first, last] = [strips.at(0), strips.at(-1)];
  if (from < 0 || count < 1 || strips.length < count || !first || !last) return null;
  const sizeUm = last.fromUm + last.sizeUm - first.fromUm;
  return { fromUm: first.fromUm, sizeUm, isCut: strips.some(({ isCut }) => isCut) };
}

function isUpon(one: SetTile, other: SetTile): boolean {
  return (
    one.column < other.column + other.across &&
    other.column < one.column + one.across &&
    one.row < other.row + other.down &&
    other.row < one.row + one.down
  );
}

function cellsOf(asked: TileWallAsked, columns: TileAxis, rows: TileAxis): Cell[] {
  const taken = takenBySets(asked.sets);
  return rows.strips.flatMap((down, row) =>
    columns.strips.map((across, column): Cell => {
      const onWall = {
        ...{ leftUm: across.fromUm, bottomUm: down.fromUm },
        ...{ widthUm: across.sizeUm, heightUm: down.sizeUm },
      };
      const isTaken = taken.has(`${column} ${row}`);
      const isEdge = across.isCut || down.isCut;
      const kind = isTaken ? 'set' : kindOf(onWall, asked.openings, isEdge);
      return { ...onWall, column, row, kind };
    }),
  );
}

function takenBySets(sets: readonly SetTile[]): ReadonlySet<string> {
  const taken = new Set<string>();
  for (const { column, row, across, down } of sets) {
    for (let right = 0; right < across; right += 1) {
      for (let up = 0; up < down; up += 1) taken.add(`${column + right} ${row + up}`);
    }
  }
  return taken;
}

/** Openings do not lie upon each other, so what they share with a cell can be added up. */
function kindOf(cell: OnWall, openings: readonly Opening[], isEdge: boolean): CellKind {
  const gone = openings.reduce((sum, opening) => sum + sharedUm2(cell, opening), 0);
  if (gone > 0 && gone >= cell.widthUm * cell.heightUm) return 'covered';
  return gone > 0 || isEdge ? 'cut' : 'whole';
}

function sharedUm2(one: OnWall, other: OnWall): number {
  const wide = Math.min(one.leftUm + one.widthUm, other.leftUm + other.widthUm);
  const high = Math.min(one.bottomUm + one.heightUm, other.bottomUm + other.heightUm);
  const width = wide - Math.max(one.leftUm, other.leftUm);
  const height = high - Math.max(one.bottomUm, other.bottomUm);
  return width > 0 && height > 0 ? width * height : 0;
}

function ordersOf(asked: TileWallAsked): Result<SetOrder[], TileRefusal> {
  const alike = new Map<string, SetTile[]>();
  for (const set of asked.sets) {
    const key = [set.name, set.across, set.down].join(' / ');
    alike.set(key, [...(alike.get(key) ?? []), set]);
  }
  const orders: SetOrder[] = [];
  for (const sets of alike.values()) {
    const [first] = sets;
    invariant(first, 'Tiles that are alike are at least one.');
    const order = withSpare(sets.length, asked.setSparePercent);
    if (!order.ok) return order;
    orders.push({
      name: first.name,
      ...sizeOfSet(first, asked),
      count: sets.length,
      order: order.value,
    });
  }
  return withSpare(0, asked.setSparePercent).ok
    ? ok(orders)
    : refuse({ code: 'spare_not_a_percent' });
}

/** How large a set tile is made: whole tiles and the joints between them. */
export function sizeOfSet(
  { across, down }: Pick<SetTile, 'across' | 'down'>,
  { tileWidthUm, tileHeightUm, jointUm }: TileWallAsked,
): { widthUm: number; heightUm: number } {
  return {
    widthUm: across * tileWidthUm + (across - 1) * jointUm,
    heightUm: down * tileHeightUm + (down - 1) * jointUm,
  };
}
