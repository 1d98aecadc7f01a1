import { expect, test } from 'vitest';
import { addWorth, shelvesOfLot, type LotMovement } from '@/lib/stock/rules/moves/worth';

const came = (quantity: number, unitCostCents: bigint | null, over: Partial<LotMovement> = {}) => ({
  ...{ skuId: 'first', placeId: 'floor', reason: 'made', quantity, unitCostCents },
  ...over,
});
const went = (quantity: number, over: Partial<LotMovement> = {}) =>
  came(-quantity, null, { reason: 'sold', ...over });

// OpenStax, Principles of Accounting, volume 1, section 10.3: printed 8,955 (first in first out)
// and 8,902 (moving average; 8,902.06 to the cent) of 285 pieces left.
const spies = [came(150, 2_100n), went(120), came(225, 2_700n), went(180), came(210, 3_300n)];

test('a lot at one place is worth what the published sample says, by both ways', () => {
  expect(shelvesOfLot(spies)).toEqual([
    {
      ...{ skuId: 'first', placeId: 'floor', units: 285, isKnown: true },
      ...{ fifoCents: 895_500n, averageCents: 890_206n },
    },
  ]);
});

test('moving pieces about changes nothing in the whole, and loses no cent', () => {
  const away = { reason: 'moved', placeId: 'fair' };
  const shelves = shelvesOfLot([
    ...spies,
    went(97, { reason: 'moved' }),
    came(97, null, away),
    went(1, { ...away, reason: 'sold' }),
  ]);
  const whole = shelvesOfLot([...spies, went(1)]);
  expect(shelves.map((shelf) => shelf.units)).toEqual([188, 96]);
  expect(addWorth(shelves)).toEqual(addWorth(whole));
});

test('a first that became a second keeps its cost, under its own SKU', () => {
  const shelves = shelvesOfLot([
    came(3, 1_000n),
    went(1, { reason: 'second' }),
    came(1, 700n, { reason: 'second', skuId: 'second' }),
  ]);
  expect(shelves.map(({ skuId, fifoCents }) => [skuId, fifoCents])).toEqual([
    ['first', 2_000n],
    ['second', 1_000n],
  ]);
});

test('a second whose first is in another lot leaves the one and comes to the other', () => {
  const [left] = shelvesOfLot([came(3, 1_000n), went(1, { reason: 'second' })]);
  expect(left).toMatchObject({ units: 2, fifoCents: 2_000n });
});

test.each([
  ['never known', [came(2, null)]],
  ['not known of the first that came', [came(2, null), came(2, 900n)]],
])('a cost that was %s is told, and is not nothing by silence', (_label, movements) => {
  expect(shelvesOfLot(movements)).toMatchObject([{ isKnown: false, fifoCents: 0n }]);
});

test('what all has left is on no shelf', () => {
  expect(shelvesOfLot([came(2, 900n), went(2)])).toEqual([]);
});
