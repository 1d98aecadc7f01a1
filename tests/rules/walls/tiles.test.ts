import { describe, expect, test } from 'vitest';
import type { TileWallAsked } from '@/lib/walls/rules/tiles/asked';
import { axisFromEdge, centredAxis } from '@/lib/walls/rules/tiles/axis';
import { settingIsTheirs, tileCautions } from '@/lib/walls/rules/tiles/cautions';
import { layTiles, placeOfSet, sizeOfSet } from '@/lib/walls/rules/tiles/layout';
import { withSpare } from '@/lib/walls/rules/tiles/order';
import { tileRefusalMessage, type TileRefusal } from '@/lib/walls/rules/tiles/refusals';

/** Ten columns and four rows of 100 mm tiles with joints of 5 mm, none of them cut. */
function wall(change: Partial<TileWallAsked> = {}): TileWallAsked {
  return {
    ...{ widthUm: 1_045_000, heightUm: 415_000, tileWidthUm: 100_000, tileHeightUm: 100_000 },
    ...{ jointUm: 5_000, rowsFrom: 'middle', isHandMade: false, variationUm: 0 },
    ...{ sparePercent: '10', setSparePercent: '20', places: [], sets: [], openings: [] },
    ...change,
  };
}
const heron = { name: 'Heron', across: 2, down: 2, column: 1, row: 1 };
const outlet = {
  ...{ kind: 'outlet' as const, leftUm: 210_000, bottomUm: 105_000 },
  ...{ widthUm: 70_000, heightUm: 110_000 },
};

function laid(change: Partial<TileWallAsked> = {}) {
  const answer = layTiles(wall(change));
  if (!answer.ok) throw new Error(tileRefusalMessage(answer.refusal));
  return answer.value;
}

describe('the field', () => {
  test('a wall that comes out even has no cut', () => {
    const { columns, rows, wholeCount, cutCount, order } = laid();
    expect([columns.strips.length, rows.strips.length]).toEqual([10, 4]);
    expect([wholeCount, cutCount, order]).toEqual([40, 0, 44]);
    expect([columns.endCutUm, columns.endGapUm]).toEqual([0, 0]);
  });

  test('from the bottom, the lowest row is whole and what is cut is above', () => {
    const { rows } = laid({ heightUm: 480_000, rowsFrom: 'bottom' });
    expect(rows.strips.map(({ fromUm, sizeUm, isCut }) => [fromUm, sizeUm, isCut])).toEqual([
      [0, 100_000, false],
      [105_000, 100_000, false],
      [210_000, 100_000, false],
      [315_000, 100_000, false],
      [420_000, 60_000, true],
    ]);
    expect(laid({ heightUm: 480_000 }).rows.strips.map(({ sizeUm }) => sizeUm)).toEqual([
      ...[80_000, 100_000, 100_000, 100_000, 80_000],
    ]);
  });

  test('a bottom row that leaves a sliver above says so', () => {
    expect(axisFromEdge({ wallUm: 440_000, tileUm: 100_000, jointUm: 5_000 })).toMatchObject({
      ...{ fullCount: 4, endCutUm: 20_000, isHalfOrMore: false },
    });
  });

  test.each([
    ['half a tile', 50_000, [50_000], 50_000],
    ['one tile', 100_000, [100_000], 0],
    ['a tile and less than two joints', 108_000, [100_000], 0],
    ['a tile and a fifth', 120_000, [57_500, 57_500], 57_500],
    ['two tiles less a hair', 204_000, [99_500, 99_500], 99_500],
  ])('a wall of %s has %#', (_label, wallUm, sizes, endCutUm) => {
    const axis = centredAxis({ wallUm, tileUm: 100_000, jointUm: 5_000 });
    expect(axis.strips.map(({ sizeUm }) => sizeUm)).toEqual(sizes);
    expect(axis.endCutUm).toBe(endCutUm);
  });

  test('an opening makes cut tiles of those it touches and none of those it covers', () => {
    const { cells, coveredCount, cutCount, wholeCount, order } = laid({
      openings: [{ ...outlet, leftUm: 200_000, bottomUm: 100_000, widthUm: 120_000 }],
    });
    expect(coveredCount).toBe(1);
    expect(cells.find(({ kind }) => kind === 'covered')).toMatchObject({ column: 2, row: 1 });
    expect(cutCount).toBe(2);
    expect(wholeCount + cutCount + coveredCount).toBe(40);
    expect(order).toBe(43);
  });

  test('two openings side by side cover together what neither covers alone', () => {
    const half = { ...outlet, bottomUm: 105_000, widthUm: 50_000, heightUm: 100_000 };
    const openings = [half, { ...half, leftUm: 260_000 }];
    expect(laid({ openings }).coveredCount).toBe(1);
  });
});

describe('set tiles', () => {
  test('lie over whole cells with the joints between, and take the place of the field', () => {
    const { columns, rows, cells, wholeCount, setOrders } = laid({ sets: [heron] });
    expect(placeOfSet(heron, columns, rows)).toEqual({
      ...{ leftUm: 105_000, bottomUm: 105_000, widthUm: 205_000, heightUm: 205_000 },
      isOnCut: false,
    });
    expect(cells.filter(({ kind }) => kind === 'set')).toHaveLength(4);
    expect(wholeCount).toBe(36);
    expect(setOrders).toEqual([
      { name: 'Heron', widthUm: 205_000, heightUm: 205_000, count: 1, order: 2 },
    ]);
    expect(sizeOfSet(heron, wall())).toEqual({ widthUm: 205_000, heightUm: 205_000 });
  });

  test('are ordered by name and size, with a spare of their own', () => {
    const sets = [
      heron,
      { ...heron, column: 4 },
      { ...heron, across: 1, down: 1, column: 7 },
      { ...heron, name: 'Tern', across: 1, down: 1, column: 8 },
    ];
    const orders = laid({ sets, setSparePercent: '0' }).setOrders;
    expect(orders.map(({ name, count, order }) => [name, count, order])).toEqual([
      ['Heron', 2, 2],
      ['Heron', 1, 1],
      ['Tern', 1, 1],
    ]);
  });
});

const refusals: readonly (readonly [TileRefusal['code'], Partial<TileWallAsked>])[] = [
  ['no_size', { widthUm: 0 }],
  ['no_size', { heightUm: -1 }],
  ['no_size', { tileWidthUm: Number.NaN }],
  ['no_size', { jointUm: -1 }],
  ['joint_wider_than_tile', { jointUm: 100_001 }],
  ['too_many_tiles', { widthUm: 100_000_000, heightUm: 100_000_000 }],
  ['opening_outside', { openings: [{ ...outlet, leftUm: -1 }] }],
  ['opening_outside', { openings: [{ ...outlet, heightUm: 400_000 }] }],
  ['openings_overlap', { openings: [outlet, { ...outlet, leftUm: 279_999 }] }],
  ['set_outside', { sets: [{ ...heron, column: 9 }] }],
  ['set_outside', { sets: [{ ...heron, row: -1 }] }],
  ['set_outside', { sets: [{ ...heron, across: 0 }] }],
  ['set_on_a_cut', { widthUm: 1_100_000, sets: [{ ...heron, column: 0 }] }],
  ['set_over_an_opening', { sets: [heron], openings: [outlet] }],
  ['sets_overlap', { sets: [heron, { ...heron, column: 2, row: 2 }] }],
  ['spare_not_a_percent', { sparePercent: 'ten' }],
  ['spare_not_a_percent', { setSparePercent: '101' }],
];

test.each(refusals)('is refused as %s: %j', (code, change) => {
  const answer = layTiles(wall(change));
  expect(answer.ok ? 'laid' : answer.refusal.code).toBe(code);
  if (!answer.ok) expect(tileRefusalMessage(answer.refusal)).toMatch(/^[A-Z].+\.$/);
});

test('an absurd wall is refused before anything is laid', () => {
  const answer = layTiles(wall({ tileWidthUm: 1, tileHeightUm: 1, jointUm: 0 }));
  expect(answer).toMatchObject({ refusal: { code: 'too_many_tiles' } });
});

test.each([
  [0, '10', 0],
  [1, '0.01', 2],
  [100, '0', 100],
  [100, '100', 200],
  [3, '33.333333', 4],
])('of %d with %s in a hundred on top %d are ordered', (count, percent, order) => {
  expect(withSpare(count, percent)).toEqual({ ok: true, value: order });
});

test('cautions come with the place, with relief and with a joint that is too narrow', () => {
  expect(tileCautions(wall())).toEqual([]);
  const all = tileCautions(
    wall({
      places: ['heat', 'water', 'outdoors', 'food'],
      sets: [heron],
      isHandMade: true,
      jointUm: 3_000,
    }),
  );
  expect(all.map((caution) => caution.split(/[ :]/)[0])).toEqual([
    ...['Heat', 'Wet', 'Outdoors', 'Food', 'A', 'The'],
  ]);
  expect(settingIsTheirs).toContain('licensed tile contractor');
});
