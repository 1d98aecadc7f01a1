import { describe, expect, test } from 'vitest';
import { cutInTwo } from '@/lib/studio/rules/parts/cutting';
import { faultOf } from '@/lib/studio/rules/parts/drawing';
import { labelSpot } from '@/lib/studio/rules/parts/label';
import {
  bareShape,
  gridOf,
  likelyArea,
  renumbered,
  sparesToMake,
} from '@/lib/studio/rules/parts/laying';
import { areaOf, type Outline, type Shape } from '@/lib/studio/rules/parts/outline';
import { sharedArea } from '@/lib/studio/rules/parts/overlap';
import { areaWords, partSize } from '@/lib/studio/rules/parts/sizes';

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

describe('a drawing', () => {
  const shape = (number: number, outline: Outline): Shape => ({
    ...bareShape(number, outline),
    outline,
  });

  test.each<[string, Shape[], object | null]>([
    ['nothing', [], { code: 'nothing_drawn' }],
    ['one part', [shape(1, box(0, 0, 10, 10))], null],
    [
      'a number left out',
      [shape(2, box(0, 0, 10, 10))],
      { code: 'numbers_not_in_order', missing: 1 },
    ],
    [
      'a number twice',
      [shape(1, box(0, 0, 10, 10)), shape(1, box(20, 0, 30, 10))],
      { code: 'numbers_not_in_order', missing: 2 },
    ],
    [
      'a bow tie',
      [
        shape(1, [
          [0, 0],
          [10, 10],
          [10, 0],
          [0, 10],
        ]),
      ],
      { code: 'part_crosses_itself', number: 1 },
    ],
    ['a speck', [shape(1, box(0, 0, 2, 2))], { code: 'part_too_small', number: 1 }],
    [
      'two over one another',
      [shape(1, box(0, 0, 100, 100)), shape(2, box(50, 50, 150, 150))],
      { code: 'parts_overlap', number: 1, other: 2 },
    ],
    ['a sliver', [shape(1, box(0, 0, 100, 100)), shape(2, box(99.8, 0, 200, 100))], null],
  ])('%s', (_, shapes, fault) => {
    expect(faultOf(shapes)).toEqual(fault);
  });

  test('has at most three hundred parts', () => {
    const many = Array.from({ length: 301 }, (_, at) => shape(at + 1, box(0, 0, 10, 10)));
    expect(faultOf(many)).toEqual({ code: 'too_many_parts', parts: 301 });
  });

  test('what lies inside another is found, whichever is the larger', () => {
    expect(sharedArea(box(0, 0, 100, 100), box(20, 20, 40, 40))).toBe(400);
    expect(sharedArea(bowl, box(40, 0, 60, 60))).toBe(0);
    expect(sharedArea(bowl, box(40, 0, 60, 70))).toBe(200);
  });
});

describe('laying', () => {
  test('a grid of bricks has a half one at both ends of every second row', () => {
    const shapes = gridOf({ rows: 2, columns: 2, isOffset: true });
    expect(shapes.map(({ outline }) => Math.round(areaOf(outline)))).toEqual([
      250_000, 250_000, 125_000, 250_000, 125_000,
    ]);
    expect(shapes[0]?.outline).toContainEqual([250, 500]);
  });

  test('no grid is larger than a drawing may be', () => {
    expect(gridOf({ rows: 20, columns: 16, isOffset: false })).toEqual([]);
    expect(gridOf({ rows: 0, columns: 4, isOffset: false })).toEqual([]);
  });

  test('numbers go from the left, row by row, though rows are uneven', () => {
    const uneven = [
      bareShape(9, box(0, 520, 500, 1000)),
      bareShape(4, box(520, 0, 1000, 480)),
      bareShape(7, box(0, 20, 500, 510)),
      bareShape(1, box(510, 490, 1000, 1000)),
    ];
    expect(renumbered(uneven).map(({ outline }) => outline[0])).toEqual([
      [0, 20],
      [520, 0],
      [0, 520],
      [510, 490],
    ]);
  });

  test('the colour area is the one whose spot is nearest, in true lengths', () => {
    const areas = [
      { name: 'sky', at: [500, 0] },
      { name: 'sea', at: [0, 500] },
    ] as const;
    expect(likelyArea(box(0, 0, 500, 500), areas, 4)).toBe('sky');
    expect(likelyArea(box(0, 0, 400, 500), areas, 1)).toBe('sea');
    expect(likelyArea(box(0, 0, 10, 10), [], 1)).toBe('');
  });

  test('one in ten is made twice: the long thin ones', () => {
    const shapes = gridOf({ rows: 4, columns: 5, isOffset: false });
    const [first, ...others] = shapes;
    if (!first) throw new Error('A grid has a first part.');
    const cut = cutInTwo(first.outline, [
      [20, -10],
      [20, 300],
    ]);
    const both = (cut?.outlines ?? []).map((outline, at) => bareShape(at === 0 ? 1 : 21, outline));
    const spares = sparesToMake([...both, ...others], 1);
    expect(spares).toHaveLength(3);
    expect(spares).toContain(both.find(({ outline }) => areaOf(outline) < 10_000)?.number);
  });

  test('the number of a bent part stands inside it', () => {
    const { at, room } = labelSpot(bowl);
    expect(at[1]).toBeGreaterThan(60);
    expect(room).toBeGreaterThan(19);
  });
});

describe('sizes', () => {
  test('a part of a relief, fired and wet', () => {
    const size = partSize(box(0, 0, 100, 200), { widthUm: 1_000_000, heightUm: 1_000_000 }, '12');
    expect(size).toEqual({
      widthUm: 100_000,
      heightUm: 200_000,
      areaMm2: 20_000,
      wet: { widthUm: 113_636, heightUm: 227_273 },
    });
  });

  test('areas as the gallery measures', () => {
    expect(areaWords(64_516, 'in')).toBe('100 sq in');
    expect(areaWords(2_000, 'in')).toBe('3.1 sq in');
    expect(areaWords(20_000, 'mm')).toBe('200 cm²');
  });
});
