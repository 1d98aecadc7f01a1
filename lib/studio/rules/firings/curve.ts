import { invariant } from '@/lib/platform/invariant';
import { coolingMinutes, halvingMinutes } from '@/lib/studio/rules/kilns/cooling';
import type { Firing } from '@/lib/studio/rules/kilns/firing';
import { roomC } from './schedule';

/** A temperature in °C so many minutes after the kiln was lit. */
export type CurvePoint = { readonly afterMinutes: number; readonly celsius: number };

/**
 * A schedule as the line it draws: where it begins, the end of each climb and of each soak.
 *
 * @example from 20 to 120 °C at 50 an hour with an hour of soak // at 0, 120 and 180 minutes
 */
export function curveOf({ fromC, segments }: Firing): CurvePoint[] {
  const points: CurvePoint[] = [{ afterMinutes: 0, celsius: fromC }];
  let afterMinutes = 0;
  let hereC = fromC;
  for (const { toC, rateCPerHour, soakMinutes } of segments) {
    afterMinutes += Math.ceil((Math.abs(toC - hereC) * 60) / rateCPerHour);
    points.push({ afterMinutes, celsius: toC });
    if (soakMinutes > 0) points.push({ afterMinutes: afterMinutes + soakMinutes, celsius: toC });
    afterMinutes += soakMinutes;
    hereC = toC;
  }
  return points;
}

/**
 * What a schedule asks for so many minutes after the kiln was lit.
 *
 * @returns whole °C; null once it is over, for then the kiln cools as it likes
 */
export function askedAtC(curve: readonly CurvePoint[], afterMinutes: number): number | null {
  const at = curve.findIndex((point) => point.afterMinutes >= afterMinutes);
  const [before, after] = [curve[at - 1], curve[at]];
  if (!after) return null;
  if (!before) return after.celsius;
  const way = (afterMinutes - before.afterMinutes) / (after.afterMinutes - before.afterMinutes);
  return Math.round(before.celsius + way * (after.celsius - before.celsius));
}

/** What a kiln read, and when. */
export type Reading = { readonly at: Date; readonly celsius: number };

/** When a kiln will be cool enough to open, and what tells it. */
export type CoolBy = {
  readonly at: Date;
  readonly by: 'its_readings' | 'earlier_firings' | 'common_practice';
};

const coolingHoursCommonly = 48;

/** For how many minutes two readings lie apart at least, for a pace to be told from them. */
const apartMinutesLeast = 20;

/**
 * In how many minutes a kiln loses half of what it is warmer than its room, from the readings of one
 * firing: its last two on the way down.
 *
 * @param readings in any order
 * @returns null where there are not two that cool, twenty minutes apart
 */
export function halvingOf(readings: readonly Reading[]): number | null {
  const down = coolingReadings(readings);
  const last = down.at(-1);
  if (!last) return null;
  const before = down.findLast(
    (reading) => minutesBetween(reading.at, last.at) >= apartMinutesLeast,
  );
  if (!before) return null;
  const halving = halvingMinutes(
    { celsius: before.celsius, afterMinutes: 0 },
    { celsius: last.celsius, afterMinutes: minutesBetween(before.at, last.at) },
    roomC,
  );
  return halving.ok ? halving.value : null;
}

/** The readings from the hottest one on, in their order. */
function coolingReadings(readings: readonly Reading[]): Reading[] {
  const inOrder = readings.toSorted((one, other) => one.at.getTime() - other.at.getTime());
  const hottest = Math.max(...inOrder.map(({ celsius }) => celsius));
  return inOrder.slice(inOrder.findLastIndex(({ celsius }) => celsius === hottest));
}

function minutesBetween(from: Date, to: Date): number {
  return Math.round((to.getTime() - from.getTime()) / 60_000);
}

/**
 * When a kiln will be cool enough to open: by its own readings on the way down, or else at the pace
 * of its earlier firings from its peak, or else two days after the schedule is over.
 *
 * @param of `endsAt` when the schedule is over; `peakC` how hot it goes; `earlierHalving` the pace of
 *   earlier firings of this kiln in minutes, null where none was read
 * @returns rounded up to the minute
 * @source Newton’s law of cooling in a room of 20 °C; two days are common practice
 */
export function coolBy(of: {
  endsAt: Date;
  peakC: number;
  limitC: number;
  readings: readonly Reading[];
  earlierHalving: number | null;
}): CoolBy {
  const { endsAt, peakC, limitC, readings, earlierHalving } = of;
  invariant(limitC > 0, 'A kiln is opened below some temperature.');
  const own = halvingOf(readings);
  const last = coolingReadings(readings).at(-1);
  if (own !== null && last) {
    const minutes = minutesToCool(last.celsius, limitC, own);
    if (minutes !== null) return { at: later(last.at, minutes), by: 'its_readings' };
  }
  const minutes = earlierHalving === null ? null : minutesToCool(peakC, limitC, earlierHalving);
  if (minutes !== null) return { at: later(endsAt, minutes), by: 'earlier_firings' };
  return { at: later(endsAt, coolingHoursCommonly * 60), by: 'common_practice' };
}

function minutesToCool(fromC: number, limitC: number, halving: number): number | null {
  // It is opened below its limit, not at it.
  const minutes = coolingMinutes({ fromC, toC: limitC - 0.5, roomC, halving });
  return minutes.ok ? minutes.value : null;
}

function later(at: Date, minutes: number): Date {
  return new Date(at.getTime() + minutes * 60_000);
}
