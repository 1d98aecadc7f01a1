import { ok, refuse, type Result } from '@/lib/platform/result';
import type { ScrewKind } from './screws';

/** How long a load lies on wood, and by what its strength is multiplied. */
export const loadDuration = { permanent: 0.9, tenYears: 1, sevenDays: 1.25 } as const;

/** By what the strength of a fixing in wood is multiplied where the wood is wet in use. */
export const wetService = 0.7;

/** A screw that is pulled straight out of the side of a piece of wood; inches. */
export type Pulled = {
  readonly kind: ScrewKind;
  readonly diameterIn: number;
  readonly gravity: number;
  /** The thread that sits in the wood; of a lag screw without its tapered tip. */
  readonly threadIn: number;
};

/** Why it was not told what a screw holds. */
export type WithdrawalRefusal =
  | { code: 'diameter_out_of_range' }
  | { code: 'gravity_out_of_range' }
  | { code: 'thread_out_of_range' };

/** Says in a full sentence why it was not told what a screw holds. */
export function withdrawalRefusalMessage(refusal: WithdrawalRefusal): string {
  switch (refusal.code) {
    case 'diameter_out_of_range':
      return 'A screw is from 1/16 to 1 1/4 inches thick.';
    case 'gravity_out_of_range':
      return 'Wood has a specific gravity from 0.31 to 0.73.';
    case 'thread_out_of_range':
      return 'More than 0 and at most 24 inches of thread sit in the wood.';
  }
}

/**
 * What an inch of thread holds when it is pulled out of side grain, in pounds; not in end grain.
 *
 * @source AWC NDS 2018, equations 12.2-1 (lag screws: 1800 G^1.5 D^0.75) and 12.2-2 (wood screws:
 *   2850 G² D)
 * @example a No. 10 wood screw in Douglas fir // 135 lb
 */
export function withdrawalLbPerIn({ kind, diameterIn, gravity }: Omit<Pulled, 'threadIn'>): number {
  return kind === 'wood screw'
    ? 2_850 * gravity ** 2 * diameterIn
    : 1_800 * gravity ** 1.5 * diameterIn ** 0.75;
}

/**
 * What a screw holds when it is pulled straight out, before the time the load lies on it.
 *
 * @returns pounds; refuses, in this order: a diameter, a wood, a length of thread out of range
 * @source AWC NDS 2018, section 12.2
 * @example a 3/8 in lag screw in spruce, 2 in of thread // 470 lb
 */
export function withdrawalLb(pulled: Pulled): Result<number, WithdrawalRefusal> {
  if (!isWithin(pulled.diameterIn, 1 / 16, 1.25)) return refuse({ code: 'diameter_out_of_range' });
  if (!isWithin(pulled.gravity, 0.31, 0.73)) return refuse({ code: 'gravity_out_of_range' });
  if (!(pulled.threadIn > 0 && pulled.threadIn <= 24)) {
    return refuse({ code: 'thread_out_of_range' });
  }
  return ok(withdrawalLbPerIn(pulled) * pulled.threadIn);
}

function isWithin(number: number, least: number, most: number): boolean {
  return number >= least && number <= most;
}

/**
 * At what a head is pulled through a board of wood, in pounds.
 *
 * @source AWC NDS 2018, section 12.2.5, from memory
 */
export function pullThroughLb(of: {
  headIn: number;
  gravity: number;
  thicknessIn: number;
}): number {
  const counted = Math.min(of.thicknessIn, 2.5 * of.headIn);
  return 690 * Math.PI * of.headIn * of.gravity ** 2 * counted;
}

/**
 * How much of the root a hole is drilled with before a wood screw is driven, so that nothing splits
 * and the thread holds.
 *
 * @returns a part of the root diameter; null where none is needed
 * @source AWC NDS 2018, section 12.1.5: 90 in a hundred above 0.6, 70 from 0.5 on
 */
export function leadHolePart(gravity: number): number | null {
  if (gravity > 0.6) return 0.9;
  return gravity > 0.5 ? 0.7 : null;
}
