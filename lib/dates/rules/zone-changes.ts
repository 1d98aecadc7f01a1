import { TZDate } from '@date-fns/tz';

/** A moment at which a zone's clocks are set to another distance from UTC. */
export type ZoneChange = {
  readonly at: Date;
  /** Minutes ahead of UTC; below zero to the west. */
  readonly minutesBefore: number;
  readonly minutesAfter: number;
};

const minuteMs = 60_000;
/** No zone sets its clocks twice within six days and back. */
const stepMs = 6 * 24 * 60 * minuteMs;

/**
 * How far a zone's clocks are ahead of UTC at an instant, in minutes; below zero to the west.
 *
 * @example zoneMinutes(new Date('2026-11-25T12:00:00Z'), 'America/Los_Angeles') // -480
 */
export function zoneMinutes(at: Date, zone: string): number {
  return -new TZDate(at.getTime(), zone).getTimezoneOffset();
}

/**
 * The moments at which a zone's clocks are set forward or back, earliest first, as the clock of
 * this program knows them: the same that every page tells its times by.
 *
 * @param stretch half open: from an instant until another
 */
export function zoneChanges(zone: string, stretch: { fromAt: Date; untilAt: Date }): ZoneChange[] {
  const changes: ZoneChange[] = [];
  const until = stretch.untilAt.getTime();
  let from = stretch.fromAt.getTime();
  while (from < until) {
    const to = Math.min(from + stepMs, until);
    const minutesBefore = zoneMinutes(new Date(from), zone);
    const minutesAfter = zoneMinutes(new Date(to), zone);
    if (minutesBefore !== minutesAfter) {
      changes.push({ at: changeBetween(from, to, zone), minutesBefore, minutesAfter });
    }
    from = to;
  }
  return changes;
}

/** The first whole minute after which the clocks stand as they do at the end. */
function changeBetween(from: number, to: number, zone: string): Date {
  const after = zoneMinutes(new Date(to), zone);
  let [low, high] = [Math.floor(from / minuteMs), Math.ceil(to / minuteMs)];
  while (high - low > 1) {
    const middle = Math.floor((low + high) / 2);
    if (zoneMinutes(new Date(middle * minuteMs), zone) === after) high = middle;
    else low = middle;
  }
  return new Date(high * minuteMs);
}
