import { describe, expect, test } from 'vitest';
import { axisFrom, centredAxis } from '@/lib/walls/rules/tiles/axis';
import { jointFloorUm, withSpare } from '@/lib/walls/rules/tiles/order';
import { findWorking } from '@/lib/workings/list';

const inch = (inches: number) => Math.round(inches * 25_400);

// ANSI A108.02-2017, section 4.3.2, as told by the tile trade's press ("adjusting layout to avoid
// small cuts"): try a joint and a tile in the middle, take equal end cuts of half a tile or more.
describe('a wall of 100 in, tiles of 12 in, joints of 1/4 in', () => {
  const side = { wallUm: inch(100), tileUm: inch(12), jointUm: inch(0.25) };

  test('with a joint in the middle there are eight whole ones and slivers of 7/8 in', () => {
    expect(axisFrom(side, 'joint')).toMatchObject({
      ...{ fullCount: 8, endCutUm: inch(0.875), isHalfOrMore: false },
    });
  });

  test('with a tile in the middle there are seven and 7 in at each end, and that is taken', () => {
    expect(axisFrom(side, 'tile')).toMatchObject({
      ...{ fullCount: 7, endCutUm: inch(7), isHalfOrMore: true },
    });
    expect(centredAxis(side)).toEqual(axisFrom(side, 'tile'));
    // 84 + 2 + 14 = 100
    expect(7 * 12 + 8 * 0.25 + 2 * 7).toBe(100);
  });
});

// A published how-to for a floor of 92 × 111 in: 71 square feet, 75 with 5 % and 82 with 15 %.
test.each([
  ['0', 71],
  ['5', 75],
  ['15', 82],
])('of 92 × 111 in, with %s in a hundred on top, %d are ordered', (percent, order) => {
  const squareFeet = Math.ceil((92 * 111) / 144);
  expect(withSpare(squareFeet, percent)).toEqual({ ok: true, value: order });
});

// ANSI A108.02-2017, section 4.3.8, as the TCNA Handbook 2018 quotes it on page 37.
test.each([
  ['tiles that differ by 1/16 in want 3/16 in', false, 1 / 16, 3 / 16],
  ['tiles that hardly differ want 1/16 in', false, 0, 1 / 16],
  ['tiles that differ by 1/32 in want 3/32 in', false, 1 / 32, 3 / 32],
])('%s', (_label, isHandMade, variationIn, wantedIn) => {
  const floor = jointFloorUm({ isHandMade, variationUm: Math.round(variationIn * 25_400) });
  expect(Math.abs(floor - inch(wantedIn))).toBeLessThanOrEqual(2);
});

test('hand-made tile wants 3/16 in whatever was measured: common practice', () => {
  expect(jointFloorUm({ isHandMade: true, variationUm: 0 })).toBe(4_763);
  expect(jointFloorUm({ isHandMade: true, variationUm: inch(1 / 8) })).toBe(3 * inch(1 / 8));
});

test('the working answers by its keys', () => {
  const working = findWorking('tile-layout');
  expect(working?.answer(working.example)).toMatchObject({
    value: {
      ...{ columns: 19, rows: 5, edgeCutWidthMm: 93.5, edgeCutHeightMm: 103.5 },
      // By hand: 17 × 3 whole of 19 × 5; 95 × 1.1 = 104.5.
      ...{ whole: 51, cut: 44, order: 105 },
    },
  });
});
