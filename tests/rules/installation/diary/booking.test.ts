import { expect, test } from 'vitest';
import { bookInput, callOffInput, moveAppointmentInput } from '@/lib/installation/input';
import {
  decideBooking,
  decideChange,
  overlap,
  type BookingFacts,
  type BookingRefusal,
  type ChangeRefusal,
  type Elsewhere,
  type Span,
} from '@/lib/installation/rules';
import { diaryRefusalMessage, refusedField } from '@/lib/installation/rules/diary/refusals';
import {
  bookedWords,
  hoursWords,
  movedWords,
  namesWords,
} from '@/lib/installation/rules/diary/words';
import { spanAt } from './a-span';

const zone = 'America/Los_Angeles';
const now = new Date('2026-05-04T17:00:00Z');
const morning = spanAt('2026-05-08', '09:00', '12:00');
const other: Elsewhere = {
  id: 'a',
  kind: 'site_visit',
  forWhat: 'of Herons at low water',
  ...spanAt('2026-05-08', '11:00', '13:00'),
};
const commission = {
  ...{ number: 12, hasEnded: false, isHandedOver: false },
  ...{ isWallKnown: true, curesAt: null },
};
const ines = { id: 'ines', name: 'Ines Varga', isActive: true };
const osip = { id: 'osip', name: 'Osip Lund', isActive: true };
const free: BookingFacts = {
  ...{ kind: 'hanging', commission, lead: ines, others: [osip], elsewhere: [] },
};

type Row = { facts: Partial<BookingFacts>; span: Span; refusal: BookingRefusal };
const elsewhere = [{ ...other, staffId: 'osip' }];
const backwards = { startsAt: morning.endsAt, endsAt: morning.startsAt };
const lastYear = spanAt('2025-05-08', '11:00', '12:00');
const curesAt = new Date('2026-05-08T16:00:01Z');
const unknown = { ...commission, isWallKnown: false, curesAt };
const gone = { lead: null, others: [null], elsewhere };

/** Each row breaks its own rule and every rule after it that it can: the first one is told. */
const bookingRefusals: Record<BookingRefusal['code'], Row> = {
  no_such_commission: {
    facts: { commission: 'not_found', ...gone },
    span: backwards,
    refusal: { code: 'no_such_commission' },
  },
  commission_ended: {
    facts: { commission: { ...unknown, hasEnded: true, isHandedOver: true }, ...gone },
    span: backwards,
    refusal: { code: 'commission_ended', commissionNumber: 12 },
  },
  handed_over_already: {
    facts: { commission: { ...unknown, isHandedOver: true }, ...gone },
    span: backwards,
    refusal: { code: 'handed_over_already', commissionNumber: 12 },
  },
  lead_does_not_work_here: {
    facts: { commission: unknown, lead: { ...ines, isActive: false }, others: [null], elsewhere },
    span: backwards,
    refusal: { code: 'lead_does_not_work_here' },
  },
  crew_does_not_work_here: {
    facts: { commission: unknown, others: [osip, { ...osip, isActive: false }], elsewhere },
    span: backwards,
    refusal: { code: 'crew_does_not_work_here' },
  },
  ends_before_it_starts: {
    facts: { commission: unknown, elsewhere },
    span: { startsAt: lastYear.endsAt, endsAt: lastYear.startsAt },
    refusal: { code: 'ends_before_it_starts' },
  },
  in_the_past: {
    facts: { commission: unknown, elsewhere: [{ ...other, ...lastYear, staffId: 'osip' }] },
    span: lastYear,
    refusal: { code: 'in_the_past' },
  },
  wall_not_known: {
    facts: { commission: unknown, elsewhere },
    span: morning,
    refusal: { code: 'wall_not_known', commissionNumber: 12 },
  },
  adhesive_cures: {
    facts: { commission: { ...commission, curesAt }, elsewhere },
    span: morning,
    refusal: { code: 'adhesive_cures', curesAt },
  },
  is_elsewhere: {
    facts: { elsewhere },
    span: morning,
    refusal: { code: 'is_elsewhere', name: 'Osip Lund', other },
  },
};

test.each(Object.entries(bookingRefusals))('booking is refused: %s', (_code, row) => {
  const { facts, span, refusal } = row;
  expect(decideBooking({ ...free, ...facts }, span, now)).toEqual({ ok: false, refusal });
  expect(diaryRefusalMessage(refusal, zone)).toMatch(/^[A-Z].*\.$/);
  expect(refusedField(refusal)).not.toBeNull();
});

test('only a hanging asks for the wall and the adhesive', () => {
  const kinds = ['delivery', 'site_visit', 'fetching'] as const;
  for (const kind of kinds) {
    expect(decideBooking({ ...free, kind, commission: unknown }, morning, now).ok).toBe(true);
  }
  const cured = { ...commission, curesAt: morning.startsAt };
  expect(decideBooking({ ...free, commission: cured }, morning, now).ok).toBe(true);
});

test('after the hand-over an after-care visit is still booked', () => {
  const handed = { ...unknown, isHandedOver: true };
  const visit = { ...free, kind: 'after_care', commission: handed } as const;
  expect(decideBooking(visit, morning, now).ok).toBe(true);
});

test('a free morning is booked, with or without a commission', () => {
  expect(decideBooking(free, morning, now)).toEqual({ ok: true, value: morning });
  expect(decideBooking({ ...free, commission: null }, morning, now).ok).toBe(true);
});

test('one may end as the other starts', () => {
  const after = spanAt('2026-05-08', '12:00', '14:00');
  expect(overlap(morning, after)).toBe(false);
  expect(overlap(after, morning)).toBe(false);
  expect(overlap(morning, other)).toBe(true);
  const within = spanAt('2026-05-08', '10:00', '10:15');
  expect(overlap(within, morning)).toBe(true);
});

test('nothing is booked for this very moment', () => {
  const startsAt = now;
  const span = { startsAt, endsAt: new Date(now.getTime() + 3_600_000) };
  const decided = decideBooking(free, span, now);
  expect(decided).toEqual({ ok: false, refusal: { code: 'in_the_past' } });
});

const standing = { sequence: 2, endsAt: morning.endsAt, isCalledOff: false };
const over = { ...standing, endsAt: now };

/** Each row breaks its own rule and every rule after it. */
const changeRefusals: Record<ChangeRefusal['code'], [typeof standing | null, number]> = {
  no_such_appointment: [null, 1],
  called_off_already: [{ ...over, isCalledOff: true }, 1],
  over_already: [over, 1],
  changed_meanwhile: [standing, 1],
};

test.each(Object.entries(changeRefusals))('a change is refused: %s', (code, row) => {
  const [appointment, seen] = row;
  expect(decideChange(appointment, seen, now)).toEqual({ ok: false, refusal: { code } });
  expect(diaryRefusalMessage({ code } as ChangeRefusal, zone)).toMatch(/^[A-Z].*\.$/);
});

test('what was seen as it stands can be changed', () => {
  expect(decideChange(standing, 2, now)).toEqual({ ok: true, value: true });
});

test('days and hours are said in the gallery’s own time', () => {
  expect(hoursWords(morning, zone)).toBe('9:00 am to 12:00 pm');
  expect(bookedWords('hanging', morning, zone)).toBe(
    'Hanging booked for Friday 8 May, 9:00 am to 12:00 pm.',
  );
  expect(movedWords('site_visit', morning, zone)).toBe(
    'The site visit is now on Friday 8 May, 9:00 am to 12:00 pm.',
  );
  const refusal = bookingRefusals.is_elsewhere.refusal;
  expect(diaryRefusalMessage(refusal, zone)).toBe(
    'Osip Lund is elsewhere then: the site visit of Herons at low water, Friday 8 May, ' +
      '11:00 am to 1:00 pm. Choose another time, or somebody else.',
  );
  expect(namesWords(['Ines', 'Osip', 'Ruth'])).toBe('Ines, Osip and Ruth');
});

const key = '6f1f1c0e-3c3a-4d6c-9e39-0a4c8f1f7f11';
const form = {
  requestKey: key,
  kind: 'hanging',
  commissionId: '',
  day: '2026-05-08',
  from: '09:00',
  to: '12:00',
  leadId: key,
  address: ' 4 Ropewalk Lane ',
};

test('a booking is read from a form', () => {
  expect(bookInput.parse(form)).toEqual({
    ...{ requestKey: key, kind: 'hanging', commissionId: null },
    ...{ day: '2026-05-08', from: '09:00', to: '12:00', leadId: key, crewIds: [] },
    ...{ address: '4 Ropewalk Lane', travelMinutes: 0, note: '' },
    ...{ meets: '', prepares: '', fallBack: '', words: {} },
  });
});

test('who goes along, the way and the words are read from a form', () => {
  const more = { travelMinutes: '40', 'word.closed': ' They open for us. ', 'word.absent': '' };
  expect(bookInput.parse({ ...form, ...more, crewIds: ['', key] })).toMatchObject({
    ...{ crewIds: [key], travelMinutes: 40, words: { closed: 'They open for us.' } },
  });
  expect(bookInput.parse({ ...form, crewIds: '' }).crewIds).toEqual([]);
  expect(bookInput.parse({ ...form, crewIds: key }).crewIds).toEqual([key]);
});

test.each([
  ['kind', 'party'],
  ['day', '2026-02-30'],
  ['from', '9 am'],
  ['to', '24:00'],
  ['leadId', ''],
  ['address', ' '],
  ['commissionId', '12'],
  ['note', 'x'.repeat(1_001)],
  ['travelMinutes', 'far'],
  ['travelMinutes', '2881'],
  ['travelMinutes', '-5'],
  ['word.absent', 'ok'],
])('a booking with a wrong %s is told at that field', (field, value) => {
  const read = bookInput.safeParse({ ...form, [field]: value });
  expect(read.error?.issues.map((issue) => issue.path.join('.'))).toEqual([field]);
});

test('nobody who is no name goes along, and nothing is sent that is not asked', () => {
  expect(bookInput.safeParse({ ...form, crewIds: ['12'] }).success).toBe(false);
  expect(bookInput.safeParse({ ...form, 'word.weather': 'It will be fine.' }).success).toBe(false);
});

test('calling off says why, and a move says what was seen', () => {
  const call = { requestKey: key, appointmentId: key, seenSequence: '0', why: '  ' };
  expect(callOffInput.safeParse(call).success).toBe(false);
  expect(callOffInput.parse({ ...call, why: 'Rain all week' }).seenSequence).toBe(0);
  const { day, from, to, leadId, address } = form;
  const move = { requestKey: key, appointmentId: key, day, from, to, leadId, address };
  expect(moveAppointmentInput.safeParse({ ...move, seenSequence: 'x' }).success).toBe(false);
  expect(moveAppointmentInput.safeParse({ ...move, seenSequence: '1' }).success).toBe(true);
});
