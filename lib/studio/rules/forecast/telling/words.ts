import type { Day } from '@/lib/dates/rules';
import { shortDay } from '@/lib/studio/rules/words';
import type { Drive, JobForecast } from '../forecast';
import type { StudioLoad } from '../load/load';

/** What days go into, in words, and how many: whole days, at least one. */
export type DriveTold = { readonly what: string; readonly days: number };

/** How many drives are told of at most. */
const drivesMost = 5;

/**
 * What drives a date, in words, the most days first; what takes less than half a day is left out.
 *
 * @param benchNames by their ids
 * @example { what: 'waiting for the glaze kiln', days: 9 }
 */
export function tellDrives(
  drives: readonly Drive[],
  benchNames: ReadonlyMap<string, string>,
): DriveTold[] {
  return drives
    .map((drive) => ({ what: driveWords(drive, benchNames), days: Math.round(drive.days) }))
    .filter(({ days }) => days >= 1)
    .slice(0, drivesMost);
}

function driveWords({ kind, name }: Drive, benchNames: ReadonlyMap<string, string>): string {
  switch (kind) {
    case 'bench':
      return `waiting for the ${benchNames.get(name) ?? 'bench'}`;
    case 'kiln':
      return `waiting for ${name}`;
    case 'step':
      return name;
    case 'lost':
      return 'pieces that are lost and made anew';
  }
}

/** The benches of a load by their ids, for {@link tellDrives}. */
export function benchNamesOf(load: Pick<StudioLoad, 'facts'>): ReadonlyMap<string, string> {
  return new Map(load.facts.benches.map(({ id, name }) => [id, name]));
}

/** Days in words: `a day`, `9 days`. */
export function daysWords(days: number): string {
  return days === 1 ? 'a day' : `${days} days`;
}

/** A drive as a line: `waiting for the glaze kiln: 9 days`. */
export function driveLine({ what, days }: DriveTold): string {
  return `${what}: ${daysWords(days)}`;
}

/**
 * In how many of 100 futures a job is late for the day it is needed.
 *
 * @returns null when no day is needed; a whole number, at least 1 when it is late in any
 */
export function lateInHundred({ shareInTime }: Pick<JobForecast, 'shareInTime'>): number | null {
  if (shareInTime === null) return null;
  const late = (1 - shareInTime) * 100;
  return late > 0 ? Math.max(1, Math.round(late)) : 0;
}

/** A day that may be out of sight: `14 June`, `not within two years`. */
export function dayOrFar(day: Day | null, todayOn: Day): string {
  return day === null ? 'not within two years' : shortDay(day, todayOn);
}
