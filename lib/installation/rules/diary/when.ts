import { addDays, dayOf, dayStartAt, instantOf, type Day } from '@/lib/dates/rules';
import { timeWords } from '@/lib/dates/rules/time-of-day';
import { zoneChanges, zoneMinutes } from '@/lib/dates/rules/zone-changes';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { Span } from './kinds';

/** A day and two times of day, as they were typed. */
export type Times = { day: Day; from: string; to: string };

/** A time of day that the clocks leave out on that day: there are none from one until the other. */
export type TimeRefusal = {
  code: 'time_skipped';
  on: Day;
  time: string;
  skippedFrom: string;
  skippedUntil: string;
};

const minuteMs = 60_000;

/**
 * The instants of a day and its times in the gallery's zone. A time that the clocks show twice in
 * autumn is the first of the two.
 *
 * @returns refuses `time_skipped` for a time that the clocks skip in spring
 * @example in America/Los_Angeles there is no 2:30 on 8 March 2026, and there are two 1:30 on
 *   1 November
 */
export function spanOf({ day, from, to }: Times, zone: string): Result<Span, TimeRefusal> {
  const starts = readTime(day, from, zone);
  if (!starts.ok) return starts;
  const ends = readTime(day, to, zone);
  if (!ends.ok) return ends;
  return ok({ startsAt: starts.value, endsAt: ends.value });
}

/**
 * The instant of a time of day, the first of two where the clocks show it twice.
 *
 * @returns refuses `time_skipped`
 */
export function readTime(day: Day, time: string, zone: string): Result<Date, TimeRefusal> {
  const typedMs = Date.parse(`${day}T${time}:00Z`);
  for (const { before, after } of settingsAround(day, zone)) {
    if (before <= typedMs && typedMs < after) {
      const skipped = { skippedFrom: clockOf(before), skippedUntil: clockOf(after) };
      return refuse({ code: 'time_skipped', on: day, time, ...skipped });
    }
  }
  return ok(instantOf(day, time, zone));
}

/** Which of two an instant is where the clocks show its time of day twice; null at all others. */
export function shownTwice(at: Date, zone: string): 'first' | 'second' | null {
  const shownMs = at.getTime() + zoneMinutes(at, zone) * minuteMs;
  for (const setting of settingsAround(dayOf(at, zone), zone)) {
    const isTwice = setting.after <= shownMs && shownMs < setting.before;
    if (isTwice) return at < setting.at ? 'first' : 'second';
  }
  return null;
}

/**
 * Says that a time of an appointment is shown twice by the clocks on that day, and which is meant.
 *
 * @returns null on every other day
 */
export function twiceWords({ startsAt, endsAt }: Span, zone: string): string | null {
  const said = [startsAt, endsAt].flatMap((at) => {
    const which = shownTwice(at, zone);
    return which ? [`${timeWords(at, zone)} comes twice, and the ${which} is meant`] : [];
  });
  return said.length === 0 ? null : `The clocks are set back that day: ${said.join('; ')}.`;
}

/** The moments around a day at which the clocks are set: what they show before, and after. */
function settingsAround(day: Day, zone: string): { at: Date; before: number; after: number }[] {
  const stretch = {
    fromAt: dayStartAt(addDays(day, -1), zone),
    untilAt: dayStartAt(addDays(day, 2), zone),
  };
  return zoneChanges(zone, stretch).map(({ at, minutesBefore, minutesAfter }) => ({
    at,
    before: at.getTime() + minutesBefore * minuteMs,
    after: at.getTime() + minutesAfter * minuteMs,
  }));
}

function clockOf(ms: number): string {
  return new Date(ms).toISOString().slice(11, 16);
}
