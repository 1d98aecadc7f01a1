import { expect, test } from 'vitest';
import { decideTakings, type Taking } from '@/lib/stock/rules';

const place = 'floor';
const aTaking = (skuId: string, quantity: number): Taking => ({
  ...{ skuId, quantity, placeId: place },
  ...{ saleLineId: `line of ${skuId}`, unitCostCents: null },
});
const shelf = (skuId: string, onHand: number, held = 0) => ({
  ...{ skuId, placeId: place, onHand, held },
});

test('the last piece can be taken', () => {
  expect(decideTakings([shelf('tern', 1)], [aTaking('tern', 1)])).toEqual({
    ok: true,
    value: true,
  });
});

test.each([
  ['none were ever there', [], [aTaking('tern', 1)], 1, 0],
  ['the last one is gone', [shelf('tern', 0)], [aTaking('tern', 1)], 1, 0],
  ['more are wanted', [shelf('tern', 2)], [aTaking('tern', 3)], 3, 2],
  [
    'two lines together want more',
    [shelf('tern', 3)],
    [aTaking('tern', 2), aTaking('tern', 2)],
    4,
    3,
  ],
  ['they stand elsewhere', [{ ...shelf('tern', 9), placeId: 'fair' }], [aTaking('tern', 1)], 1, 0],
  ['what is here is held', [shelf('tern', 2, 1)], [aTaking('tern', 2)], 2, 2, 1],
])('it is refused when %s', (_label, shelves, takings, ...[wanted, onHand, held = 0]) => {
  expect(decideTakings(shelves, takings)).toEqual({
    ok: false,
    refusal: { code: 'not_enough', skuId: 'tern', placeId: place, wanted, onHand, held },
  });
});

test('of several that are short, the first on the slip is named', () => {
  const decided = decideTakings([shelf('tern', 1)], [aTaking('fern', 1), aTaking('tern', 2)]);
  expect(decided).toMatchObject({ refusal: { skuId: 'fern' } });
});

test.each([0, -1, 1.5])('a taking of %s pieces is a fault of the program', (quantity) => {
  expect(() => decideTakings([], [aTaking('tern', quantity)])).toThrow('at least one piece');
});
