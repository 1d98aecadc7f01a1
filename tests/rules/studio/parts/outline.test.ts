import { describe, expect, test } from 'vitest';
import { cornerMoved, cornerTaken, landsOn, wovenShapes } from '@/lib/studio/rules/parts/corners';
import { cutInTwo, madeOne } from '@/lib/studio/rules/parts/cutting';
import { bareShape } from '@/lib/studio/rules/parts/laying';
import {
  areaOf,
  isSimple,
  keptOutline,
  middleOf,
  type Outline,
} from '@/lib/studio/rules/parts/outline';

const box = (left: number, top: number, right: number, bottom: number): Outline => [
  [left, top],
  [right, top],
  [right, bottom],
  [left, bottom],
];
/** A U: open above between 40 and 60. */
const bowl: Outline = [
  [0, 0],
  [40, 0],
  [40, 60],
  [60, 60],
  [60, 0],
  [100, 0],
  [100, 100],
  [0, 100],
];

describe('outlines', () => {
  test('areas by the shoelace, whichever way the corners go', () => {
    expect(areaOf(box(0, 0, 100, 50))).toBe(5_000);
    expect(areaOf(box(0, 0, 100, 50).toReversed())).toBe(5_000);
    expect(areaOf(bowl)).toBe(8_800);
    expect(middleOf(box(0, 0, 100, 50))).toEqual([50, 25]);
  });

  test.each<[string, Outline, boolean]>([
    ['a box', box(0, 0, 10, 10), true],
    ['a bowl', bowl, true],
    [
      'a bow tie',
      [
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ],
      false,
    ],
    [
      'two corners',
      [
        [0, 0],
        [10, 10],
      ],
      false,
    ],
    [
      'an edge gone back over',
      [
        [0, 0],
        [10, 0],
        [4, 0],
        [4, 10],
      ],
      false,
    ],
    [
      'a corner that touches another edge',
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [5, 0],
        [0, 10],
      ],
      false,
    ],
  ])('%s', (_, outline, isSound) => {
    expect(isSimple(outline)).toBe(isSound);
  });

  test('are kept with the clock, inside the drawing, without a corner twice', () => {
    const kept = keptOutline([
      [-5, 0],
      [0, 1200],
      [500.04, 1000],
      [500.04, 1000],
      [500, 0],
    ]);
    expect(kept).toEqual([
      [500, 0],
      [500, 1000],
      [0, 1000],
      [0, 0],
    ]);
  });
});

describe('cutting and making one', () => {
  test('a box is cut in the middle', () => {
    const cut = cutInTwo(box(0, 0, 100, 100), [
      [50, -10],
      [50, 110],
    ]);
    expect(cut?.outlines.map(areaOf)).toEqual([5_000, 5_000]);
    expect(cut?.corners).toEqual([
      [50, 0],
      [50, 100],
    ]);
  });

  test('of a bowl only the arm is cut that the line was drawn over', () => {
    const cut = cutInTwo(bowl, [
      [-10, 30],
      [50, 30],
    ]);
    expect(cut?.outlines.map(areaOf).toSorted((a, b) => a - b)).toEqual([1_200, 7_600]);
  });

  test('through two corners, no corner comes twice', () => {
    const cut = cutInTwo(box(0, 0, 100, 100), [
      [0, 0],
      [100, 100],
    ]);
    expect(cut?.outlines.map((each) => each.length)).toEqual([3, 3]);
  });

  test('a line beside the part, or along its edge, cuts nothing', () => {
    expect(
      cutInTwo(box(0, 0, 100, 100), [
        [200, 0],
        [200, 100],
      ]),
    ).toBeNull();
    expect(
      cutInTwo(box(0, 0, 100, 100), [
        [0, 0],
        [0, 100],
      ]),
    ).toBeNull();
    expect(
      cutInTwo(box(0, 0, 100, 100), [
        [5, 5],
        [5, 5],
      ]),
    ).toBeNull();
  });

  test('two neighbours become one, and straight corners go unless another part needs them', () => {
    const [one, other] = [box(0, 0, 50, 100), box(50, 0, 100, 100)];
    expect(madeOne(one, other)).toEqual(keptOutline(box(0, 0, 100, 100)));
    expect(madeOne(one, other, [[50, 100]])).toContainEqual([50, 100]);
  });

  test('neighbours that share only a piece of an edge become one too', () => {
    const whole = madeOne(box(0, 0, 50, 100), box(50, 20, 100, 60));
    expect(typeof whole === 'string' ? 0 : areaOf(whole)).toBe(7_000);
  });

  test('parts that only touch at a corner are no neighbours, and no part has a hole', () => {
    expect(madeOne(box(0, 0, 50, 50), box(50, 50, 100, 100))).toBe('not_neighbours');
    expect(madeOne(box(0, 0, 50, 50), box(70, 0, 100, 50))).toBe('not_neighbours');
    expect(
      madeOne(bowl, [
        [0, -20],
        [100, -20],
        [100, 0],
        [60, 0],
        [40, 0],
        [0, 0],
      ]),
    ).toBe('would_have_a_hole');
  });
});

describe('corners', () => {
  const two = [bareShape(1, box(0, 0, 50, 100)), bareShape(2, box(50, 0, 100, 100))];

  test('a touch near a corner lands on it, near an edge on the edge, elsewhere where it was', () => {
    const outlines = two.map(({ outline }) => outline);
    expect(landsOn([53, 98], outlines, 10)).toEqual([50, 100]);
    expect(landsOn([53, 40], outlines, 10)).toEqual([50, 40]);
    expect(landsOn([75, 40], outlines, 10)).toEqual([75, 40]);
    expect(landsOn([995, 500], outlines, 10)).toEqual([1000, 500]);
  });

  test('a corner moves for both that have it', () => {
    const moved = cornerMoved(two, [50, 0], [60, 0]);
    expect(moved?.map(({ outline }) => areaOf(outline))).toEqual([5_500, 4_500]);
  });

  test('a corner does not move where its part would cross itself', () => {
    expect(cornerMoved(two, [0, 0], [200, 50])).toBeNull();
  });

  test('a corner is taken away, but never the third last', () => {
    expect(cornerTaken(two, [0, 0])?.[0]?.outline).toHaveLength(3);
    const triangle = [
      bareShape(1, [
        [0, 0],
        [100, 0],
        [0, 100],
      ]),
    ];
    expect(cornerTaken(triangle, [0, 0])).toBeNull();
  });

  test('a corner on a neighbour’s edge is woven into it', () => {
    const [woven] = wovenShapes(two, [[50, 30]]);
    expect(woven?.outline).toContainEqual([50, 30]);
    expect(woven && areaOf(woven.outline)).toBe(5_000);
  });
});
