import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';
import { chanceAtMost, demandInLead } from '@/lib/stock/rules/demand';
import { reorderPoint, startCount } from '@/lib/stock/rules/reorder';
import { valueInSteps, valueStock } from '@/lib/stock/rules/value';

const arrival = fc.record({
  quantity: fc.integer({ min: 1, max: 50 }),
  unitCostCents: fc.bigInt({ min: 0n, max: 100_000n }),
});
/** Comings and goings in which never more leave than are there. */
const movements = fc
  .array(fc.tuple(arrival, fc.integer({ min: 0, max: 60 })), { maxLength: 40 })
  .map((pairs) => {
    let here = 0;
    return pairs.flatMap(([came, wanted]) => {
      here += came.quantity;
      const taken = Math.min(wanted, here);
      here -= taken;
      return taken === 0 ? [came] : [came, { quantity: -taken, unitCostCents: null }];
    });
  });

test.prop([movements])('what left and what is left cost what all arrivals cost', (moved) => {
  const boughtCents = moved.reduce(
    (sum, each) =>
      each.quantity > 0 ? sum + BigInt(each.quantity) * (each.unitCostCents ?? 0n) : sum,
    0n,
  );
  const units = moved.reduce((sum, each) => sum + each.quantity, 0);
  for (const worth of Object.values(valueStock(moved))) {
    expect(worth.costOfGoodsCents + worth.endingCents).toBe(boughtCents);
    expect(worth.endingUnits).toBe(units);
    expect(units === 0 && worth.endingCents !== 0n).toBe(false);
  }
});

test.prop([movements])('nothing is ever worth less than nothing', (moved) => {
  for (const { fifo, movingAverage } of valueInSteps(moved)) {
    expect(fifo.leftCents >= 0n && movingAverage.leftCents >= 0n).toBe(true);
    expect(fifo.cents >= 0n && movingAverage.cents >= 0n).toBe(true);
  }
});

const lead = fc.record({
  perDay: fc.double({ min: 0, max: 2, noNaN: true }),
  leadDays: fc.double({ min: 0, max: 90, noNaN: true }),
  leadSdDays: fc.double({ min: 0, max: 40, noNaN: true }),
});
const level = fc.double({ min: 0.01, max: 0.999, noNaN: true });

test.prop([lead, level])('the reorder point is enough, and one fewer is not', (how, wanted) => {
  const { reorderPoint: point, chance } = reorderPoint({ ...how, serviceLevel: wanted });
  expect(chance).toBeGreaterThanOrEqual(wanted - 1e-9);
  const fewer = point === 0 ? 0 : chanceAtMost(demandInLead(how), point - 1);
  expect(fewer).toBeLessThan(wanted);
});

test.prop([
  fc.integer({ min: 0, max: 200 }),
  fc.array(fc.double({ min: 0, max: 0.5, noNaN: true }), { maxLength: 4 }),
  level,
])('what is begun is never fewer than wanted, and surer is never fewer', (good, losses, sure) => {
  const at = (certainty: number) => startCount({ good, stepLosses: losses, certainty }).start;
  expect(at(sure)).toBeGreaterThanOrEqual(good);
  expect(at(0.9999)).toBeGreaterThanOrEqual(at(sure));
});
