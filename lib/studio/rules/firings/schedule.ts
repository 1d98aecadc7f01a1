import { ok, refuse, type Result } from '@/lib/platform/result';
import {
  coneNamed,
  coneRates,
  coneTemperatureC,
  type Cone,
  type ConeRate,
} from '@/lib/studio/rules/kilns/cones';
import { firingWh, type EnergyRefusal, type PowerStage } from '@/lib/studio/rules/kilns/energy';
import { firingTime, type Firing, type Segment } from '@/lib/studio/rules/kilns/firing';

/** What a load is fired for. */
export type FiringKind = 'bisque' | 'glaze';

/** Each kind in words, for headings and lists. */
export const firingKindWords: Readonly<Record<FiringKind, string>> = {
  bisque: 'bisque',
  glaze: 'glaze',
};

/** A kind by the name that is kept in a row. */
export function firingKindOf(peg: string): FiringKind {
  return peg === 'bisque' ? 'bisque' : 'glaze';
}

/** How warm the room of the kilns is taken to be, in °C. */
export const roomC = 20;

/** The climb over the last 100 °C that a schedule begins with, in °C an hour. */
const lastClimb: ConeRate = 60;

/** How hot a schedule goes for a cone, and the column of the chart that it was read in. */
export type PeakOfCone = { readonly celsius: number; readonly rateCPerHour: ConeRate };

/**
 * How hot a kiln goes for a cone at the last climb of its schedule: the column of the chart that is
 * nearest to the climb, the slower one of two that are as near.
 *
 * @returns null for a name that no cone has
 * @source {@link coneTemperatureC}
 * @example peakOfCone('6', 60) // { celsius: 1222, rateCPerHour: 60 }
 */
export function peakOfCone(name: string, rateCPerHour: number): PeakOfCone | null {
  const nearestFirst = coneRates.toSorted(
    (one, other) => Math.abs(one - rateCPerHour) - Math.abs(other - rateCPerHour) || one - other,
  );
  for (const rate of nearestFirst) {
    const read = coneTemperatureC(name, rate);
    if (read.ok) return { celsius: read.value, rateCPerHour: rate };
  }
  return null;
}

/**
 * The schedule that a firing begins with; a person changes it.
 *
 * A bisque is candled below the boiling of water, then climbs slowly past the change of quartz at
 * 573 °C; a glaze firing climbs at 150 °C an hour. Both take the last 100 °C at 60 an hour.
 *
 * @source common practice; starting values that a studio replaces by its own
 * @example startSchedule('glaze', '6') // to 1122 at 150 an hour, then to 1222 at 60 and 10 minutes
 */
export function startSchedule(kind: FiringKind, cone: Cone): Firing {
  const peakC = peakOfCone(cone, lastClimb)?.celsius ?? roomC;
  const lastFromC = peakC - 100;
  const before: Segment[] =
    kind === 'bisque'
      ? [
          { toC: 93, rateCPerHour: 55, soakMinutes: 480 },
          { toC: Math.min(600, lastFromC), rateCPerHour: 85, soakMinutes: 0 },
          { toC: lastFromC, rateCPerHour: 110, soakMinutes: 0 },
        ]
      : [{ toC: lastFromC, rateCPerHour: 150, soakMinutes: 0 }];
  const climbing = before.filter((segment, at) => segment.toC > (before[at - 1]?.toC ?? roomC));
  const last = { toC: peakC, rateCPerHour: lastClimb, soakMinutes: 10 };
  return { fromC: roomC, segments: [...climbing, last] };
}

/** What of the chart fits a schedule, and how far its own peak is from it, in °C. */
export type ConeCheck = PeakOfCone & {
  readonly peakC: number;
  readonly lastRateCPerHour: number;
  /** Above zero where the schedule goes hotter than the chart. */
  readonly offByC: number;
};

/**
 * Holds the peak of a schedule against the chart, at its last climbing rate.
 *
 * @returns null where nothing climbs or the cone has no temperature
 */
export function checkCone(cone: string, schedule: Firing): ConeCheck | null {
  const peakC = Math.max(...schedule.segments.map(({ toC }) => toC));
  const last = schedule.segments.findLast(
    ({ toC }, at) => toC === peakC && toC > (schedule.segments[at - 1]?.toC ?? schedule.fromC),
  );
  const known = last && coneNamed(cone) && peakOfCone(cone, last.rateCPerHour);
  if (!known) return null;
  return { ...known, peakC, lastRateCPerHour: last.rateCPerHour, offByC: peakC - known.celsius };
}

/** Below so many °C a kiln only warms up, and its elements are mostly off. */
const warmBelowC = 250;

/**
 * What a schedule takes from the line, before anyone has read a meter.
 *
 * Elements are taken to be on for 15 in 100 of the time while a kiln warms up to 250 °C or cools,
 * for 50 up to 1,100 °C, and for 65 in a firing that goes above.
 *
 * @param powerW whole watts, as the plate says
 * @returns whole watt-hours; refuses as {@link firingWh}, and a schedule that does not go
 * @source common practice: 15 in 100 while it warms, 50 in a bisque, 65 at cone 6
 */
export function forecastWh(powerW: number, schedule: Firing): Result<number, EnergyRefusal> {
  const time = firingTime(schedule);
  if (!time.ok) return refuse({ code: 'minutes_out_of_range' });
  const high = time.value.peakC > 1_100 ? '65' : '50';
  const stages = time.value.segments.flatMap((part, at): PowerStage[] => {
    const toC = schedule.segments[at]?.toC ?? 0;
    const fromC = at === 0 ? schedule.fromC : (schedule.segments[at - 1]?.toC ?? 0);
    const minutes = part.movingMinutes + part.soakMinutes;
    if (minutes === 0) return [];
    return [{ minutes, dutyPercent: toC <= warmBelowC || toC < fromC ? '15' : high }];
  });
  const taken = firingWh({ powerW, stages });
  return taken.ok ? ok(taken.value) : taken;
}
