import { describe, expect, test } from 'vitest';
import {
  decideMove,
  layReady,
  moveMost,
  moveRefusalMessage,
  readReady,
  setReady,
  writeReady,
  type MoveAsked,
  type MovePlace,
  type PieceAtPlace,
  type ReadyPiece,
} from '@/lib/stock/rules/moves/move';

const floor: MovePlace = { id: 'floor', name: 'Gallery floor', kind: 'gallery', isClosed: false };
const fair: MovePlace = { id: 'fair', name: 'Alder Fair', kind: 'fair', isClosed: false };
const other: MovePlace = { id: 'other', name: 'Saltgrass', kind: 'consignee', isClosed: false };

const tern: PieceAtPlace = {
  ...{ skuId: 't', sku: 'TS-10-CI', title: 'Tern over Shoals', isNumbered: false, grade: 'first' },
  ...{ onHand: 5, held: 2, numbers: [], heldNumbers: [], heldFor: ['Wren Alder', 'Ida Moss'] },
};
const heron: PieceAtPlace = {
  ...{ skuId: 'h', sku: 'HR-14-MO', title: 'Heron', isNumbered: true, grade: 'first' },
  ...{ onHand: 2, held: 1, numbers: [3, 7], heldNumbers: [7], heldFor: ['Ida Moss'] },
};
const chipped: PieceAtPlace = { ...tern, skuId: 'c', sku: 'TS-10-CI-S1', grade: 'second', held: 0 };
const shelves = new Map([tern, heron, chipped].map((piece) => [piece.sku, piece]));

const line = (sku: string, quantity = 1, number: number | null = null): ReadyPiece => ({
  ...{ sku, quantity, number },
});
const asked = (ready: ReadyPiece[], over: Partial<MoveAsked> = {}): MoveAsked => ({
  ...{ from: floor, to: fair, ready },
  ...over,
});

describe('what lies ready, in an address', () => {
  test('reads what it wrote, with how many and which number', () => {
    const text = 'TS-10-CI.KF-8-MW*2.HR-14-MO~7';
    expect(readReady(text)).toEqual([line('TS-10-CI'), line('KF-8-MW', 2), line('HR-14-MO', 1, 7)]);
    expect(writeReady(readReady(text))).toBe(text);
  });

  test.each([
    ['the same twice counts together', 'TS-10-CI.ts-10-ci*3', 'TS-10-CI*4'],
    ['a number lies ready once', 'HR-14-MO~7.HR-14-MO~7', 'HR-14-MO~7'],
    ['nonsense is left out', '..*3.TS-10-CI*0.a b.HR-14-MO~0.💥', ''],
    ['no more than the most of one piece', 'TS-10-CI*999.TS-10-CI*5', 'TS-10-CI*999'],
  ])('%s', (_label, text, read) => {
    expect(writeReady(readReady(text))).toBe(read);
  });

  test('a full list stays as it is, and none takes a line off', () => {
    const many = Array.from({ length: 70 }, (_, at) => `AB-${at + 100}`).join('.');
    expect(readReady(many)).toHaveLength(moveMost.lines);
    const two = layReady([line('TS-10-CI')], line('TS-10-CI'));
    expect(setReady(two, { sku: 'TS-10-CI', number: null }, 0)).toEqual([]);
    expect(setReady([line('HR-14-MO', 1, 7)], { sku: 'HR-14-MO', number: 7 }, 9)).toEqual([
      line('HR-14-MO', 1, 7),
    ]);
  });
});

test('what is there and free moves, a numbered piece by its number', () => {
  const decided = decideMove(asked([line('TS-10-CI', 3), line('HR-14-MO', 1, 3)]), shelves);
  expect(decided).toEqual({
    ok: true,
    value: [
      { skuId: 't', quantity: 3 },
      { skuId: 'h', quantity: 1, editionNumber: 3 },
    ],
  });
});

test.each<[string, MoveAsked, string, string]>([
  ['nothing ready', asked([], { from: null }), 'nothing_ready', 'Nothing lies ready yet.'],
  ['no place', asked([line('X')], { from: null, to: null }), 'unknown_place', 'from which place'],
  [
    'a closed place',
    asked([line('X')], { from: { ...floor, isClosed: true }, to: floor }),
    'place_closed',
    '“Gallery floor” is closed',
  ],
  ['the same place', asked([line('X')], { to: floor }), 'same_place', 'Choose another place'],
  ['an unknown SKU', asked([line('NO-1-X')]), 'unknown_sku', 'has the number NO-1-X'],
  [
    'a second to a gallery',
    asked([line('TS-10-CI-S1', 9)], { to: other }),
    'second_to_gallery',
    'seconds are not given to another gallery',
  ],
  ['no number', asked([line('HR-14-MO')]), 'number_needed', 'Numbers 3 and 7 stand there.'],
  ['a number elsewhere', asked([line('HR-14-MO', 1, 9)]), 'number_not_there', 'Number 9 of Heron'],
  ['a held number', asked([line('HR-14-MO', 1, 7)]), 'number_held', 'is held for Ida Moss'],
  ['too many', asked([line('TS-10-CI', 6)]), 'not_there', 'only 5 stand at “Gallery floor”'],
  [
    'held ones',
    asked([line('TS-10-CI', 4)]),
    'held',
    'Only 3 may go: Tern over Shoals is held for',
  ],
])('refuses %s', (_label, wish, code, sentence) => {
  const decided = decideMove(wish, shelves);
  expect(decided).toMatchObject({ ok: false, refusal: { code } });
  if (!decided.ok) expect(moveRefusalMessage(decided.refusal)).toContain(sentence);
});
