/** How good the grip is. */
export type Coupling = 'good' | 'fair' | 'poor';

/** The grips in the order in which a form offers them. */
export const couplings: readonly Coupling[] = ['good', 'fair', 'poor'];

/** The system of units a lift is worked out in; the two are no exact conversions of each other. */
export type LiftSystem = 'metric' | 'us';

/** What one system of units gives the equation to reckon with. */
export type LiftConstants = {
  /** What may be lifted where all is best: kilograms or pounds. */
  readonly constant: number;
  readonly nearest: number;
  readonly farthest: number;
  /** The height of the knuckles, where lifting is easiest. */
  readonly knuckles: number;
  readonly perHeight: number;
  readonly highest: number;
  readonly travelPart: number;
  readonly leastTravel: number;
  readonly mostTravel: number;
};

/**
 * The constants and limits of the equation, in centimetres and kilograms or in inches and pounds.
 *
 * @source Waters, Putz-Anderson and Garg, DHHS (NIOSH) Publication 94-110, 1994, revised 2021
 */
export const liftConstants: Readonly<Record<LiftSystem, LiftConstants>> = {
  metric: {
    ...{ constant: 23, nearest: 25, farthest: 63 },
    ...{ knuckles: 75, perHeight: 0.003, highest: 175 },
    ...{ travelPart: 4.5, leastTravel: 25, mostTravel: 175 },
  },
  us: {
    ...{ constant: 51, nearest: 10, farthest: 25 },
    ...{ knuckles: 30, perHeight: 0.0075, highest: 70 },
    ...{ travelPart: 1.8, leastTravel: 10, mostTravel: 70 },
  },
};

/** The least and the most lifts a minute that the table knows; above the most nothing is allowed. */
export const leastLiftsPerMinute = 0.2;
const mostLiftsPerMinute = 15;

type Pair = readonly [number, number];

/**
 * Lifts a minute, then the multiplier for up to 1, 2 and 8 hours: each below and from knuckle
 * height on.
 *
 * @source NIOSH 94-110, table 5
 */
const frequencies: readonly (readonly [number, Pair, Pair, Pair])[] = [
  [0.2, [1, 1], [0.95, 0.95], [0.85, 0.85]],
  [0.5, [0.97, 0.97], [0.92, 0.92], [0.81, 0.81]],
  [1, [0.94, 0.94], [0.88, 0.88], [0.75, 0.75]],
  [2, [0.91, 0.91], [0.84, 0.84], [0.65, 0.65]],
  [3, [0.88, 0.88], [0.79, 0.79], [0.55, 0.55]],
  [4, [0.84, 0.84], [0.72, 0.72], [0.45, 0.45]],
  [5, [0.8, 0.8], [0.6, 0.6], [0.35, 0.35]],
  [6, [0.75, 0.75], [0.5, 0.5], [0.27, 0.27]],
  [7, [0.7, 0.7], [0.42, 0.42], [0.22, 0.22]],
  [8, [0.6, 0.6], [0.35, 0.35], [0.18, 0.18]],
  [9, [0.52, 0.52], [0.3, 0.3], [0, 0.15]],
  [10, [0.45, 0.45], [0.26, 0.26], [0, 0.13]],
  [11, [0.41, 0.41], [0, 0.23], [0, 0]],
  [12, [0.37, 0.37], [0, 0.21], [0, 0]],
  [13, [0, 0.34], [0, 0], [0, 0]],
  [14, [0, 0.31], [0, 0], [0, 0]],
  [15, [0, 0.28], [0, 0], [0, 0]],
];

/**
 * What lifting often takes away.
 *
 * @param lift lifts a minute, hours of it from 0 to 8, and whether the hands are at or above
 *   knuckle height at the start
 * @returns linear between two rows; 0 above fifteen lifts a minute
 * @source NIOSH 94-110, table 5; page 7 for what lies between its rows
 */
export function frequencyMultiplier(lift: {
  liftsPerMinute: number;
  hours: number;
  isHigh: boolean;
}): number {
  const often = Math.max(lift.liftsPerMinute, leastLiftsPerMinute);
  if (often > mostLiftsPerMinute) return 0;
  const column = columnFor(lift.hours);
  const read = (row: (typeof frequencies)[number] | undefined) =>
    row?.[column][lift.isHigh ? 1 : 0] ?? 0;
  const above = frequencies.findIndex(([rate]) => rate >= often);
  const [upper, lower] = [frequencies[above], frequencies[Math.max(above - 1, 0)]];
  const [high, low] = [upper?.[0] ?? often, lower?.[0] ?? often];
  if (high === low) return read(upper);
  return read(lower) + ((often - low) / (high - low)) * (read(upper) - read(lower));
}

function columnFor(hours: number): 1 | 2 | 3 {
  if (hours <= 1) return 1;
  return hours <= 2 ? 2 : 3;
}

/**
 * What a bad grip takes away.
 *
 * @source NIOSH 94-110, table 7
 */
export function couplingMultiplier(coupling: Coupling, isHigh: boolean): number {
  if (coupling === 'good') return 1;
  if (coupling === 'poor') return 0.9;
  return isHigh ? 1 : 0.95;
}
