import { expect, test } from 'vitest';
import {
  anyFeedRefusalMessage,
  calendarStretch,
  secretOf,
} from '@/lib/installation/rules/calendar/feed';
import {
  theirEvent,
  eventForStaff,
  methodOf,
  withoutTelephone,
  type ForCalendar,
} from '@/lib/installation/rules/calendar/told';

const hanging: ForCalendar = {
  id: '0190f6a2-7c11-7d3e-9a55-1b2c3d4e5f60',
  kind: 'hanging',
  sequence: 2,
  startsAt: new Date('2026-05-08T16:00:00Z'),
  endsAt: new Date('2026-05-08T19:00:00Z'),
  address: '4 Ropewalk Lane',
  travelMinutes: 45,
  meets: 'Marit Oland, 555-0134 010',
  prepares: 'Wall painted; the sofa moved',
  fallBack: 'The Tuesday after',
  note: 'Gate 47, second floor',
  leadName: 'Osip Lund',
  withNames: ['Ines Varga', 'Ruth Callow'],
  commission: { number: 12, title: 'Herons at low water', collector: 'Marit Oland' },
  weight: { weightG: 45_000, isByScale: true },
  calledOffWhy: null,
  madeAt: new Date('2026-05-01T16:00:00Z'),
  changedAt: new Date('2026-05-02T16:00:00Z'),
};
const manner = {
  zone: 'America/Los_Angeles',
  system: 'lb',
  origin: 'https://relief.example',
} as const;

test('those who go along read all that they need on the way', () => {
  const told = eventForStaff(hanging, manner);
  expect(told).toMatchObject({
    uid: hanging.id,
    sequence: 2,
    summary: 'Hanging of Herons at low water',
    location: '4 Ropewalk Lane',
    href: `https://relief.example/diary/${hanging.id}`,
    isOff: false,
  });
  expect(told.description.split('\n')).toEqual([
    'For Marit Oland, commission 12.',
    'Osip Lund leads, with Ines Varga, Ruth Callow.',
    'Who meets you: Marit Oland, (number on its page)',
    'Weighs 99 lb, by the scale.',
    '45 minutes on the way: leave at 8:15 am.',
    'Ready there: Wall painted; the sofa moved',
    'If weather or road forbid it: The Tuesday after',
    'Gate 47, second floor',
  ]);
});

test('what is not known is left out', () => {
  const bare: ForCalendar = {
    ...{ ...hanging, travelMinutes: 0, meets: '', prepares: '', fallBack: '', note: '' },
    ...{ withNames: [], commission: null, weight: null },
  };
  const told = eventForStaff(bare, { ...manner, origin: null });
  expect(told.description).toBe('Osip Lund leads.');
  expect(told.summary).toBe('Hanging, 4 Ropewalk Lane');
  expect(told.href).toBeNull();
});

test('a collector reads who comes and what is asked of them, and nothing of the studio’s', () => {
  const told = theirEvent(hanging, { name: 'Saltwood Relief' });
  expect(told.description.split('\n')).toEqual([
    'Saltwood Relief: Osip Lund, Ines Varga, Ruth Callow come.',
    'What is asked of you: Wall painted; the sofa moved',
  ]);
  expect(told.href).toBeNull();
  const alone = theirEvent({ ...hanging, withNames: [] }, { name: 'Saltwood Relief' });
  expect(alone.description).toContain('Osip Lund comes.');
});

test('what was called off says so first, and its file takes it out again', () => {
  const off = { ...hanging, calledOffWhy: 'Storm' };
  expect(methodOf(off)).toBe('CANCEL');
  expect(methodOf(hanging)).toBe('PUBLISH');
  for (const told of [eventForStaff(off, manner), theirEvent(off, { name: 'Saltwood' })]) {
    expect(told.isOff).toBe(true);
    expect(told.summary).toBe('Called off: Hanging of Herons at low water');
    expect(told.description).toMatch(/^Called off: Storm\n/);
  }
});

test.each([
  ['Marit, 555-0134 010', 'Marit, (number on its page)'],
  ['+1 (555) 013-4010, ring twice', '(number on its page), ring twice'],
  ['call 555.013.4010 or 5550134011', 'call (number on its page) or (number on its page)'],
  ['Gate 4711, floor 12, 9:30 am', 'Gate 4711, floor 12, 9:30 am'],
  ['on 8 May 2026', 'on 8 May 2026'],
  ['', ''],
])('of “%s” a calendar keeps “%s”', (text, kept) => {
  expect(withoutTelephone(text)).toBe(kept);
});

test('the stretch is cut at midnight of the gallery, over the change of its clocks', () => {
  expect(calendarStretch(new Date('2026-04-01T05:00:00Z'), 'America/Los_Angeles')).toEqual({
    fromAt: new Date('2026-01-30T08:00:00Z'),
    untilAt: new Date('2028-03-30T07:00:00Z'),
  });
});

test('the secret is what stands before .ics', () => {
  expect(secretOf('abc.ics')).toBe('abc');
  expect(secretOf('abc')).toBe('abc');
  expect(secretOf('abc.ics.ics')).toBe('abc.ics');
});

test('every refusal has a sentence of its own', () => {
  const codes = [
    ...(['no_such_person', 'not_your_calendar', 'too_many_feeds'] as const),
    ...(['no_such_feed', 'feed_shut_already', 'key_used_for_something_else'] as const),
  ];
  const sentences = codes.map((code) => anyFeedRefusalMessage({ code }));
  expect(new Set(sentences).size).toBe(codes.length);
  expect(anyFeedRefusalMessage({ code: 'not_allowed', permission: 'diary.see' })).toContain(
    'diary',
  );
});
