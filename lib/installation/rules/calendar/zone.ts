import { zoneChanges, zoneMinutes, type ZoneChange } from '@/lib/dates/rules/zone-changes';

/**
 * A zone as a calendar file describes it: with the yearly rules of its clocks where they keep one,
 * and otherwise with each change on its own.
 *
 * It is made from the clock that this program itself goes by, and not from a table of somebody
 * else: two tables that were brought up to date in different years would put a hanging an hour off.
 *
 * @param years the first and the last that events lie in
 * @returns lines with CRLF between them
 * @source RFC 5545, section 3.6.5: each zone that is named is described, with its onsets in local
 *   time before the change
 */
export function zoneText(zone: string, years: { first: number; last: number }): string {
  const fromAt = new Date(Date.UTC(years.first - 2, 0, 1));
  const untilAt = new Date(Date.UTC(years.last + 2, 0, 1));
  const changes = zoneChanges(zone, { fromAt, untilAt });
  const yearly = yearlyRules(changes, years.last + 2 - (years.first - 2));
  const alone = changes.filter((change) => !yearly.some(({ of }) => of.has(change)));
  const isWhole = yearly.length > 0 && alone.length === 0;
  return [
    'BEGIN:VTIMEZONE',
    `TZID:${zone}`,
    ...(isWhole ? [] : observance(baseOf(fromAt, zone), null)),
    ...yearly.flatMap(({ first, words }) => observance(first, words)),
    ...alone.flatMap((change) => observance(change, null)),
    'END:VTIMEZONE',
  ].join('\r\n');
}

function baseOf(fromAt: Date, zone: string): ZoneChange {
  const minutes = zoneMinutes(fromAt, zone);
  return { at: fromAt, minutesBefore: minutes, minutesAfter: minutes };
}

type YearlyRule = { of: ReadonlySet<ZoneChange>; first: ZoneChange; words: string };

/** The changes that come once in every year on the same weekday of the same month and hour. */
function yearlyRules(changes: readonly ZoneChange[], years: number): YearlyRule[] {
  return alike(changes).flatMap((group) => {
    const [first] = group;
    const which = whichWeek(group);
    if (!first || which === null || !isOnceAYear(group, years)) return [];
    const there = wallTime(first);
    const day = `${which}${weekdays[there.getUTCDay()] ?? ''}`;
    const words = `FREQ=YEARLY;BYMONTH=${there.getUTCMonth() + 1};BYDAY=${day}`;
    return [{ of: new Set(group), first, words }];
  });
}

function alike(changes: readonly ZoneChange[]): ZoneChange[][] {
  const groups = new Map<string, ZoneChange[]>();
  for (const change of changes) {
    const kind = kindOf(change);
    groups.set(kind, [...(groups.get(kind) ?? []), change]);
  }
  return [...groups.values()];
}

function isOnceAYear(group: readonly ZoneChange[], years: number): boolean {
  const seen = new Set(group.map((change) => wallTime(change).getUTCFullYear()));
  return group.length === years && seen.size === years;
}

/** Which of its weekdays in the month it is each time: 1 to 4, or -1 for the last; else null. */
function whichWeek(group: readonly ZoneChange[]): number | null {
  const dates = group.map(wallTime);
  if (dates.every(isLastOfItsKind)) return -1;
  const weeks = new Set(dates.map((date) => Math.ceil(date.getUTCDate() / 7)));
  const [week] = weeks;
  return weeks.size === 1 && week !== undefined && week < 5 ? week : null;
}

function isLastOfItsKind(date: Date): boolean {
  const weekLater = new Date(date.getTime() + 7 * 24 * 3_600_000);
  return weekLater.getUTCMonth() !== date.getUTCMonth();
}

const weekdays = ['SU', 'MO', 'TU', 'WE', 'TH', 'FR', 'SA'] as const;

/** What changes have in common that may come every year: month, weekday, hour, and both offsets. */
function kindOf(change: ZoneChange): string {
  const there = wallTime(change);
  const { minutesBefore, minutesAfter } = change;
  return [
    ...[there.getUTCMonth(), there.getUTCDay(), there.getUTCHours(), there.getUTCMinutes()],
    ...[minutesBefore, minutesAfter],
  ].join(' ');
}

/** What the clock on the wall would show as it is set, written as if it were UTC. */
function wallTime({ at, minutesBefore }: ZoneChange): Date {
  return new Date(at.getTime() + minutesBefore * 60_000);
}

function observance(change: ZoneChange, rule: string | null): string[] {
  const { minutesBefore, minutesAfter } = change;
  const kind = minutesAfter > minutesBefore ? 'DAYLIGHT' : 'STANDARD';
  return [
    `BEGIN:${kind}`,
    `DTSTART:${wallTime(change).toISOString().slice(0, 19).replaceAll(/[-:]/g, '')}`,
    `TZOFFSETFROM:${offsetText(minutesBefore)}`,
    `TZOFFSETTO:${offsetText(minutesAfter)}`,
    ...(rule ? [`RRULE:${rule}`] : []),
    `END:${kind}`,
  ];
}

function offsetText(minutes: number): string {
  const [hours, over] = [Math.floor(Math.abs(minutes) / 60), Math.abs(minutes) % 60];
  const two = (figure: number) => String(figure).padStart(2, '0');
  return `${minutes < 0 ? '-' : '+'}${two(hours)}${two(over)}`;
}
