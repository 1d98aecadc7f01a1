import { expect, test } from 'vitest';
import { bookInput, callOffInput, moveAppointmentInput } from '@/lib/installation/input';
import {
  decideBooking,
  decideChange,
  overlap,
  spanOf,
  type BookingFacts,
  type BookingRefusal,
  type ChangeRefusal,
  type Elsewhere,
  type Span,
} from '@/lib/installation/rules';
import {
  bookedWords,
  bookingRefusalMessage,
  changeRefusalMessage,
  hoursWords,
  movedWords,
} from '@/lib/installation/rules/diary/words';

const zone = 'America/Los_Angeles';
const now = new Date('2026-05-04T17:00:00Z');
const morning = spanOf({ day: '2026-05-08', from: '09:00', to: '12:00' }, zone);
const other: Elsewhere = {
  id: 'a',
  kind: 'site_visit',
  forWhat: 'of Herons at low water',
  ...spanOf({ day: '2026-05-08', from: '11:00', to: '13:00' }, zone),
};
const free: BookingFacts = {
  commission: { number: 12, hasEnded: false, isHandedOver: false },
  lead: { name: 'Ines Varga', isActive: true },
  elsewhere: [],
};

type Row = { facts: Partial<BookingFacts>; span: Span; refusal: BookingRefusal };
const gone = { lead: null, elsewhere: [other] };
const backwards = { startsAt: morning.endsAt, endsAt: morning.startsAt };
const lastYear = spanOf({ day: '2025-05-08', from: '11:00', to: '12:00' }, zone);

/** Each row breaks its own rule and every rule after it that it can: the first one is told. */
const bookingRefusals: Record<BookingRefusal['code'], Row> = {
  no_such_commission: {
    facts: { commission: 'not_found', ...gone },
    span: backwards,
    refusal: { code: 'no_such_commission' },
  },
  commission_ended: {
    facts: { commission: { number: 12, hasEnded: true, isHandedOver: true }, ...gone },
    span: backwards,
    refusal: { code: 'commission_ended', commissionNumber: 12 },
  },
  handed_over_already: {
    facts: { commission: { number: 12, hasEnded: false, isHandedOver: true }, ...gone },
    span: backwards,
    refusal: { code: 'handed_over_already', commissionNumber: 12 },
  },
  lead_does_not_work_here: {
    facts: { lead: { name: 'Ines Varga', isActive: false }, elsewhere: [other] },
    span: backwards,
    refusal: { code: 'lead_does_not_work_here' },
  },
  ends_before_it_starts: {
    facts: { elsewhere: [other] },
    span: { startsAt: lastYear.endsAt, endsAt: lastYear.startsAt },
    refusal: { code: 'ends_before_it_starts' },
  },
  in_the_past: {
    facts: { elsewhere: [{ ...other, ...lastYear }] },
    span: lastYear,
    refusal: { code: 'in_the_past' },
  },
  lead_is_elsewhere: {
    facts: { elsewhere: [other] },
    span: morning,
    refusal: { code: 'lead_is_elsewhere', leadName: 'Ines Varga', other },
  },
};

test.each(Object.entries(bookingRefusals))('booking is refused: %s', (_code, row) => {
  const { facts, span, refusal } = row;
  expect(decideBooking({ ...free, ...facts }, span, now)).toEqual({ ok: false, refusal });
});

test('a free morning is booked, with or without a commission', () => {
  expect(decideBooking(free, morning, now)).toEqual({ ok: true, value: morning });
  expect(decideBooking({ ...free, commission: null }, morning, now).ok).toBe(true);
});

test('one may end as the other starts', () => {
  const after = spanOf({ day: '2026-05-08', from: '12:00', to: '14:00' }, zone);
  expect(overlap(morning, after)).toBe(false);
  expect(overlap(after, morning)).toBe(false);
  expect(overlap(morning, other)).toBe(true);
  const within = spanOf({ day: '2026-05-08', from: '10:00', to: '10:15' }, zone);
  expect(overlap(within, morning)).toBe(true);
});

test('nothing is booked for this very moment', () => {
  const startsAt = now;
  const span = { startsAt, endsAt: new Date(now.getTime() + 3_600_000) };
  const decided = decideBooking(free, span, now);
  expect(decided).toEqual({ ok: false, refusal: { code: 'in_the_past' } });
});

// Clocks in this zone go forward on 8 March 2026 at 2:00 and back on 1 November 2026 at 2:00
// (United States daylight saving: second Sunday of March, first Sunday of November).
test.each([
  ['an ordinary morning', { day: '2026-05-08', from: '09:00', to: '12:00' }, 3 * 60],
  ['over the skipped hour', { day: '2026-03-08', from: '01:00', to: '04:00' }, 2 * 60],
  ['over the hour shown twice', { day: '2026-11-01', from: '00:30', to: '03:00' }, 3 * 60 + 30],
  ['from a time that is skipped', { day: '2026-03-08', from: '02:30', to: '05:00' }, 90],
] as const)('hours are what the clock says: %s', (_label, times, minutes) => {
  const span = spanOf(times, zone);
  expect((span.endsAt.getTime() - span.startsAt.getTime()) / 60_000).toBe(minutes);
});

test('a time in the skipped hour until the end of that hour is no time at all', () => {
  const span = spanOf({ day: '2026-03-08', from: '02:30', to: '03:15' }, zone);
  expect(decideBooking(free, span, new Date('2026-01-01T00:00:00Z'))).toEqual({
    ok: false,
    refusal: { code: 'ends_before_it_starts' },
  });
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
  expect(changeRefusalMessage({ code } as ChangeRefusal)).toMatch(/^[A-Z].*\.$/);
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
  const refusal = bookingRefusals.lead_is_elsewhere.refusal;
  expect(bookingRefusalMessage(refusal, zone)).toBe(
    'Ines Varga is elsewhere then: the site visit of Herons at low water, Friday 8 May, ' +
      '11:00 am to 1:00 pm. Choose another time, or somebody else to lead it.',
  );
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
  expect(bookInput.parse(form)).toMatchObject({
    commissionId: null,
    address: '4 Ropewalk Lane',
    note: '',
  });
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
])('a booking with a wrong %s is told at that field', (field, value) => {
  const read = bookInput.safeParse({ ...form, [field]: value });
  expect(read.error?.issues.map((issue) => issue.path.join('.'))).toEqual([field]);
});

test('calling off says why, and a move says what was seen', () => {
  const call = { requestKey: key, appointmentId: key, seenSequence: '0', why: '  ' };
  expect(callOffInput.safeParse(call).success).toBe(false);
  expect(callOffInput.parse({ ...call, why: 'Rain all week' }).seenSequence).toBe(0);
  const { day, from, to, leadId } = form;
  const move = { requestKey: key, appointmentId: key, seenSequence: 'x', day, from, to, leadId };
  expect(moveAppointmentInput.safeParse(move).success).toBe(false);
});
