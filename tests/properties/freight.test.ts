import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';
import { billableWeight, type SizeTerms } from '@/lib/freight/rules/billable';
import { reckonBox, type BoxAsked } from '@/lib/freight/rules/boxing';
import { freightClass } from '@/lib/freight/rules/density';
import { fillBoxes, type Room } from '@/lib/freight/rules/filling';
import { proposeBoxes } from '@/lib/freight/rules/proposing';

const um = (least: number, most: number) =>
  fc.integer({ min: least, max: most }).map((mm) => mm * 1_000);

const box = fc.record({
  lengthUm: fc.integer({ min: 1_000, max: 3_000_000 }),
  widthUm: fc.integer({ min: 1_000, max: 3_000_000 }),
  heightUm: fc.integer({ min: 1_000, max: 3_000_000 }),
  weightG: fc.integer({ min: 1, max: 500_000 }),
});
const terms: fc.Arbitrary<SizeTerms> = fc.record({
  divisorIn3: fc.option(fc.integer({ min: 50, max: 500 })),
  sides: fc.constantFrom('as_measured', 'nearest', 'up'),
  overIn3: fc.integer({ min: 0, max: 4_000 }),
});
const value = <Value>(answer: { ok: true; value: Value } | { ok: false }): Value => {
  if (!answer.ok) throw new Error('it was refused');
  return answer.value;
};

test.prop([box, terms])('nothing is charged as less than it weighs', (each, of) => {
  const { billableLb } = value(billableWeight(each, of));
  expect(billableLb * 453.592_37 + 0.5).toBeGreaterThanOrEqual(each.weightG);
});

test.prop([box, terms, fc.integer({ min: 0, max: 500_000 })])(
  'a longer or a heavier box is never charged as less',
  (each, of, more) => {
    const { billableLb } = value(billableWeight(each, of));
    const longer = value(billableWeight({ ...each, lengthUm: each.lengthUm + more }, of));
    const heavier = value(billableWeight({ ...each, weightG: each.weightG + more }, of));
    expect(longer.billableLb).toBeGreaterThanOrEqual(billableLb);
    expect(heavier.billableLb).toBeGreaterThanOrEqual(billableLb);
  },
);

test.prop([box, fc.integer({ min: 0, max: 500_000 })])(
  'more weight in the same box is never a dearer class, and more room never a cheaper one',
  (each, more) => {
    const { class: before } = value(freightClass([each], '2026-01-01'));
    const heavier = value(freightClass([{ ...each, weightG: each.weightG + more }], '2026-01-01'));
    const larger = value(freightClass([{ ...each, widthUm: each.widthUm + more }], '2026-01-01'));
    expect(heavier.class).toBeLessThanOrEqual(before);
    expect(larger.class).toBeGreaterThanOrEqual(before);
  },
);

test.prop([box, fc.integer({ min: 1, max: 5 })])(
  'boxes all alike have the class of one',
  (each, n) => {
    const one = value(freightClass([each], '2026-01-01'));
    const many = value(
      freightClass(
        Array.from({ length: n }, () => each),
        '2026-01-01',
      ),
    );
    expect(many.densityLbPerFt3).toBeCloseTo(one.densityLbPerFt3, 3);
  },
);

const asked: fc.Arbitrary<BoxAsked> = fc.record({
  kind: fc.constantFrom('box', 'double_box', 'crate'),
  paddingUm: um(0, 300),
  hasBoards: fc.boolean(),
});

test.prop([box, asked])(
  'a box is larger than its room, and its room than what is in it',
  (each, how) => {
    const reckoned = value(reckonBox(each, how));
    for (const side of ['lengthUm', 'widthUm', 'heightUm'] as const) {
      expect(reckoned.outside[side]).toBeGreaterThan(reckoned.inside[side]);
      expect(reckoned.inside[side]).toBeGreaterThanOrEqual(each[side] + 2 * how.paddingUm);
    }
    expect(reckoned.grossG).toBe(each.weightG + reckoned.tareG);
    expect(reckoned.tareG).toBeGreaterThanOrEqual(0);
  },
);

const parts = fc
  .array(
    fc.record({
      lengthUm: um(20, 700),
      widthUm: um(20, 700),
      heightUm: um(5, 200),
      weightG: fc.integer({ min: 50, max: 25_000 }),
    }),
    { minLength: 1, maxLength: 40 },
  )
  .map((list) => list.map((each, at) => ({ ...each, key: `part ${at + 1}`, partNumber: at + 1 })));
const room: fc.Arbitrary<Room> = fc.record({
  lengthUm: um(200, 1_200),
  widthUm: um(200, 900),
  heightUm: um(50, 500),
  mostG: fc.integer({ min: 5_000, max: 60_000 }),
  gapUm: um(0, 30),
});
const inOrder = (keys: readonly string[]) => keys.toSorted();

test.prop([parts, room])('no part is lost and none is packed twice', (list, each) => {
  const { boxes, left } = fillBoxes(list, each);
  const packed = boxes.flatMap(({ layers }) => layers.flatMap((layer) => layer.parts));
  const keys = [...packed, ...left.map(({ part }) => part)].map(({ key }) => key);
  expect(inOrder(keys)).toEqual(inOrder(list.map(({ key }) => key)));
});

test.prop([parts, room])('no box is fuller or heavier than it may be', (list, each) => {
  for (const { layers, content } of fillBoxes(list, each).boxes) {
    const weights = layers.flatMap((layer) => layer.parts.map(({ weightG }) => weightG));
    expect(content.weightG).toBe(weights.reduce((sum, weight) => sum + weight, 0));
    expect(content.weightG).toBeLessThanOrEqual(each.mostG);
    expect(content.lengthUm).toBeLessThanOrEqual(each.lengthUm);
    expect(content.widthUm).toBeLessThanOrEqual(each.widthUm);
    expect(content.heightUm).toBeLessThanOrEqual(each.heightUm);
    for (const layer of layers) {
      const foot = layer.parts.reduce((sum, part) => sum + part.lengthUm * part.widthUm, 0);
      expect(foot).toBeLessThanOrEqual(content.lengthUm * content.widthUm);
      for (const part of layer.parts) expect(part.heightUm).toBeLessThanOrEqual(layer.heightUm);
    }
  }
});

test.prop([parts])('every part of a mural is proposed in one box', (list) => {
  const boxes = value(proposeBoxes(list));
  expect(inOrder(boxes.flatMap(({ layers }) => layers.flat()))).toEqual(
    inOrder(list.map(({ key }) => key)),
  );
  const gross = boxes.reduce((sum, { reckoned }) => sum + reckoned.grossG, 0);
  expect(gross).toBeGreaterThan(list.reduce((sum, { weightG }) => sum + weightG, 0));
});
