import { ok, refuse, type Result } from '@/lib/platform/result';
import {
  couplingMultiplier,
  frequencyMultiplier,
  liftConstants,
  type Coupling,
  type LiftConstants,
  type LiftSystem,
} from './table';

/** One lift as it is measured: centimetres, or inches in the system of pounds. */
export type Lift = {
  /** From the middle between the ankles to the hands. */
  readonly horizontal: number;
  /** The hands above the floor. */
  readonly vertical: number;
  /** How far the hands go up or down. */
  readonly travel: number;
  /** How far the body turns, in degrees. */
  readonly asymmetryDeg: number;
  readonly liftsPerMinute: number;
  readonly hours: number;
  readonly coupling: Coupling;
};

/** What each side of a lift leaves of the constant, from 0 to 1. */
export type LiftMultipliers = {
  readonly horizontal: number;
  readonly vertical: number;
  readonly distance: number;
  readonly asymmetry: number;
  readonly frequency: number;
  readonly coupling: number;
};

/** What one person may lift so, and the multipliers it came of. */
export type LiftingLimit = { readonly limit: number; readonly multipliers: LiftMultipliers };

/** Why a lift cannot be judged by the equation. */
export type LiftRefusal =
  | { code: 'not_a_lift'; side: (typeof measured)[number] }
  | { code: 'turned_too_far' }
  | { code: 'over_eight_hours' };

/** Says in a full sentence why a lift cannot be judged. */
export function liftRefusalMessage(refusal: LiftRefusal): string {
  switch (refusal.code) {
    case 'not_a_lift':
      return 'The measures of a lift are numbers from zero on.';
    case 'turned_too_far':
      return 'A body turns by 0 to 180 degrees.';
    case 'over_eight_hours':
      return 'The equation judges more than 0 and at most 8 hours of lifting in a day.';
  }
}

/** How the equation is worked out: as it stands, or multiplying rounded figures as its examples do. */
export type LiftWay = { readonly system?: LiftSystem; readonly roundedMultipliers?: boolean };

/**
 * What one healthy person may lift, by the revised lifting equation.
 *
 * It does not judge a lift with one hand, seated or kneeling, in a narrow place, on a slippery
 * floor, of a load that shifts, or carrying.
 *
 * @returns kilograms, or pounds in the `us` system; 0 where the lift is not allowed at all: too far
 *   out, too high, too far to go, turned too far, too often. Refuses, in this order: a measure
 *   below zero, more than half a turn, no hours or more than eight
 * @source Waters, Putz-Anderson and Garg, DHHS (NIOSH) Publication 94-110, 1994, revised 2021
 * @example 25 cm away, 75 cm high, 25 cm to go, not turned, seldom, good grip // 23 kg
 */
export function liftingLimit(lift: Lift, way: LiftWay = {}): Result<LiftingLimit, LiftRefusal> {
  const fault = faultOf(lift);
  if (fault) return refuse(fault);
  const of = liftConstants[way.system ?? 'metric'];
  const exact = multipliersOf(lift, of);
  const multipliers = way.roundedMultipliers === true ? rounded(exact) : exact;
  const limit = Object.values(multipliers).reduce((left, part) => left * part, of.constant);
  return ok({ limit, multipliers });
}

const measured = [
  'horizontal',
  'vertical',
  'travel',
  'asymmetryDeg',
  'liftsPerMinute',
  'hours',
] as const;

function faultOf(lift: Lift): LiftRefusal | null {
  const wrong = measured.find((side) => !(lift[side] >= 0 && Number.isFinite(lift[side])));
  if (wrong) return { code: 'not_a_lift', side: wrong };
  if (lift.asymmetryDeg > 180) return { code: 'turned_too_far' };
  return lift.hours > 0 && lift.hours <= 8 ? null : { code: 'over_eight_hours' };
}

function multipliersOf(lift: Lift, of: LiftConstants): LiftMultipliers {
  const { horizontal, vertical, travel, asymmetryDeg, coupling } = lift;
  const isHigh = vertical >= of.knuckles;
  return {
    horizontal: horizontal > of.farthest ? 0 : of.nearest / Math.max(horizontal, of.nearest),
    vertical: vertical > of.highest ? 0 : 1 - of.perHeight * Math.abs(vertical - of.knuckles),
    distance: travel > of.mostTravel ? 0 : 0.82 + of.travelPart / Math.max(travel, of.leastTravel),
    asymmetry: asymmetryDeg > 135 ? 0 : 1 - 0.0032 * asymmetryDeg,
    frequency: frequencyMultiplier({ ...lift, isHigh }),
    coupling: couplingMultiplier(coupling, isHigh),
  };
}

function rounded(exact: LiftMultipliers): LiftMultipliers {
  const toHundredths = (part: number) => Math.round(part * 100) / 100;
  return {
    horizontal: toHundredths(exact.horizontal),
    vertical: toHundredths(exact.vertical),
    distance: toHundredths(exact.distance),
    asymmetry: toHundredths(exact.asymmetry),
    frequency: toHundredths(exact.frequency),
    coupling: toHundredths(exact.coupling),
  };
}

/**
 * A load set against what may be lifted: up to 1 is the aim, above 1 it strains some, above 3 nearly
 * everybody.
 *
 * @returns null where nothing may be lifted so: there is no index, the lift is not allowed
 * @source NIOSH 94-110
 */
export function liftingIndex(load: number, limit: number): number | null {
  return limit > 0 ? load / limit : null;
}
