import { fc, test } from '@fast-check/vitest';
import ICAL from 'ical.js';
import { describe, expect } from 'vitest';
import { calendarText, wellFormed } from '@/lib/installation/rules/calendar/file';

const made = new Date('2026-10-01T09:00:00Z');
const zones = [
  ...['America/Vancouver', 'America/St_Johns', 'Europe/London', 'Australia/Sydney'],
  ...['Australia/Lord_Howe', 'Pacific/Chatham', 'Africa/Casablanca', 'Asia/Kolkata', 'UTC'],
];

function read(text: string) {
  ICAL.TimezoneService.reset();
  const calendar = ICAL.Component.fromString(text);
  for (const each of calendar.getAllSubcomponents('vtimezone')) ICAL.TimezoneService.register(each);
  const event = calendar.getFirstSubcomponent('vevent');
  if (!event) throw new Error('No event was read.');
  return new ICAL.Event(event);
}

/** The reader leaves names that are not of the RFC as they stand in the file. */
function unescaped(text: string): string {
  return text.replaceAll(/\\(.)/g, (_whole, letter: string) => (letter === 'n' ? '\n' : letter));
}

type Told = { text?: string; zone?: string; startsAt?: Date; minutes?: number };

function write({ text = '', zone = 'Europe/London', startsAt = made, minutes = 60 }: Told): string {
  const event = {
    ...{ uid: 'one', sequence: 0, href: null, isOff: false, madeAt: made, changedAt: made },
    ...{ summary: text, description: text, location: text, startsAt },
    endsAt: new Date(startsAt.getTime() + minutes * 60_000),
  };
  return calendarText({ name: text, zone, method: null, at: made, events: [event] });
}

const anyText = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 400 }),
  fc.string({ unit: 'grapheme', maxLength: 200 }),
  fc.string({ unit: fc.constantFrom(',', ';', ':', '\\', '"', '\n', '\r\n', 'n', ' ', '\t', 'é') }),
);

describe('a calendar file', () => {
  test.prop([anyText])('gives back any text as it was written', (text) => {
    const event = read(write({ text }));
    // An empty text is left out of the file, which is the same.
    const given = [event.summary, event.description, event.location].map((each) => each || '');
    expect(given).toEqual(Array(3).fill(wellFormed(text)));
    const name = ICAL.Component.fromString(write({ text })).getFirstPropertyValue('x-wr-calname');
    expect(name === null ? '' : unescaped(String(name))).toBe(wellFormed(text));
  });

  test.prop([anyText])('has no line of more than 75 octets, whatever is in it', (text) => {
    const lengths = write({ text })
      .split('\r\n')
      .map((line) => new TextEncoder().encode(line).length);
    expect(Math.max(...lengths)).toBeLessThanOrEqual(75);
    expect(write({ text }).replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
  });

  const instant = fc
    .integer({ min: Date.UTC(2024, 0, 1) / 60_000, max: Date.UTC(2030, 0, 1) / 60_000 })
    .map((minutes) => new Date(minutes * 60_000));

  test.prop([fc.constantFrom(...zones), instant, fc.integer({ min: 1, max: 2_880 })])(
    'gives back any instant in any zone',
    (zone, startsAt, minutes) => {
      const event = read(write({ zone, startsAt, minutes }));
      expect(event.startDate.toJSDate()).toEqual(startsAt);
      expect(event.endDate.toJSDate().getTime() - startsAt.getTime()).toBe(minutes * 60_000);
    },
  );
});
