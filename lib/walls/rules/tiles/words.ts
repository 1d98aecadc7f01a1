import { formatLength, formatSize, type LengthSystem } from '@/lib/units/rules';
import type { OpeningKind, SetTile, TileWallAsked } from './asked';
import type { TileAxis } from './axis';
import { placeOfSet, sizeOfSet, type TileLayout } from './layout';

/** An opening in words. */
export const openingWords: Readonly<Record<OpeningKind, string>> = {
  outlet: 'outlet',
  window: 'window',
  other: 'opening',
};

const startWords = {
  joint: 'a joint in the middle',
  tile: 'a tile in the middle',
  edge: 'a whole tile at the start',
} as const;

/** How tiles fall along one side: `a tile in the middle, 7 whole, 7 in cut at each end`. */
export function axisWords(axis: TileAxis, system: LengthSystem): string {
  const { start, strips, fullCount, endCutUm, endGapUm } = axis;
  const cut = formatLength(endCutUm, system);
  if (strips.length === 1 && endCutUm > 0) return `a single tile, cut to ${cut}`;
  const where = start === 'edge' ? 'at the far end' : 'at each end';
  if (endCutUm > 0) return `${startWords[start]}, ${fullCount} whole, ${cut} cut ${where}`;
  const gap = endGapUm > 0 ? `, ${formatLength(endGapUm, system)} left bare ${where}` : '';
  return `${startWords[start]}, ${fullCount} whole, none cut${gap}`;
}

/** How a wall was laid out, step by step. */
export function layoutSteps(
  asked: TileWallAsked,
  layout: TileLayout,
  system: LengthSystem,
): string[] {
  const { columns, rows, wholeCount, cutCount, coveredCount, order } = layout;
  const none = coveredCount > 0 ? `, ${coveredCount} where there is none` : '';
  return [
    `Across ${formatLength(asked.widthUm, system)}: ${axisWords(columns, system)}.`,
    `Up ${formatLength(asked.heightUm, system)}: ${axisWords(rows, system)}.`,
    `${columns.strips.length} columns × ${rows.strips.length} rows: ${wholeCount} whole field tiles, ${cutCount} cut${none}.`,
    `With ${asked.sparePercent} in a hundred on top, rounded up, ${order} are ordered.`,
    `The narrowest joint for these tiles is ${formatLength(layout.jointFloorUm, system)}; asked for is ${formatLength(asked.jointUm, system)}.`,
  ];
}

/** Where the last row or column is cut to less than half a tile, and so looks like a mistake. */
export function sliverWords(layout: TileLayout, system: LengthSystem): string[] {
  const { columns, rows } = layout;
  const told = (axis: TileAxis, what: string) =>
    axis.isHalfOrMore
      ? []
      : [`The ${what} are cut to ${formatLength(axis.endCutUm, system)}, less than half a tile.`];
  return [...told(columns, 'outer columns'), ...told(rows, 'end rows')];
}

/** A set tile as a list tells it: where it lies from the lower left corner, and how large it is. */
export type SetTold = { number: number; name: string; where: string; size: string; edges: string };

/** The set tiles as a list tells them, numbered as on the drawing. */
export function setsTold(
  asked: TileWallAsked,
  layout: TileLayout,
  system: LengthSystem,
): SetTold[] {
  return asked.sets.map((set: SetTile, at) => {
    const place = placeOfSet(set, layout.columns, layout.rows);
    return {
      number: at + 1,
      name: set.name,
      where: `column ${set.column + 1}, row ${set.row + 1}`,
      size: formatSize(sizeOfSet(set, asked), system),
      edges: place
        ? `${formatLength(place.leftUm, system)} from the left, ${formatLength(place.bottomUm, system)} up`
        : '',
    };
  });
}
