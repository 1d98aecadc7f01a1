import type { Day } from '@/lib/dates/rules';
import { divideRounded } from '@/lib/money/rules/decimal';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { soundBox, type MeasureRefusal, type Weighed } from './measures';

/** A step of the scale: from this density on, in pounds to the cubic foot, it is this class. */
export type DensityStep = { readonly fromLbPerFt3: number; readonly class: number };

/** A scale of densities and the day from which it holds; null for the one before them all. */
export type DensityScale = {
  readonly holdsFromOn: Day | null;
  /** The lightest first. */
  readonly steps: readonly DensityStep[];
};

const upToThirty: readonly DensityStep[] = [
  { fromLbPerFt3: 0, class: 400 },
  { fromLbPerFt3: 1, class: 300 },
  { fromLbPerFt3: 2, class: 250 },
  { fromLbPerFt3: 4, class: 175 },
  { fromLbPerFt3: 6, class: 125 },
  { fromLbPerFt3: 8, class: 100 },
  { fromLbPerFt3: 10, class: 92.5 },
  { fromLbPerFt3: 12, class: 85 },
  { fromLbPerFt3: 15, class: 70 },
  { fromLbPerFt3: 22.5, class: 65 },
  { fromLbPerFt3: 30, class: 60 },
];

/**
 * The scales of freight class by density, the newest first.
 *
 * @source NMFTA, the standard density scale of 13 steps from 19 Jul 2025, and the one of 11 before it
 */
export const densityScales: readonly DensityScale[] = [
  {
    holdsFromOn: '2025-07-19',
    steps: [...upToThirty, { fromLbPerFt3: 35, class: 55 }, { fromLbPerFt3: 50, class: 50 }],
  },
  { holdsFromOn: null, steps: upToThirty },
];

/** The scale that holds on a day. */
export function densityScaleOn(on: Day): DensityScale {
  const holding = densityScales.find(
    ({ holdsFromOn }) => holdsFromOn === null || holdsFromOn <= on,
  );
  return holding ?? { holdsFromOn: null, steps: upToThirty };
}

/** How dense a load is, and its class by that. */
export type FreightClass = {
  /** To four places, half up. */
  readonly densityLbPerFt3: number;
  readonly class: number;
};

const foot = 304_800n;
const pound = { over: 45_359_237n, under: 100_000n } as const;

/**
 * The freight class of a load by its density: all pounds over all cubic feet. What lies on a step
 * belongs to it. A weight is kept in whole grams, so half a gram is given to the load.
 *
 * @returns refuses an empty load, and what {@link soundBox} refuses
 * @source {@link densityScales}; some goods have a class of their own whatever they weigh
 * @example 800 lb in 4 × 5 × 4 ft // 10 lb to the cubic foot, class 92.5
 */
export function freightClass(
  boxes: readonly Weighed[],
  on: Day,
): Result<FreightClass, MeasureRefusal> {
  if (boxes.length === 0) return refuse({ code: 'nothing_to_reckon' });
  for (const box of boxes) {
    const sound = soundBox(box);
    if (!sound.ok) return refuse(sound.refusal);
  }
  const grams = boxes.reduce((sum, box) => sum + BigInt(box.weightG), 0n);
  const volume = boxes.reduce(
    (sum, box) => sum + BigInt(box.lengthUm) * BigInt(box.widthUm) * BigInt(box.heightUm),
    0n,
  );
  const reaches = ({ fromLbPerFt3 }: DensityStep): boolean =>
    (2n * grams + 1n) * 10n * pound.under * foot ** 3n >=
    2n * BigInt(Math.round(fromLbPerFt3 * 10)) * pound.over * volume;
  const step = densityScaleOn(on).steps.findLast(reaches);
  const density = divideRounded(
    grams * pound.under * foot ** 3n * 10_000n,
    pound.over * volume,
    'half-up',
  );
  return ok({ densityLbPerFt3: Number(density) / 10_000, class: step?.class ?? 400 });
}
