import { describe, expect, test } from 'vitest';
import { reckonBox } from '@/lib/freight/rules/boxing';
import { fillBoxes, type Room, type ToPack } from '@/lib/freight/rules/filling';
import { handsCautions, handsFor, handsOnLabel } from '@/lib/freight/rules/hands';
import { beyondParcel, fitsThrough, girthUm } from '@/lib/freight/rules/measures';
import { proposeBoxes, type ToSend } from '@/lib/freight/rules/proposing';
import { tierBox, tierOf } from '@/lib/freight/rules/tiers';
import { umPerInch } from '@/lib/units/rules';

const inches = (length: number, width: number, height: number) => ({
  lengthUm: Math.round(length * umPerInch),
  widthUm: Math.round(width * umPerInch),
  heightUm: Math.round(height * umPerInch),
});
const pounds = (lb: number) => Math.round(lb * 453.592_37);
const weighing = (lb: number, ...sides: [number, number, number]) => ({
  ...inches(...sides),
  weightG: pounds(lb),
});

describe('the sides of a box', () => {
  test('its girth is twice the two shorter sides, however it stands', () => {
    expect(girthUm(inches(30, 20, 10))).toBe(60 * umPerInch);
    expect(girthUm(inches(10, 30, 20))).toBe(60 * umPerInch);
  });

  test.each([
    [weighing(150, 40, 20, 10), []],
    [weighing(150.1, 40, 20, 10), ['too_heavy']],
    [weighing(40, 108, 10, 10), []],
    [weighing(40, 109, 10, 10), ['too_long']],
    [weighing(40, 80, 40, 10), ['too_large_round']],
    [weighing(200, 120, 60, 20), ['too_heavy', 'too_long', 'too_large_round']],
  ])('%j is beyond a parcel by %j', (box, beyond) => {
    expect(beyondParcel(box)).toEqual(beyond);
  });

  test.each<[[number, number, number], number, number, string]>([
    [[64, 40, 9], 30, 80, 'fits'],
    [[64, 40, 29], 30, 80, 'tight'],
    [[64, 40, 31], 30, 80, 'no'],
    [[64, 28, 9], 80, 30, 'fits'],
    [[90, 79, 9], 30, 80, 'tight'],
    [[90, 81, 9], 30, 80, 'no'],
  ])('%j in through a door of %i × %i in: %s', (sides, width, height, answer) => {
    const opening = { widthUm: width * umPerInch, heightUm: height * umPerInch };
    expect(fitsThrough(inches(...sides), opening)).toBe(answer);
  });
});

test.each([
  [50, 'one_person', null],
  [50.1, 'two_people', 'TWO PEOPLE'],
  [100, 'two_people', 'TWO PEOPLE'],
  [100.1, 'three_or_lift', 'THREE PEOPLE OR A LIFT'],
  [150, 'three_or_lift', 'THREE PEOPLE OR A LIFT'],
  [150.1, 'freight', 'LIFT ONLY'],
] as const)('%d lb is carried by %s', (lb, hands, label) => {
  expect(handsFor(pounds(lb))).toBe(hands);
  expect(handsOnLabel[hands]).toBe(label);
  expect(handsCautions[hands] === null).toBe(label === null);
});

describe('a box around something', () => {
  const tile = weighing(1.5, 6, 6, 0.5);

  test('a double box has the sleeve, the inner box, the padding and the outer box around it', () => {
    const answer = reckonBox(tile, tierBox.sleeves);
    expect(answer.ok && answer.value.outside).toEqual(inches(11.5, 11.5, 6));
    expect(answer.ok && answer.value.inside).toEqual(inches(11, 11, 5.5));
  });

  test('a crate has foam, plywood and battens around it', () => {
    const answer = reckonBox(weighing(100, 60, 36, 4), tierBox.crate);
    expect(answer.ok && answer.value.inside).toEqual(inches(64, 40, 8));
    expect(answer.ok && answer.value.outside).toEqual(inches(66.25, 42.25, 10.25));
  });

  test('boards and more padding make it heavier, and full is empty and what is in it', () => {
    const bare = reckonBox(tile, { ...tierBox.sleeves, paddingUm: 0 });
    const padded = reckonBox(tile, tierBox.sleeves);
    const boarded = reckonBox(tile, { ...tierBox.sleeves, hasBoards: true });
    const tares = [bare, padded, boarded].map((answer) => (answer.ok ? answer.value.tareG : 0));
    expect(tares).toEqual(tares.toSorted((a, b) => a - b));
    expect(new Set(tares).size).toBe(3);
    expect(padded.ok && padded.value.grossG - padded.value.tareG).toBe(tile.weightG);
  });

  test('what has no side or no weight has no box', () => {
    expect(reckonBox({ ...tile, heightUm: 0 }, tierBox.crate).ok).toBe(false);
    expect(reckonBox({ ...tile, weightG: 0 }, tierBox.sleeves).ok).toBe(false);
  });
});

test.each<[string, ReturnType<typeof weighing>, string]>([
  ['a tile', weighing(1.5, 6, 6, 0.5), 'sleeves'],
  ['a heavy block', weighing(9, 6, 6, 4), 'panel_box'],
  ['a panel', weighing(16, 18, 12, 2), 'panel_box'],
  ['a heavy panel', weighing(41, 18, 12, 3), 'crate'],
  ['a relief', weighing(100, 60, 36, 4), 'crate'],
])('%s goes by its size and weight', (_label, piece, tier) => {
  expect(tierOf(piece)).toBe(tier);
});

const room: Room = { ...inches(20, 20, 6), mostG: pounds(40), gapUm: umPerInch };
const slab = (key: number | string, lb = 10): ToPack => ({
  ...weighing(lb, 9, 9, 2),
  key: String(key),
});

describe('filling boxes', () => {
  test('four lie in a layer, two layers in a box, as heavy as it may be', () => {
    const { boxes, left } = fillBoxes(
      [1, 2, 3, 4, 5, 6, 7, 8].map((key) => slab(key, 5)),
      room,
    );
    expect(left).toEqual([]);
    expect(boxes).toHaveLength(1);
    expect(boxes[0]?.layers.map(({ parts }) => parts.length)).toEqual([4, 4]);
    expect(boxes[0]?.content).toEqual({ ...inches(19, 19, 5), weightG: 8 * pounds(5) });
  });

  test('too heavy for one: two alike, not a full one and a rest', () => {
    const { boxes } = fillBoxes(
      [1, 2, 3, 4, 5, 6].map((key) => slab(key)),
      room,
    );
    expect(boxes.map(({ content }) => content.weightG)).toEqual([3 * pounds(10), 3 * pounds(10)]);
  });

  test('the heavier layer lies at the bottom', () => {
    const parts = [
      ...[1, 2, 3, 4].map((key) => slab(key, 2)),
      ...[5, 6, 7, 8].map((key) => slab(key, 4)),
    ];
    const [box] = fillBoxes(parts, { ...room, mostG: pounds(100) }).boxes;
    const weights = box?.layers.map((layer) =>
      layer.parts.reduce((sum, part) => sum + part.weightG, 0),
    );
    expect(weights).toEqual([4 * pounds(4), 4 * pounds(2)]);
  });

  test('what is too large or too heavy for any is told apart', () => {
    const large = { ...weighing(5, 21, 9, 2), key: 'large' };
    const high = { ...weighing(5, 9, 9, 7), key: 'high' };
    const heavy = slab('heavy', 41);
    const { boxes, left } = fillBoxes([large, slab('fits'), high, heavy], room);
    expect(boxes).toHaveLength(1);
    expect(left.map(({ part, why }) => [part.key, why])).toEqual([
      ['large', 'too_large'],
      ['high', 'too_large'],
      ['heavy', 'too_heavy'],
    ]);
  });

  test('nothing needs no box', () => {
    expect(fillBoxes([], room)).toEqual({ boxes: [], left: [] });
  });
});

const part = (number: number, lb: number, ...sides: [number, number, number]): ToSend => ({
  ...weighing(lb, ...sides),
  key: `part ${number}`,
  partNumber: number,
});

describe('what is proposed', () => {
  test('ten tiles stand together in double boxes', () => {
    const tiles = Array.from({ length: 10 }, (_, at) => part(at + 1, 1.5, 6, 6, 0.5));
    const answer = proposeBoxes(tiles);
    const boxes = answer.ok ? answer.value : [];
    expect(boxes.map(({ kind, tier }) => [kind, tier])).toEqual([['double_box', 'sleeves']]);
    expect(boxes[0]?.layers.flat()).toHaveLength(10);
  });

  test('a mural of large parts goes in crates, none over 80 lb of clay', () => {
    const parts = Array.from({ length: 24 }, (_, at) => part(at + 1, 9, 15, 13, 2));
    const answer = proposeBoxes(parts);
    const boxes = answer.ok ? answer.value : [];
    expect(boxes.map(({ layers }) => layers.flat().length)).toEqual([8, 8, 8]);
    expect(boxes.every(({ tier }) => tier === 'crate')).toBe(true);
    const first = boxes.map(({ layers }) => layers.flat().map((key) => Number(key.slice(5))));
    expect(first.map((numbers) => [Math.min(...numbers), Math.max(...numbers)])).toEqual([
      ...[
        [1, 8],
        [9, 16],
        [17, 24],
      ],
    ]);
  });

  test('two panels are never laid on one another; a relief has a crate of its own', () => {
    const panel = { ...weighing(16, 18, 12, 2), partNumber: null };
    const relief = { ...weighing(100, 60, 36, 4), partNumber: null, key: 'relief' };
    const answer = proposeBoxes([relief, { ...panel, key: 'a' }, { ...panel, key: 'b' }]);
    expect(answer.ok && answer.value.map(({ tier, layers }) => [tier, layers])).toEqual([
      ['crate', [['relief']]],
      ['panel_box', [['a']]],
      ['panel_box', [['b']]],
    ]);
  });

  test('a part too long for a shared crate has one of its own', () => {
    const answer = proposeBoxes([part(1, 30, 60, 10, 2), part(2, 9, 15, 13, 2)]);
    expect(answer.ok && answer.value.map(({ layers }) => layers.flat())).toEqual([
      ['part 1'],
      ['part 2'],
    ]);
  });

  test.each([
    [[], 'nothing_to_reckon'],
    [[{ ...part(1, 1, 6, 6, 1), weightG: 0 }], 'weight_out_of_range'],
    [[{ ...part(1, 1, 6, 6, 1), widthUm: 0 }], 'side_out_of_range'],
  ])('refuses %j', (pieces, code) => {
    expect(proposeBoxes(pieces)).toMatchObject({ ok: false, refusal: { code } });
  });
});
