import ICAL from 'ical.js';
import { describe, expect, test } from 'vitest';
import { instantOf, type Day } from '@/lib/dates/rules';
import {
  calendarText,
  type CalendarEvent,
  type CalendarFile,
} from '@/lib/installation/rules/calendar/file';
import { zoneText } from '@/lib/installation/rules/calendar/zone';

// RFC 5545 (September 2009) and RFC 5546; read back by ical.js, which knows none of our code and
// takes every zone from the file itself.

const at = new Date('2026-11-28T18:00:00Z');

function event(change: Partial<CalendarEvent> = {}): CalendarEvent {
  return {
    uid: '0190f6a2-7c11-7d3e-9a55-1b2c3d4e5f60',
    sequence: 0,
    startsAt: new Date('2026-12-01T17:00:00Z'),
    endsAt: new Date('2026-12-01T20:00:00Z'),
    summary: 'Hanging of Herons at low water',
    description: 'Two go along.',
    location: '4 Ropewalk Lane',
    href: null,
    isOff: false,
    madeAt: new Date('2026-10-01T09:00:00Z'),
    changedAt: new Date('2026-10-01T09:00:00Z'),
    ...change,
  };
}

function file(events: CalendarEvent[], change: Partial<CalendarFile> = {}): CalendarFile {
  return { name: 'Diary', zone: 'America/Vancouver', method: null, at, events, ...change };
}

/** What another program reads, with the zones of this file and of no other. */
function read(text: string) {
  ICAL.TimezoneService.reset();
  const calendar = ICAL.Component.fromString(text);
  for (const zone of calendar.getAllSubcomponents('vtimezone')) {
    ICAL.TimezoneService.register(zone);
  }
  return {
    calendar,
    events: calendar.getAllSubcomponents('vevent').map((each) => new ICAL.Event(each)),
  };
}

function readOne(change: Partial<CalendarEvent>, of: Partial<CalendarFile> = {}) {
  const [one] = read(calendarText(file([event(change)], of))).events;
  if (!one) throw new Error('No event was read.');
  return one;
}

const lines = (text: string) => text.split('\r\n');

describe('instants', () => {
  const days: readonly (readonly [zone: string, before: Day, after: Day])[] = [
    ['America/Vancouver', '2026-03-07', '2026-03-09'],
    ['America/Vancouver', '2025-11-01', '2025-11-03'],
    ['Europe/London', '2027-03-27', '2027-03-29'],
    ['Europe/London', '2027-10-30', '2027-11-01'],
    ['Australia/Sydney', '2027-04-03', '2027-04-05'],
    ['Australia/Sydney', '2027-10-02', '2027-10-04'],
    ['America/St_Johns', '2027-03-13', '2027-03-15'],
    ['Pacific/Chatham', '2027-09-25', '2027-09-27'],
    ['Africa/Casablanca', '2027-02-06', '2027-02-08'],
    // Mexico City set its clocks twice a year until October 2022, and since then never.
    ['America/Mexico_City', '2022-04-02', '2022-04-04'],
    ['America/Mexico_City', '2022-10-29', '2022-10-31'],
    ['America/Mexico_City', '2023-04-01', '2023-04-03'],
    ['Asia/Tokyo', '2027-03-13', '2027-03-15'],
  ];

  test.each(days)('in %s are the same before %s and after %s', (zone, before, after) => {
    const events = [before, after].map((day) =>
      event({
        uid: day,
        startsAt: instantOf(day, '09:00', zone),
        endsAt: instantOf(day, '11:30', zone),
      }),
    );
    const told = read(calendarText(file(events, { zone }))).events;
    expect(told.map((each) => each.startDate.toJSDate())).toEqual(
      events.map((each) => each.startsAt),
    );
    expect(told.map((each) => each.endDate.toJSDate())).toEqual(events.map((each) => each.endsAt));
    expect(told.map((each) => each.startDate.hour)).toEqual([9, 9]);
  });

  test.each([
    ['America/New_York', '2026-11-01T05:30:00Z'],
    ['America/New_York', '2026-11-01T06:30:00Z'],
    ['Europe/London', '2026-10-25T00:30:00Z'],
    ['Europe/London', '2026-10-25T01:30:00Z'],
  ])('in %s are right in the hour that comes twice: %s', (zone, iso) => {
    const startsAt = new Date(iso);
    const endsAt = new Date(startsAt.getTime() + 3 * 3_600_000);
    const one = readOne({ startsAt, endsAt }, { zone });
    expect([one.startDate.toJSDate(), one.endDate.toJSDate()]).toEqual([startsAt, endsAt]);
  });

  test('an appointment over the hour that is skipped keeps its length', () => {
    const startsAt = new Date('2027-03-14T06:00:00Z');
    const endsAt = new Date('2027-03-14T08:00:00Z');
    const one = readOne({ startsAt, endsAt }, { zone: 'America/New_York' });
    expect(one.startDate.toString()).toBe('2027-03-14T01:00:00');
    expect(one.endDate.toString()).toBe('2027-03-14T04:00:00');
    expect(one.duration.toSeconds()).toBe(7_200);
  });

  test('the end is not in it: a neighbour begins where it ends', () => {
    const noon = new Date('2026-12-01T20:00:00Z');
    const [first, second] = read(
      calendarText(
        file([
          event({ endsAt: noon }),
          event({ uid: 'next', startsAt: noon, endsAt: new Date('2026-12-01T21:00:00Z') }),
        ]),
      ),
    ).events;
    expect(first?.endDate.compare(second?.startDate ?? first.startDate)).toBe(0);
  });
});

describe('a zone', () => {
  test('New York has the rules of the example in section 3.6.5', () => {
    const told = zoneText('America/New_York', { first: 2009, last: 2012 });
    const wanted = [
      'DTSTART:20070311T020000',
      'RRULE:FREQ=YEARLY;BYMONTH=3;BYDAY=2SU',
      'DTSTART:20071104T020000',
      'RRULE:FREQ=YEARLY;BYMONTH=11;BYDAY=1SU',
    ];
    expect(lines(told).filter((line) => /^(DTSTART|RRULE)/.test(line))).toEqual(wanted);
    const [daylight, standard] = told.split('END:DAYLIGHT');
    expect(daylight).toContain('TZOFFSETFROM:-0500\r\nTZOFFSETTO:-0400');
    expect(standard).toContain('TZOFFSETFROM:-0400\r\nTZOFFSETTO:-0500');
  });

  test.each([
    ['Europe/London', 'BYMONTH=3;BYDAY=-1SU', 'BYMONTH=10;BYDAY=-1SU'],
    ['Australia/Sydney', 'BYMONTH=4;BYDAY=1SU', 'BYMONTH=10;BYDAY=1SU'],
  ])('%s changes by %s and %s', (zone, one, other) => {
    const told = zoneText(zone, { first: 2026, last: 2028 });
    expect(told).toContain(`RRULE:FREQ=YEARLY;${one}`);
    expect(told).toContain(`RRULE:FREQ=YEARLY;${other}`);
  });

  test('is described wherever it is named, once, and not for times in UTC', () => {
    const text = calendarText(file([event(), event({ uid: 'two' })]));
    expect(text.match(/BEGIN:VTIMEZONE/g)).toHaveLength(1);
    expect(text).toContain('DTSTART;TZID=America/Vancouver:20261201T090000');
    expect(calendarText(file([event()], { zone: 'UTC' }))).toContain('DTSTART:20261201T170000Z');
  });
});

describe('the form', () => {
  const long = event({
    summary: `Hanging of “Seehöhlen, bei Ebbe” ${'ö'.repeat(90)}`,
    description: `${'🦢'.repeat(60)}; ${'a'.repeat(200)}`,
  });

  test('no line is longer than 75 octets, and none is cut within a letter', () => {
    const bytes = new TextEncoder();
    const told = lines(calendarText(file([long])));
    expect(Math.max(...told.map((line) => bytes.encode(line).length))).toBeLessThanOrEqual(75);
    expect(told.filter((line) => /\p{Surrogate}/u.test(line))).toEqual([]);
    expect(told.length).toBeGreaterThan(20);
  });

  test('every line closes with CR and LF, the last one too', () => {
    const text = calendarText(file([long, event({ description: 'one\ntwo\r\nthree\rfour' })]));
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(text.endsWith('END:VCALENDAR\r\n')).toBe(true);
  });

  test('commas, semicolons and backslashes are escaped, colons and quotes are not', () => {
    const summary = 'Install: "River" relief, north wall; bring cleats \\ shims';
    const text = calendarText(file([event({ summary })])).replaceAll('\r\n ', '');
    expect(text).toContain(
      'SUMMARY:Install: "River" relief\\, north wall\\; bring cleats \\\\ shims',
    );
    expect(readOne({ summary }).summary).toBe(summary);
  });

  test('an event has its UID, and a stamp in UTC', () => {
    const text = calendarText(file([event()]));
    expect(text).toContain('UID:0190f6a2-7c11-7d3e-9a55-1b2c3d4e5f60\r\n');
    expect(text).toMatch(/DTSTAMP:\d{8}T\d{6}Z\r\n/);
    expect(text).not.toMatch(/DURATION/);
  });

  test('an empty diary is a calendar all the same', () => {
    const { calendar, events } = read(calendarText(file([])));
    expect(events).toEqual([]);
    expect(calendar.getAllSubcomponents()).toHaveLength(1);
  });
});

describe('changes', () => {
  test('moved or called off, it keeps its UID and its sequence rises', () => {
    const moved = readOne({ sequence: 1, startsAt: new Date('2026-12-01T18:00:00Z') });
    const off = readOne({ sequence: 2, isOff: true });
    expect([moved.uid, moved.sequence]).toEqual([event().uid, 1]);
    expect([off.uid, off.sequence]).toEqual([event().uid, 2]);
    expect(off.component.getFirstPropertyValue('status')).toBe('CANCELLED');
    expect(readOne({}).component.getFirstPropertyValue('status')).toBe('CONFIRMED');
  });

  test('a snapshot has no method and stamps its events as they last changed', () => {
    const { calendar } = read(calendarText(file([event()])));
    expect(calendar.getFirstPropertyValue('method')).toBeNull();
    expect(calendarText(file([event()]))).toContain('DTSTAMP:20261001T090000Z');
  });

  test.each(['PUBLISH', 'CANCEL'] as const)('a file that is handed on says %s', (method) => {
    const text = calendarText(file([event()], { method }));
    expect(read(text).calendar.getFirstPropertyValue('method')).toBe(method);
    expect(text).toContain('DTSTAMP:20261128T180000Z');
  });
});
