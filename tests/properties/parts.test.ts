import { fc, test } from '@fast-check/vitest';
import { expect, test as example } from 'vitest';
import { cornerMoved, landsOn, nearestOn, woven } from '@/lib/studio/rules/parts/corners';
import { cutInTwo, madeOne } from '@/lib/studio/rules/parts/cutting';
import { faultOf } from '@/lib/studio/rules/parts/drawing';
import { labelSpot } from '@/lib/studio/rules/parts/label';
import { gridOf, inReadingOrder, renumbered } from '@/lib/studio/rules/parts/laying';
import {
  areaOf,
  boxOf,
  edgesOf,
  isInside,
  isSimple,
  keptOutline,
} from '@/lib/studio/rules/parts/outline';
import type { Corner, Outline } from '@/lib/studio/rules/parts/outline';
import { sharedArea } from '@/lib/studio/rules/parts/overlap';
import { partSize } from '@/lib/studio/rules/parts/sizes';

/** A part that goes round a middle once, bent in and out: it never crosses itself. */
const star = fc
  .record({
    at: fc.tuple(fc.integer({ min: 300, max: 700 }), fc.integer({ min: 300, max: 700 })),
    radii: fc.array(fc.integer({ min: 60, max: 290 }), { minLength: 4, maxLength: 14 }),
  })
  .map(({ at, radii }): Outline => {
    const corners = radii.map((radius, step): Corner => {
      const turn = (2 * Math.PI * step) / radii.length;
      return [at[0] + radius * Math.cos(turn), at[1] + radius * Math.sin(turn)];
    });
    return keptOutline(corners);
  });
const spot = fc.tuple(fc.integer({ min: 0, max: 1000 }), fc.integer({ min: 0, max: 1000 }));
const grid = fc.record({
  rows: fc.integer({ min: 1, max: 12 }),
  columns: fc.integer({ min: 1, max: 12 }),
  isOffset: fc.boolean(),
});

/** What rounding corners to a tenth of a thousandth may add or take, in square thousandths. */
const rounding = 200;

test.prop([star])(
  'a part that goes round a middle is simple, and its area is its own overlap',
  (outline) => {
    expect(isSimple(outline)).toBe(true);
    expect(sharedArea(outline, outline)).toBeCloseTo(areaOf(outline), 3);
  },
);

test.prop([star, star])(
  'what two parts share is the same from both sides, and no more than either',
  (one, other) => {
    const shared = sharedArea(one, other);
    expect(shared).toBeCloseTo(sharedArea(other, one), 3);
    expect(shared).toBeLessThanOrEqual(Math.min(areaOf(one), areaOf(other)) + 0.001);
  },
);

test.prop([star, star, fc.array(spot, { minLength: 40, maxLength: 40 })])(
  'a spot that lies in two parts is shared by them',
  (one, other, spots) => {
    const both = spots.filter((each) => isInside(one, each) && isInside(other, each));
    if (both.length > 0) expect(sharedArea(one, other)).toBeGreaterThan(0);
  },
);

test.prop([star, spot, spot])(
  'a cut keeps the area, and its halves do not overlap',
  (outline, from, to) => {
    const cut = cutInTwo(outline, [from, to]);
    if (!cut) return;
    const [one, other] = cut.outlines;
    expect(Math.abs(areaOf(one) + areaOf(other) - areaOf(outline))).toBeLessThan(rounding);
    expect(sharedArea(one, other)).toBeLessThan(rounding);
    expect(isSimple(one) && isSimple(other)).toBe(true);
  },
);

example('a line that grazes a corner cuts off nothing', () => {
  const outline: Outline = [
    ...([
      [792, 304],
      [715, 356],
      [655, 356],
    ] as Corner[]),
    ...([
      [625, 304],
      [655, 252],
      [731, 224.3],
    ] as Corner[]),
  ];
  const grazing: [Corner, Corner] = [
    [777, 285],
    [558, 1],
  ];
  expect(cutInTwo(outline, grazing)).toBeNull();
});

test.prop([star, spot, spot])('two halves of a cut can be made one again', (outline, from, to) => {
  const cut = cutInTwo(outline, [from, to]);
  if (!cut) return;
  const whole = madeOne(...cut.outlines);
  if (typeof whole === 'string') throw new Error(whole);
  expect(Math.abs(areaOf(whole) - areaOf(outline))).toBeLessThan(rounding);
});

test.prop([star])(
  'the number of a part stands inside it, and no spot has much more room',
  (outline) => {
    const { at, room } = labelSpot(outline, 1);
    expect(isInside(outline, at)).toBe(true);
    expect(room).toBeGreaterThan(0);
    const { left, right, top, bottom } = boxOf(outline);
    const half = Math.min(right - left, bottom - top) / 2;
    for (let x = 0; x <= 1000; x += 40) {
      for (let y = 0; y <= 1000; y += 40) {
        if (!isInside(outline, [x, y])) continue;
        const there = Math.min(...edgesOf(outline).map((edge) => nearestOn(edge, [x, y]).far));
        expect(there).toBeLessThanOrEqual(room + half * 0.041);
      }
    }
  },
);

test.prop([grid, fc.array(fc.nat(), { minLength: 160, maxLength: 160 })])(
  'numbering anew reads rows from the left, whatever the order was',
  (asked, chance) => {
    const shapes = gridOf(asked);
    const shuffled = shapes
      .map((shape, at) => ({ shape, at: chance[at] ?? 0 }))
      .toSorted((a, b) => a.at - b.at)
      .map(({ shape }) => shape);
    expect(inReadingOrder(shuffled).map(({ number }) => number)).toEqual(
      shapes.map(({ number }) => number),
    );
    expect(renumbered(shuffled).map(({ number }) => number)).toEqual(shapes.map((_, at) => at + 1));
  },
);

test.prop([fc.nat(24), spot])(
  'a corner moves with its neighbours: the whole stays filled',
  (place, to) => {
    const shapes = gridOf({ rows: 4, columns: 4, isOffset: false });
    const inner = shapes
      .flatMap(({ outline }) => outline)
      .filter(([x, y]) => x > 0 && x < 1000 && y > 0 && y < 1000);
    const from = inner[place % inner.length];
    if (!from) throw new Error('A grid of four has inner corners.');
    const moved = cornerMoved(shapes, from, to);
    if (!moved) return;
    const whole = moved.reduce((sum, { outline }) => sum + areaOf(outline), 0);
    const overlaps = moved.flatMap((one, at) =>
      moved.slice(at + 1).map((other) => sharedArea(one.outline, other.outline)),
    );
    // A corner may be drawn over parts that do not have it: that the drawing tells, and is not kept.
    if (faultOf(moved) === null) expect(Math.abs(whole - 1e6)).toBeLessThan(rounding);
    else expect(Math.max(...overlaps)).toBeGreaterThan(0);
  },
);

test.prop([star, spot])(
  'a touch lands on a corner within reach, so that parts share it',
  (outline, touch) => {
    const landed = landsOn(touch, [outline], 30);
    const near = outline.some(([x, y]) => Math.hypot(x - touch[0], y - touch[1]) <= 30);
    if (near) expect(outline.some(([x, y]) => x === landed[0] && y === landed[1])).toBe(true);
    expect(areaOf(woven(outline, [landed]))).toBeCloseTo(areaOf(outline), -3);
  },
);

test.prop([
  star,
  fc.integer({ min: 50_000, max: 3_000_000 }),
  fc.integer({ min: 50_000, max: 3_000_000 }),
  fc.integer({ min: 1, max: 30 }),
])(
  'a part is wet larger than fired, and shrinks back to its own size',
  (outline, widthUm, heightUm, percent) => {
    const size = partSize(outline, { widthUm, heightUm }, String(percent));
    if (!size.wet) throw new Error('A shrinkage was given.');
    expect(size.wet.widthUm).toBeGreaterThan(size.widthUm);
    const back = (wet: number) => (wet * (100 - percent)) / 100;
    expect(Math.abs(back(size.wet.widthUm) - size.widthUm)).toBeLessThanOrEqual(1);
    expect(Math.abs(back(size.wet.heightUm) - size.heightUm)).toBeLessThanOrEqual(1);
    expect(partSize(outline, { widthUm, heightUm }, null).wet).toBeNull();
  },
);
