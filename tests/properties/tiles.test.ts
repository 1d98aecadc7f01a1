import { fc, test } from '@fast-check/vitest';
import { describe, expect } from 'vitest';
import {
  axisFromEdge,
  centredAxis,
  type SideToTile,
  type TileAxis,
} from '@/lib/walls/rules/tiles/axis';
import { layTiles } from '@/lib/walls/rules/tiles/layout';

const side: fc.Arbitrary<SideToTile> = fc.record({
  wallUm: fc.integer({ min: 1, max: 20_000_000 }),
  tileUm: fc.integer({ min: 10_000, max: 600_000 }),
  jointUm: fc.integer({ min: 0, max: 10_000 }),
});

/** Whole tiles, cuts, joints and bare ends, added up. */
function sumOf({ strips, endGapUm, start }: TileAxis, jointUm: number): number {
  const tiles = strips.reduce((sum, { sizeUm }) => sum + sizeUm, 0);
  const bare = endGapUm * (start === 'edge' ? 1 : 2);
  return tiles + (strips.length - 1) * jointUm + bare;
}

describe('tiles along a side', () => {
  test.prop([side])('add up to the wall, from either start', (given) => {
    expect(sumOf(centredAxis(given), given.jointUm)).toBe(given.wallUm);
    expect(sumOf(axisFromEdge(given), given.jointUm)).toBe(given.wallUm);
  });

  test.prop([side])('leave no end cut under half a tile where the wall holds one', (given) => {
    const axis = centredAxis(given);
    if (given.wallUm >= given.tileUm) expect(axis.isHalfOrMore).toBe(true);
    expect(axis.endGapUm).toBeLessThanOrEqual(given.jointUm);
  });

  test.prop([side])('have a joint between each two and lie within the wall', (given) => {
    for (const axis of [centredAxis(given), axisFromEdge(given)]) {
      for (const [at, strip] of axis.strips.entries()) {
        const next = axis.strips[at + 1];
        const endUm = strip.fromUm + strip.sizeUm;
        expect(strip.sizeUm).toBeGreaterThan(0);
        expect(strip.sizeUm).toBeLessThanOrEqual(given.tileUm);
        if (next) expect(next.fromUm - endUm).toBe(given.jointUm);
        else expect(endUm).toBeLessThanOrEqual(given.wallUm);
      }
    }
  });

  test.prop([side])('are cut alike at both ends, to the micrometre', (given) => {
    const { strips } = centredAxis(given);
    const [first, last] = [strips.at(0)?.sizeUm ?? 0, strips.at(-1)?.sizeUm ?? 0];
    expect(Math.abs(first - last)).toBeLessThanOrEqual(1);
  });
});

const set = fc.record({
  ...{ column: fc.integer({ min: 0, max: 20 }), row: fc.integer({ min: 0, max: 10 }) },
  ...{ across: fc.integer({ min: 1, max: 3 }), down: fc.integer({ min: 1, max: 3 }) },
  name: fc.constantFrom('Tern', 'Heron'),
});
const wall = fc.record({
  widthUm: fc.integer({ min: 200_000, max: 3_000_000 }),
  heightUm: fc.integer({ min: 200_000, max: 1_500_000 }),
  tile: fc.integer({ min: 50_000, max: 200_000 }),
  sets: fc.array(set, { maxLength: 4 }),
  spare: fc.integer({ min: 0, max: 100 }),
});

test.prop([wall])('every cell is counted once, and enough are ordered', (given) => {
  const { widthUm, heightUm, tile, sets, spare } = given;
  const laid = layTiles({
    ...{ widthUm, heightUm, tileWidthUm: tile, tileHeightUm: tile },
    ...{ jointUm: 3_000, rowsFrom: 'bottom', isHandMade: true, variationUm: 0 },
    ...{ sparePercent: String(spare), setSparePercent: '10', places: [], openings: [], sets },
  });
  fc.pre(laid.ok);
  const { cells, columns, rows, wholeCount, cutCount, coveredCount, order } = laid.value;
  const setCells = sets.reduce((sum, { across, down }) => sum + across * down, 0);
  expect(cells).toHaveLength(columns.strips.length * rows.strips.length);
  expect(wholeCount + cutCount + coveredCount + setCells).toBe(cells.length);
  expect(order).toBeGreaterThanOrEqual(wholeCount + cutCount);
  expect(order * 100).toBeLessThan((wholeCount + cutCount) * (100 + spare) + 100);
});
