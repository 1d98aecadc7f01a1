import { beforeEach, describe, expect, test } from 'vitest';
import { findAppointment } from '@/lib/installation/reads';
import type { BookInput } from '@/lib/installation/input';
import { bookAppointment, moveAppointment, tellMore } from '@/lib/installation/writes';
import { addAbsence, keepHours, keepWay } from '@/lib/installation/writes/crew/crew';
import type { Doer } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import { constraintOf } from '@/lib/platform/db/errors';
import {
  aCommission,
  agreed,
  aJob,
  aKey,
  aStudio,
  monday,
  type TestStudio,
} from '../studio/a-studio';
import { sql, startAfresh } from '../../helpers/database';
import { lookAtWall } from '../../helpers/look-at-wall';
import { aBooking, crewOf } from './a-booking';

const zone = 'America/Los_Angeles';
let studio: TestStudio;
let maker: string;

beforeEach(async () => {
  await startAfresh();
  studio = await aStudio();
  maker = studio.maker.actor.id;
});

/** What is asked when it is booked; `done` when nothing is, else why it was refused. */
async function askedOf(change: Partial<BookInput>, doer: Doer = studio.gallery) {
  const answer = await bookAppointment(doer, aBooking({ leadId: maker, ...change }));
  if (answer.ok) return 'done';
  const { refusal } = answer;
  return refusal.code === 'asks' ? refusal.questions.map(({ about }) => about) : refusal.code;
}

async function bookedId(change: Partial<BookInput> = {}, doer: Doer = studio.gallery) {
  const answer = await bookAppointment(doer, aBooking({ leadId: maker, ...change }));
  if (!answer.ok) throw new Error(`Refused: ${answer.refusal.code}`);
  return answer.value.id;
}

function moved(appointmentId: string, change: Record<string, unknown> = {}) {
  const { leadId, crewIds, day, from, to, address, travelMinutes } = aBooking({ leadId: maker });
  const times = { leadId, crewIds, day, from, to, address, travelMinutes };
  const rest = { seenSequence: 0, whyMoved: 'Rain', words: {} };
  return { requestKey: aKey(), appointmentId, ...times, ...rest, ...change };
}

describe('a hanging for a commission', () => {
  test('waits until somebody knows the wall; the latest look holds', async () => {
    const { id: commissionId } = await aCommission(studio.owner);
    const hanging = { commissionId, words: { before_ready: 'Made elsewhere.' } };
    expect(await askedOf(hanging)).toBe('wall_not_known');
    await lookAtWall(commissionId);
    expect(await askedOf(hanging)).toBe('done');
    const look = { commissionId, version: 2, wall: null, staffId: maker, at: monday };
    await db().wallSurvey.create({ data: { ...look, surveyedOn: monday } });
    expect(await askedOf({ ...hanging, day: '2026-05-11' })).toBe('wall_not_known');
    expect(await askedOf({ ...hanging, day: '2026-05-11', kind: 'delivery' })).toBe('done');
  });

  test('waits until the adhesive has cured; a later assembly counts anew', async () => {
    const { id: commissionId } = await aCommission(studio.owner);
    await lookAtWall(commissionId);
    const assembled = (finishedAt: string, curesAt: string) =>
      db().assembly.create({
        data: {
          ...{ commissionId, board: 'Plywood', adhesive: 'Epoxy', staffId: maker, at: monday },
          ...{ finishedAt: new Date(finishedAt), curesAt: new Date(curesAt) },
        },
      });
    const hanging = { commissionId, words: { before_ready: 'Made elsewhere.' } };
    await assembled('2026-05-01T17:00:00Z', '2026-05-08T16:00:01Z');
    expect(await askedOf(hanging)).toBe('adhesive_cures');
    expect(await askedOf({ ...hanging, from: '09:01' })).toBe('done');
    await assembled('2026-05-02T17:00:00Z', '2026-05-09T17:00:00Z');
    expect(await askedOf({ ...hanging, from: '13:00', to: '15:00' })).toBe('adhesive_cures');
  });

  test('is refused by the database as well, when it is booked and when it is moved', async () => {
    const { id: commissionId } = await aCommission(studio.owner);
    const put = () =>
      sql(
        `insert into "Appointment" (id, kind, "commissionId", "leadId", "startsAt", "endsAt", address, "bookedById", "bookedAt")
         values (gen_random_uuid(), 'hanging', $1, $2, '2026-05-08T16:00Z', '2026-05-08T17:00Z', 'x', $2, now())`,
        [commissionId, maker],
      ).then(
        () => null,
        (error: unknown) => constraintOf(error),
      );
    expect(await put()).toBe('hanging_needs_a_known_wall');
    await lookAtWall(commissionId);
    expect(await put()).toBeNull();
  });
});

describe('before it is ready', () => {
  test('a day before the forecast’s is asked about; the word is kept with the name', async () => {
    const commission = await aCommission(studio.owner);
    await lookAtWall(commission.id);
    await aJob(studio.owner, { commissionId: commission.id, pieces: 1 });
    const { id: commissionId } = commission;
    expect(await askedOf({ commissionId })).toEqual(['before_ready']);
    const words = { before_ready: 'It stands ready in the kiln room.', closed: 'Nobody asked.' };
    const id = await bookedId({ commissionId, words });
    const told = await findAppointment(studio.owner.actor, id, zone);
    expect(told?.words).toEqual([
      {
        ...{ about: 'before_ready', why: 'It stands ready in the kiln room.', sequence: 0 },
        ...{ by: 'Ruth Callow', at: monday },
      },
    ]);
    const lines = await sql<{ facts: unknown }>(
      'select facts from "AuditLine" where "subjectId" = $1 order by id',
      [id],
    );
    expect(lines[0]?.facts).toEqual({ before_ready: 'It stands ready in the kiln room.' });
  });

  test('a visit is asked about nothing', async () => {
    const { id: commissionId } = await aCommission(studio.owner);
    expect(await askedOf({ commissionId, kind: 'site_visit' })).toBe('done');
  });
});

test('before the balance is in only the owner may say that it goes', async () => {
  const { id: commissionId } = await aCommission(studio.owner);
  await lookAtWall(commissionId);
  await agreed(studio, commissionId, 50_000n);
  const words = { before_ready: 'Made elsewhere.', balance_owed: 'Pays on the day.' };
  expect(await askedOf({ commissionId, words })).toEqual(['before_ready', 'balance_owed']);
  const unsaid = { commissionId, words: { before_ready: 'Made elsewhere.' } };
  expect(await askedOf(unsaid, studio.owner)).toEqual(['before_ready', 'balance_owed']);
  expect(await askedOf({ commissionId, words }, studio.owner)).toBe('done');
});

describe('who goes along', () => {
  test('is booked with the lead, and is elsewhere then', async () => {
    const others = [studio.owner.actor.id, studio.gallery.actor.id];
    const id = await bookedId({ crewIds: [...others, maker] });
    expect(await crewOf(id)).toEqual(['Ines Varga', 'Osip Lund', 'Ruth Callow']);
    const visit = { leadId: studio.gallery.actor.id, kind: 'site_visit', from: '11:00' } as const;
    expect(await askedOf(visit)).toBe('is_elsewhere');
    expect(await askedOf({ ...visit, leadId: studio.books.actor.id })).toBe('done');
    expect(await askedOf({ crewIds: [aKey()], day: '2026-05-11' })).toBe('crew_does_not_work_here');
  });

  test('changes with a move: who stays at home is free, who comes is booked', async () => {
    const [owner, gallery] = [studio.owner.actor.id, studio.gallery.actor.id];
    const id = await bookedId({ crewIds: [owner] });
    const blocked = await bookedId({ leadId: owner, from: '13:00', to: '14:00' });
    const answer = await moveAppointment(
      studio.gallery,
      moved(id, { from: '13:00', to: '15:00', leadId: gallery, crewIds: [maker] }),
    );
    expect(answer.ok).toBe(true);
    expect(await crewOf(id)).toEqual(['Osip Lund', 'Ruth Callow']);
    expect(await crewOf(blocked)).toEqual(['Ines Varga']);
    const told = await findAppointment(studio.owner.actor, id, zone);
    expect(told?.changes).toMatchObject([
      {
        ...{ sequence: 0, leadName: 'Osip Lund', names: ['Ines Varga', 'Osip Lund'], why: 'Rain' },
        ...{ startsAt: new Date('2026-05-08T16:00:00Z'), by: 'Ruth Callow' },
      },
    ]);
  });

  test('of two that take the same helper at once, one is booked', async () => {
    const crewIds = [studio.owner.actor.id];
    const booking = (leadId: string) =>
      bookAppointment(studio.gallery, aBooking({ leadId, crewIds }));
    const answers = await Promise.all([booking(maker), booking(studio.gallery.actor.id)]);
    const codes = answers.map((one) => (one.ok ? 'done' : one.refusal.code));
    expect(codes.toSorted()).toEqual(['done', 'is_elsewhere']);
  });
});

describe('a move', () => {
  test('asks everything anew, and keeps the word with the change it belongs to', async () => {
    const id = await bookedId();
    const sunday = moved(id, { day: '2026-05-10' });
    const refused = await moveAppointment(studio.gallery, sunday);
    expect(refused).toMatchObject({ ok: false, refusal: { code: 'asks' } });
    const words = { closed: 'They are away all week.' };
    const answer = await moveAppointment(studio.gallery, { ...sunday, requestKey: aKey(), words });
    expect(answer.ok).toBe(true);
    const told = await findAppointment(studio.owner.actor, id, zone);
    expect(told).toMatchObject({ sequence: 1, words: [{ about: 'closed', sequence: 1 }] });
  });

  test('to a time that the clocks skip is none', async () => {
    const id = await bookedId();
    const skipped = moved(id, { day: '2027-03-14', from: '02:30', to: '05:00' });
    expect(await moveAppointment(studio.gallery, skipped)).toMatchObject({
      refusal: { code: 'time_skipped', skippedFrom: '02:00', skippedUntil: '03:00' },
    });
  });
});

test('what is told of it later is kept, and the number of its changes rises', async () => {
  const id = await bookedId();
  const told = {
    ...{ requestKey: aKey(), appointmentId: id, seenSequence: 0, note: 'A dog' },
    ...{ meets: 'Marit, 555 0142', prepares: 'Wall dry', fallBack: 'The Monday after' },
  };
  expect((await tellMore(studio.maker, told)).ok).toBe(true);
  expect(await findAppointment(studio.owner.actor, id, zone)).toMatchObject({
    ...{ sequence: 1, meets: 'Marit, 555 0142', fallBack: 'The Monday after' },
    changes: [{ sequence: 0 }],
  });
  const late = { ...told, requestKey: aKey() };
  expect(await tellMore(studio.maker, late)).toMatchObject({
    refusal: { code: 'changed_meanwhile' },
  });
});

test('hours, absences, ways and closed days are asked about as they are kept', async () => {
  await bookedId({ from: '09:00', to: '10:00', address: '9 Ferry Steps' });
  const next = { from: '10:15', to: '12:00', travelMinutes: 20 };
  expect(await askedOf(next)).toEqual(['travel_short']);
  const way = { requestKey: aKey(), from: '4 Ropewalk Lane', to: '9 Ferry Steps', minutes: 15 };
  expect((await keepWay(studio.maker, way)).ok).toBe(true);
  expect(await askedOf(next)).toBe('done');

  const workDays = [{ weekday: 1, fromMinute: 600, toMinute: 900 }];
  const hours = { requestKey: aKey(), staffId: maker, workDays };
  expect((await keepHours(studio.owner, hours)).ok).toBe(true);
  expect(await askedOf({ day: '2026-05-11' })).toEqual(['outside_hours']);
  expect(await askedOf({ day: '2026-05-12', from: '10:00' })).toEqual(['outside_hours']);
  expect(await askedOf({ day: '2026-05-11', from: '10:00' })).toBe('done');

  const away = {
    requestKey: aKey(),
    staffId: maker,
    fromOn: '2026-05-18',
    toOn: '2026-05-20',
  } as const;
  expect((await addAbsence(studio.maker, { ...away, why: '' })).ok).toBe(true);
  expect(await askedOf({ day: '2026-05-18', from: '10:00' })).toEqual(['absent']);
  const still = { fromOn: new Date('2026-05-25'), toOn: new Date('2026-05-25') };
  await db().studioClosed.create({ data: still });
  expect(await askedOf({ day: '2026-05-25', from: '10:00' })).toEqual(['closed']);
});
