import { fc, test } from '@fast-check/vitest';
import { beforeAll, expect } from 'vitest';
import type { Day } from '@/lib/dates/rules';
import { bookAppointment, callOffAppointment, moveAppointment } from '@/lib/installation/writes';
import { db } from '@/lib/platform/db/client';
import { aBooking } from '@/tests/database/installation/a-booking';
import { aKey, aPerson, aStudio, type TestStudio } from '@/tests/database/studio/a-studio';
import { sql, startAfresh } from '@/tests/helpers/database';

let studio: TestStudio;
let people: string[];

beforeAll(async () => {
  await startAfresh();
  studio = await aStudio();
  const more = await aPerson('maker', 'Tove Ash');
  people = [studio.owner, studio.gallery, studio.maker, more].map(({ actor }) => actor.id);
});

const step = fc.record({
  kind: fc.constantFrom('book', 'book', 'book', 'move', 'move', 'callOff'),
  lead: fc.nat({ max: 3 }),
  others: fc.uniqueArray(fc.nat({ max: 3 }), { maxLength: 3 }),
  day: fc.constantFrom<Day>('2026-05-08', '2026-05-09', '2026-11-01', '2027-03-14'),
  hour: fc.integer({ min: 0, max: 19 }),
  lasts: fc.integer({ min: 0, max: 4 }),
  which: fc.nat({ max: 9 }),
});
type Step = {
  kind: string;
  lead: number;
  others: number[];
  day: Day;
  hour: number;
  lasts: number;
  which: number;
};

const words = {
  ...{ travel_short: 'It is next door.', absent: 'They come back for it.' },
  ...{ closed: 'They open for us.', outside_hours: 'They agreed.' },
};

function wishOf({ lead, others, day, hour, lasts }: Step) {
  const two = (figure: number) => String(figure).padStart(2, '0');
  return {
    leadId: people[lead] ?? '',
    crewIds: others.map((one) => people[one] ?? ''),
    day,
    ...{ from: `${two(hour)}:30`, to: `${two(hour + lasts)}:15`, words },
  };
}

/** Does one thing; a refusal is an answer like any other here. */
async function take(given: Step): Promise<void> {
  const wish = wishOf(given);
  if (given.kind === 'book') {
    await bookAppointment(studio.owner, aBooking(wish));
    return;
  }
  const all = await db().appointment.findMany({ orderBy: { id: 'asc' } });
  const one = all[given.which % Math.max(all.length, 1)];
  if (!one) return;
  const seen = { requestKey: aKey(), appointmentId: one.id, seenSequence: one.sequence };
  if (given.kind === 'callOff') {
    await callOffAppointment(studio.owner, { ...seen, why: 'Rain all week' });
  } else {
    const { address, travelMinutes } = one;
    await moveAppointment(studio.owner, { ...seen, ...wish, address, travelMinutes, whyMoved: '' });
  }
}

/** Said in plain SQL; each answers with what breaks it. */
const alwaysSo: Readonly<Record<string, string>> = {
  'nobody is in two places': `
    select a."staffId" from "AppointmentCrew" a join "AppointmentCrew" b
      on a."staffId" = b."staffId" and a."appointmentId" < b."appointmentId"
      and not a."isOff" and not b."isOff" and a."startsAt" < b."endsAt" and b."startsAt" < a."endsAt"`,
  'the crew have the hours of their appointment': `
    select c."staffId" from "AppointmentCrew" c join "Appointment" a on a.id = c."appointmentId"
    where c."startsAt" <> a."startsAt" or c."endsAt" <> a."endsAt"
      or c."isOff" <> (a."calledOffAt" is not null)`,
  'whoever leads goes along': `
    select a.id from "Appointment" a where not exists (
      select from "AppointmentCrew" c where c."appointmentId" = a.id and c."staffId" = a."leadId")`,
  'every change has kept how it stood': `
    select a.id from "Appointment" a where a.sequence <>
      (select count(*) from "AppointmentChange" c where c."appointmentId" = a.id)`,
  'it ends after it starts': `select id from "Appointment" where "endsAt" <= "startsAt"`,
};

test.prop([fc.array(step, { minLength: 4, maxLength: 14 })], { numRuns: 15 })(
  'however days are booked, moved and called off, nobody is in two places and crews match',
  async (steps) => {
    for (const one of steps) await take(one);
    for (const [sentence, query] of Object.entries(alwaysSo)) {
      expect([sentence, await sql(query)]).toEqual([sentence, []]);
    }
  },
);

test.prop([fc.array(step, { minLength: 4, maxLength: 6 })], { numRuns: 5 })(
  'nor when all of it happens at once',
  async (steps) => {
    await Promise.all(steps.map(take));
    for (const [sentence, query] of Object.entries(alwaysSo)) {
      expect([sentence, await sql(query)]).toEqual([sentence, []]);
    }
  },
);
