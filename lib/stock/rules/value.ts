import type { Cents } from '@/lib/money/rules';
import { divideRounded } from '@/lib/money/rules/decimal';
import { invariant } from '@/lib/platform/invariant';

/** Pieces of one SKU that came (above zero) or went (below zero), and what making one cost. */
export type CostedMovement = {
  quantity: number;
  /** Cents; null takes the last cost that was known, and nothing before there was one. */
  unitCostCents: Cents | null;
};

/** What left at which cost, and what is left. */
export type StockWorth = { costOfGoodsCents: Cents; endingCents: Cents; endingUnits: number };

/** The worth by both ways of reckoning. */
export type ValuedStock = { fifo: StockWorth; movingAverage: StockWorth };

/** One movement as it was valued: its cost by both ways, and what stands there after it. */
export type ValuedStep = {
  quantity: number;
  unitCostCents: Cents;
  units: number;
  fifo: { cents: Cents; leftCents: Cents };
  movingAverage: { cents: Cents; leftCents: Cents };
};

/**
 * What the pieces of a SKU cost that left, and what those cost that are left, first in first out
 * and by the moving average, kept after every movement.
 *
 * First in first out takes whole pieces from the oldest that are there, so it is exact. The moving
 * average keeps the worth of all that is there in whole cents; what leaves takes its share of it,
 * rounded half a cent up, and the last pieces take all that is left. Either way cost and rest add
 * up, to the cent, to what all arrivals cost. A piece that comes back is an arrival at the cost it
 * left with.
 *
 * @param movements in the order in which they were written down
 * @source OpenStax, Principles of Accounting, volume 1, section 10.3 (perpetual)
 * @throws Error when more leave than are there: the database refuses those
 * @example valueStock([]).fifo // nothing cost nothing: 0n, 0n and 0 units
 */
export function valueStock(movements: readonly CostedMovement[]): ValuedStock {
  const steps = valueInSteps(movements);
  const last = steps.at(-1);
  const endingUnits = last?.units ?? 0;
  const worthBy = (way: 'fifo' | 'movingAverage'): StockWorth => ({
    costOfGoodsCents: steps.reduce(
      (sum, step) => (step.quantity < 0 ? sum + step[way].cents : sum),
      0n,
    ),
    endingCents: last?.[way].leftCents ?? 0n,
    endingUnits,
  });
  return { fifo: worthBy('fifo'), movingAverage: worthBy('movingAverage') };
}

/**
 * The same as {@link valueStock}, movement by movement, to show how it was worked out.
 *
 * @returns one step for each movement; its `cents` are never below zero
 */
export function valueInSteps(movements: readonly CostedMovement[]): ValuedStep[] {
  const layers: Layer[] = [];
  const now = { units: 0, fifoCents: 0n, averageCents: 0n, lastCents: 0n, oldest: 0 };
  return movements.map(({ quantity, unitCostCents }) => {
    invariant(Number.isInteger(quantity), 'Pieces come and go whole.');
    now.lastCents = unitCostCents ?? now.lastCents;
    const unitCents = now.lastCents;
    const worth = quantity >= 0 ? bring(quantity, unitCents) : take(-quantity);
    return {
      ...{ quantity, unitCostCents: unitCents, units: now.units },
      fifo: { cents: worth.fifoCents, leftCents: now.fifoCents },
      movingAverage: { cents: worth.averageCents, leftCents: now.averageCents },
    };
  });

  function bring(units: number, unitCents: Cents) {
    const cents = BigInt(units) * unitCents;
    layers.push({ units, unitCents });
    now.units += units;
    now.fifoCents += cents;
    now.averageCents += cents;
    return { fifoCents: cents, averageCents: cents };
  }

  function take(units: number) {
    invariant(units <= now.units, 'No more pieces leave than are there.');
    const share = now.averageCents * BigInt(units);
    const averageCents = divideRounded(share, BigInt(now.units), 'half-up');
    let fifoCents = 0n;
    for (let wanted = units; wanted > 0;) {
      const layer = layers[now.oldest];
      invariant(layer, 'What is there stands in its layers.');
      const taken = Math.min(wanted, layer.units);
      fifoCents += BigInt(taken) * layer.unitCents;
      layer.units -= taken;
      wanted -= taken;
      if (layer.units === 0) now.oldest += 1;
    }
    now.units -= units;
    now.fifoCents -= fifoCents;
    now.averageCents -= averageCents;
    return { fifoCents, averageCents };
  }
}

type Layer = { units: number; unitCents: Cents };
