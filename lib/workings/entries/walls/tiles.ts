import { z } from 'zod';
import type { TileWallAsked } from '@/lib/walls/rules/tiles/asked';
import { layTiles } from '@/lib/walls/rules/tiles/layout';
import { tileRefusalMessage } from '@/lib/walls/rules/tiles/refusals';
import { axisWords } from '@/lib/walls/rules/tiles/words';
import { decimalText, keys, lengthMm } from '@/lib/workings/atoms';
import { workedValue, type Working } from '@/lib/workings/working';

const jointMust = 'must be a joint in millimetres, from 0 to 100';

const tileInput = keys({
  ...{ wallWidthMm: lengthMm, wallHeightMm: lengthMm },
  ...{ tileWidthMm: lengthMm, tileHeightMm: lengthMm },
  jointMm: z
    .number(jointMust)
    .min(0, jointMust)
    .max(100, jointMust)
    .transform((mm) => Math.round(mm * 1_000)),
  sparePercent: decimalText(100),
}).superRefine((given, context) => {
  const laid = layTiles(askedOf(given));
  if (laid.ok) return;
  const message = `must fit the rest: ${tileRefusalMessage(laid.refusal)}`;
  context.addIssue({ code: 'custom', path: ['tileWidthMm'], message });
});

type TilesWorked = {
  columns: number;
  rows: number;
  edgeCutWidthMm: number;
  edgeCutHeightMm: number;
  whole: number;
  cut: number;
  order: number;
};

/** How field tile falls on a wall, and how many are ordered. */
export const tileLayout: Working<z.infer<typeof tileInput>, TilesWorked> = {
  name: 'tile-layout',
  title: 'Tiles on a wall',
  formula:
    'Laid out from a joint in the middle and from a tile in the middle, each way; the one with end ' +
    'cuts of half a tile or more is taken. Whole tiles and cut ones, and the spare on top.',
  source:
    'ANSI A108.02-2017, sections 4.3.2 (cuts, balanced and usually none under half a tile) and ' +
    '4.3.8 (joints); spare on top is common practice',
  caution:
    'Each cut tile takes a whole one. Setting is a licensed tile contractor’s: lay it out dry before ' +
    'anything is set.',
  example: {
    ...{ wallWidthMm: 2_400, wallHeightMm: 600, tileWidthMm: 127, tileHeightMm: 127 },
    ...{ jointMm: 3, sparePercent: '10' },
  },
  input: tileInput,
  workOut: (input) => {
    const { columns, rows, wholeCount, cutCount, order } = workedValue(layTiles(askedOf(input)));
    const [across, down] = [columns.strips.length, rows.strips.length];
    return {
      output: {
        ...{ columns: across, rows: down, whole: wholeCount, cut: cutCount, order },
        edgeCutWidthMm: columns.endCutUm / 1_000,
        edgeCutHeightMm: rows.endCutUm / 1_000,
      },
      working: [
        `Across: ${axisWords(columns, 'mm')}.`,
        `Up: ${axisWords(rows, 'mm')}.`,
        `${across} columns × ${down} rows are ${across * down} tiles: ${wholeCount} whole, ${cutCount} cut.`,
        `With ${input.sparePercent} in a hundred on top, rounded up: ${order}.`,
      ],
    };
  },
};

function askedOf(given: {
  wallWidthMm: number;
  wallHeightMm: number;
  tileWidthMm: number;
  tileHeightMm: number;
  jointMm: number;
  sparePercent: string;
}): TileWallAsked {
  return {
    ...{ widthUm: given.wallWidthMm, heightUm: given.wallHeightMm },
    ...{ tileWidthUm: given.tileWidthMm, tileHeightUm: given.tileHeightMm },
    ...{ jointUm: given.jointMm, rowsFrom: 'middle', isHandMade: false, variationUm: 0 },
    ...{ sparePercent: given.sparePercent, setSparePercent: '0' },
    ...{ places: [], sets: [], openings: [] },
  };
}
