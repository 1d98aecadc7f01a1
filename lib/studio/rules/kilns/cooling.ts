import { ok, refuse, type Result } from '@/lib/platform/result';

/** A kiln’s temperature at a time after it was switched off. */
export type CoolingReading = { readonly celsius: number; readonly afterMinutes: number };

/** Why it was not told when a kiln will be cool. */
export type CoolingRefusal = { code: 'not_cooling' } | { code: 'never_so_cool' };

/** Says in a full sentence why it was not told when a kiln will be cool. */
export function coolingRefusalMessage(refusal: CoolingRefusal): string {
  return refusal.code === 'not_cooling'
    ? 'Two readings are needed, the later one cooler, and both above the room.'
    : 'A kiln does not get cooler than the room it stands in.';
}

/**
 * In how many minutes a kiln loses half of what it is warmer than its room, from two readings of
 * its own.
 *
 * @returns minutes; refuses readings that do not cool, or are not above the room
 * @source Newton’s law of cooling; a kiln cools a little faster than it while it glows
 * @example 1_020 °C, and 520 after 240 minutes, in a room of 20 // 240
 */
export function halvingMinutes(
  first: CoolingReading,
  second: CoolingReading,
  roomC: number,
): Result<number, CoolingRefusal> {
  const [before, after] = [first.celsius - roomC, second.celsius - roomC];
  const minutes = second.afterMinutes - first.afterMinutes;
  if (!(after > 0 && before > after && minutes > 0)) return refuse({ code: 'not_cooling' });
  return ok((minutes * Math.LN2) / Math.log(before / after));
}

/**
 * How many minutes it takes until a kiln has cooled so far.
 *
 * @param of temperatures in °C; `halving` the minutes of {@link halvingMinutes}, above zero
 * @returns whole minutes, rounded up; 0 when it is so cool already; refuses a temperature that is
 *   not above the room
 * @source Newton’s law of cooling
 * @example from 1_020 to 93 °C in a room of 20, halving in 240 minutes // 907
 */
export function coolingMinutes(of: {
  fromC: number;
  toC: number;
  roomC: number;
  halving: number;
}): Result<number, CoolingRefusal> {
  const { fromC, toC, roomC, halving } = of;
  if (!(toC > roomC)) return refuse({ code: 'never_so_cool' });
  if (fromC <= toC) return ok(0);
  return ok(Math.ceil(halving * Math.log2((fromC - roomC) / (toC - roomC))));
}
