import { TZDate } from '@date-fns/tz';
import ical, { ICalCalendarMethod, ICalEventStatus } from 'ical-generator';
import { zoneMinutes } from '@/lib/dates/rules/zone-changes';
import { zoneText } from './zone';

/** One event of a calendar file; instants, and text as somebody wrote it. */
export type CalendarEvent = {
  /** Kept for good, whatever becomes of it. */
  readonly uid: string;
  /** Rises each time it is moved or called off. */
  readonly sequence: number;
  readonly startsAt: Date;
  /** Not in it: it is over then. */
  readonly endsAt: Date;
  readonly summary: string;
  readonly description: string;
  readonly location: string;
  /** Where more is told of it; null for nowhere. */
  readonly href: string | null;
  readonly isOff: boolean;
  readonly madeAt: Date;
  /** When it was last moved or called off; when it was made, if never. */
  readonly changedAt: Date;
};

/** A calendar file: a snapshot of a diary, or one event that is handed on. */
export type CalendarFile = {
  readonly name: string;
  /** IANA name of the gallery’s zone. */
  readonly zone: string;
  /** Null for a snapshot that is asked for again and again; its events are stamped as they changed. */
  readonly method: CalendarMethod | null;
  /** When the file is made. */
  readonly at: Date;
  readonly events: readonly CalendarEvent[];
};

/** What a file that is handed on does: adds the event, or takes it away. */
export type CalendarMethod = 'PUBLISH' | 'CANCEL';

/**
 * The text of a calendar file.
 *
 * Times stand in the gallery’s zone with that zone described beside them. A time of day that comes
 * twice in a night is read in two ways by those who read such files, so it is told in UTC.
 *
 * @returns lines of at most 75 octets, each closed with CR and LF
 * @source RFC 5545 (form; 3.8.7.2: without a method the stamp is when it was last changed) and
 *   RFC 5546 (methods)
 */
export function calendarText(file: CalendarFile): string {
  const { name, zone, method, at, events } = file;
  const calendar = ical({
    name: escaped(wellFormed(name)),
    prodId: { company: 'Kiln and Counter', product: 'Diary', language: 'EN' },
    ...(method ? { method: methods[method] } : {}),
    // Named at each event and not here, where the library would tell its stamps in that zone too.
    timezone: { name: null, generator: (named) => zoneText(named, yearsOf(events, at)) },
  });
  for (const event of events) {
    calendar.createEvent({
      ...{ id: event.uid, sequence: event.sequence },
      ...timesOf(event, zone),
      stamp: method ? at : event.changedAt,
      created: event.madeAt,
      lastModified: event.changedAt,
      summary: wellFormed(event.summary),
      description: wellFormed(event.description),
      location: wellFormed(event.location),
      url: event.href,
      status: event.isOff ? ICalEventStatus.CANCELLED : ICalEventStatus.CONFIRMED,
    });
  }
  const text = `${calendar.toString()}\r\n`;
  return events.length > 0 ? text : withItsZone(text, zoneText(zone, yearsOf([], at)));
}

/** A file without a single component is none; one of an empty diary says at least where it is. */
function withItsZone(text: string, told: string): string {
  return text.replace('END:VCALENDAR', `${told}\r\nEND:VCALENDAR`);
}

/** The library escapes what an event says, but writes the calendar’s own name as it comes. */
function escaped(text: string): string {
  return text.replaceAll(/[\\;,]/g, '\\$&').replaceAll('\n', '\\n');
}

const methods = {
  PUBLISH: ICalCalendarMethod.PUBLISH,
  CANCEL: ICalCalendarMethod.CANCEL,
} as const;

function timesOf({ startsAt, endsAt }: CalendarEvent, zone: string) {
  const isTold = isToldOnce(startsAt, zone) && isToldOnce(endsAt, zone);
  if (!isTold || zone === 'UTC') return { start: startsAt, end: endsAt };
  return {
    start: new TZDate(startsAt.getTime(), zone),
    end: new TZDate(endsAt.getTime(), zone),
    timezone: zone,
  };
}

/** Whether the clock on the wall shows this time of day once that day, and not again after a change. */
function isToldOnce(at: Date, zone: string): boolean {
  const minutes = zoneMinutes(at, zone);
  return [-aroundMs, aroundMs].every((aside) => {
    const others = zoneMinutes(new Date(at.getTime() + aside), zone);
    const other = new Date(at.getTime() + (minutes - others) * 60_000);
    return others === minutes || zoneMinutes(other, zone) !== others;
  });
}

/** No clock is set back by more than a few hours. */
const aroundMs = 4 * 3_600_000;

function yearsOf(events: readonly CalendarEvent[], at: Date): { first: number; last: number } {
  const years = events.flatMap(({ startsAt, endsAt }) => [
    startsAt.getUTCFullYear(),
    endsAt.getUTCFullYear(),
  ]);
  const here = at.getUTCFullYear();
  return { first: Math.min(here, ...years), last: Math.max(here, ...years) };
}

/**
 * A text as a calendar file can hold it: control characters but tabs and line ends left out, and
 * no half of a pair of letters.
 *
 * @source RFC 5545, section 3.3.11: TEXT has no control characters
 */
export function wellFormed(text: string): string {
  const lines = text.replaceAll(/\r\n?|[\u0085\u2028\u2029]/g, '\n');
  const plain = lines.replaceAll(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f]/g, '');
  return plain.replaceAll(/\p{Surrogate}/gu, '\ufffd');
}
