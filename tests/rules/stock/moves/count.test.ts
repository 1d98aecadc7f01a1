import { describe, expect, test } from 'vitest';
import {
  decideBooking,
  differencesOf,
  whyWords,
  type CountDifference,
  type CountedSku,
  type DifferenceWhy,
} from '@/lib/stock/rules/moves/count';
import { countRefusalMessage } from '@/lib/stock/rules/moves/count-refusals';

const tern: CountedSku = {
  ...{ skuId: 't', sku: 'TS-10-CI', title: 'Tern over Shoals', counted: 3, expected: 5 },
  ...{ held: 0, heldFor: [], unitCostCents: 2_400n, numbers: null },
};
const heron: CountedSku = {
  ...{ ...tern, skuId: 'h', sku: 'HR-14-MO', title: 'Heron', counted: 2, expected: 2 },
  numbers: { seen: [3, 8], expected: [3, 7], held: [], elsewhere: [] },
};
const differ = (sku: CountedSku): CountDifference => {
  const counted = sku.counted ?? 0;
  return { ...sku, counted, difference: counted - sku.expected };
};
const because = (why: DifferenceWhy) => new Map([tern, heron].map((sku) => [sku.skuId, why]));

describe('where a count and the books differ', () => {
  test('what agrees is left out, what was not counted counts as none', () => {
    const same = { ...tern, counted: 5 };
    const uncounted = { ...tern, skuId: 'u', counted: null };
    const found = differencesOf([same, tern, uncounted], { partOnly: false });
    expect(found.map((each) => [each.skuId, each.difference])).toEqual([
      ['t', -2],
      ['u', -5],
    ]);
  });

  test('in a part, what was not counted is passed over', () => {
    expect(differencesOf([{ ...tern, counted: null }], { partOnly: true })).toEqual([]);
  });

  test('as many of an edition, but another number, is a difference', () => {
    expect(differencesOf([heron], { partOnly: true })).toHaveLength(1);
    const numbers = { seen: [7, 3], expected: [3, 7], held: [], elsewhere: [] };
    expect(differencesOf([{ ...heron, numbers }], { partOnly: true })).toEqual([]);
  });
});

describe('how the books are put right', () => {
  test.each<[DifferenceWhy, number, string]>([
    ['missing', 3, 'missing'],
    ['broken', 3, 'broken'],
    ['counted', 3, 'counted'],
    ['found', 6, 'missing'],
    ['counted', 6, 'counted'],
  ])('%s with %i counted is written down as %s', (why, counted, reason) => {
    const decided = decideBooking([differ({ ...tern, counted })], because(why));
    const quantity = counted - 5;
    expect(decided).toMatchObject({ ok: true, value: [{ quantity, reason, skuId: 't' }] });
  });

  test('an edition is put right number by number, what is found first', () => {
    const decided = decideBooking([differ(tern), differ(heron)], because('counted'));
    expect(decided.ok && decided.value.map((each) => [each.quantity, each.editionNumber])).toEqual([
      [1, 8],
      [-1, 7],
      [-2, undefined],
    ]);
  });
});

const moved = { seen: [8], expected: [7], held: [7], elsewhere: [{ number: 8, place: 'Fair' }] };

test.each<[string, CountedSku, DifferenceWhy | null, string]>([
  [
    'held_pieces',
    { ...tern, counted: 1, held: 2, heldFor: ['Wren Alder'], numbers: moved },
    null,
    '2 of Tern over Shoals are held for Wren Alder. Tell them',
  ],
  [
    'held_pieces',
    { ...tern, counted: 1, held: 1, heldFor: ['Ida Moss'], numbers: moved },
    null,
    '1 of Tern over Shoals is held for Ida Moss.',
  ],
  [
    'number_is_elsewhere',
    { ...tern, numbers: { ...moved, held: [] } },
    null,
    'number 8 of Tern over Shoals stands at “Fair”',
  ],
  ['why_needed', tern, null, 'Say what became of Tern over Shoals (TS-10-CI).'],
  ['why_does_not_fit', { ...tern, counted: 9 }, 'missing', 'Choose another reason'],
  ['why_does_not_fit', { ...tern, counted: 9 }, 'broken', 'Choose another reason'],
  ['why_does_not_fit', tern, 'found', 'Choose another reason'],
])('refuses %s before what comes after it', (code, sku, why, sentence) => {
  const whys = why === null ? new Map<string, DifferenceWhy>() : because(why);
  const decided = decideBooking([differ(sku)], whys);
  expect(decided).toMatchObject({ ok: false, refusal: { code } });
  if (!decided.ok) expect(countRefusalMessage(decided.refusal)).toContain(sentence);
});

test('a reason is told in words, and one from another time as it stands', () => {
  expect(whyWords('counted')).toBe('counted again, it is so');
  expect(whyWords('lent out')).toBe('lent out');
});
