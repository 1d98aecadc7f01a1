import { describe, expect, test } from 'vitest';
import { valueInSteps, valueStock } from '@/lib/stock/rules/value';

const comes = (quantity: number, unitCostCents: bigint | null) => ({ quantity, unitCostCents });
const leaves = (pieces: number) => ({ quantity: -pieces, unitCostCents: null });

test('nothing that moved is worth nothing', () => {
  const nothing = { costOfGoodsCents: 0n, endingCents: 0n, endingUnits: 0 };
  expect(valueStock([])).toEqual({ fifo: nothing, movingAverage: nothing });
});

test('a third of a dollar: each takes its share to the cent, the last takes what is left', () => {
  const steps = valueInSteps([comes(1, 100n), comes(2, 0n), leaves(1), leaves(1), leaves(1)]);
  const taken = steps.slice(2).map((step) => step.movingAverage.cents);
  expect(taken).toEqual([33n, 34n, 33n]);
  expect(steps.at(-1)?.movingAverage.leftCents).toBe(0n);
});

test('half a cent goes up', () => {
  expect(valueStock([comes(1, 1n), comes(1, 0n), leaves(1)]).movingAverage).toEqual({
    costOfGoodsCents: 1n,
    endingCents: 0n,
    endingUnits: 1,
  });
});

describe('a piece that comes back', () => {
  const before = [comes(2, 1_000n), comes(2, 2_000n), leaves(1)];

  test('at the cost it left with leaves the average as it was', () => {
    const { movingAverage } = valueStock([...before, comes(1, 1_500n), leaves(1)]);
    expect(movingAverage).toEqual({
      costOfGoodsCents: 3_000n,
      endingCents: 4_500n,
      endingUnits: 3,
    });
  });

  test('goes to the end of the row, first in first out', () => {
    const steps = valueInSteps([...before, comes(1, 1_000n), leaves(3), leaves(1)]);
    expect(steps.slice(4).map((step) => step.fifo.cents)).toEqual([5_000n, 1_000n]);
  });
});

test('what came without a cost takes the last one known, and nothing before there was one', () => {
  expect(valueStock([comes(1, null)]).fifo.endingCents).toBe(0n);
  expect(valueStock([comes(1, 800n), comes(1, null)]).fifo.endingCents).toBe(1_600n);
});

test('one taking goes through several lots', () => {
  const { fifo } = valueStock([comes(1, 100n), comes(1, 200n), comes(1, 400n), leaves(2)]);
  expect(fifo).toEqual({ costOfGoodsCents: 300n, endingCents: 400n, endingUnits: 1 });
});

test('no more leave than are there', () => {
  expect(() => valueStock([comes(1, 100n), leaves(2)])).toThrow('No more pieces');
});

test('ten thousand movements are valued in a moment', () => {
  const movements = Array.from({ length: 10_000 }, (_, at) =>
    at % 3 === 2 ? leaves(2) : comes(1, BigInt(at)),
  );
  expect(valueStock(movements).fifo.endingUnits).toBe(1);
});
