import { beforeEach, expect, test } from 'vitest';
import {
  findAppointment,
  listAppointmentsOf,
  listBookable,
  listDiary,
  listLeads,
  listNext,
} from '@/lib/installation/reads';
import type { BookInput } from '@/lib/installation/input';
import { bookAppointment, callOffAppointment, moveAppointment } from '@/lib/installation/writes';
import { db } from '@/lib/platform/db/client';
import { constraintOf } from '@/lib/platform/db/errors';
import { aCommission, aKey, aPerson, aStudio, later, monday } from '../studio/a-studio';
import type { TestStudio } from '../studio/a-studio';
import { sql, startAfresh } from '../../helpers/database';
import { lookAtWall } from '../../helpers/look-at-wall';

const zone = 'America/Los_Angeles';
let studio: TestStudio;

beforeEach(async () => {
  await startAfresh();
  studio = await aStudio();
});

function hanging(change: Partial<BookInput> = {}): BookInput {
  return {
    requestKey: aKey(),
    kind: 'hanging',
    commissionId: null,
    day: '2026-05-08',
    from: '09:00',
    to: '12:00',
    leadId: studio.owner.actor.id,
    crewIds: [],
    address: '4 Ropewalk Lane',
    ...{ travelMinutes: 0, note: '', meets: '', prepares: '', fallBack: '', words: {} },
    ...change,
  };
}

async function booked(change: Partial<BookInput> = {}) {
  const answer = await bookAppointment(studio.gallery, hanging(change));
  if (!answer.ok) throw new Error(`Refused: ${answer.refusal.code}`);
  return answer.value;
}

function moveTo(
  id: string,
  change: { seenSequence?: number; from?: string; leadId?: string } = {},
) {
  const { seenSequence = 0, from = '13:00', leadId = studio.owner.actor.id } = change;
  return {
    ...{ requestKey: aKey(), appointmentId: id, seenSequence, day: '2026-05-08' as const },
    ...{ from, to: '15:00', leadId, crewIds: [], address: '4 Ropewalk Lane', travelMinutes: 0 },
    ...{ whyMoved: '', words: {} },
  };
}

/** It is in no studio yet, so that somebody has to say why a day is booked all the same. */
const words = { before_ready: 'It was made elsewhere.' };

test('a hanging is booked for a commission, in the gallery’s own time', async () => {
  const commission = await aCommission(studio.owner);
  await lookAtWall(commission.id);
  const { id } = await booked({ commissionId: commission.id, note: 'Second floor', words });
  expect(await findAppointment(studio.maker.actor, id, zone)).toMatchObject({
    kind: 'hanging',
    startsAt: new Date('2026-05-08T16:00:00Z'),
    endsAt: new Date('2026-05-08T19:00:00Z'),
    startsOn: '2026-05-08',
    leadName: 'Ines Varga',
    bookedBy: 'Ruth Callow',
    commission: { number: commission.number, collector: 'Marit Oland' },
    note: 'Second floor',
    sequence: 0,
  });
  expect(await listAppointmentsOf(studio.books.actor, commission.id, zone)).toHaveLength(1);
  const lines = await db().auditLine.findMany();
  expect(lines.map((line) => [line.did, line.subjectId])).toEqual([
    ['decided that the day stands all the same', id],
    ['booked an appointment', id],
  ]);
});

test('who is elsewhere is told with what, and a neighbouring hour is free', async () => {
  const commission = await aCommission(studio.owner);
  await lookAtWall(commission.id);
  await booked({ commissionId: commission.id, words });
  const clash = await bookAppointment(studio.gallery, hanging({ from: '11:59', to: '13:00' }));
  expect(clash).toMatchObject({
    ok: false,
    refusal: {
      code: 'is_elsewhere',
      name: 'Ines Varga',
      other: { kind: 'hanging', forWhat: 'of Herons at low water' },
    },
  });
  expect((await bookAppointment(studio.gallery, hanging({ from: '12:00', to: '13:00' }))).ok).toBe(
    true,
  );
  const other = hanging({ leadId: studio.maker.actor.id });
  expect((await bookAppointment(studio.gallery, other)).ok).toBe(true);
});

test('of two who book the same lead at once, one books and the other is told with what', async () => {
  for (const day of ['2026-05-11', '2026-05-12', '2026-05-13'] as const) {
    const answers = await Promise.all([
      bookAppointment(studio.gallery, hanging({ day, address: '4 Ropewalk Lane' })),
      bookAppointment(studio.maker, hanging({ day, address: '9 Ferry Steps', from: '10:00' })),
      bookAppointment(studio.owner, hanging({ day, address: '2 Alder Rise', from: '11:00' })),
    ]);
    expect(answers.filter((one) => one.ok)).toHaveLength(1);
    const refusals = answers.flatMap((one) => (one.ok ? [] : [one.refusal]));
    expect(refusals.map((refusal) => refusal.code)).toEqual(['is_elsewhere', 'is_elsewhere']);
    const kept = await listDiary(studio.owner.actor, dayOfTest(day), zone);
    expect(kept).toHaveLength(1);
    expect(refusals).toContainEqual(
      expect.objectContaining({
        other: expect.objectContaining({ forWhat: `at ${kept[0]?.address ?? ''}` }) as unknown,
      }),
    );
  }
});

function dayOfTest(day: string) {
  return { fromAt: new Date(`${day}T07:00:00Z`), untilAt: new Date(`${day}T23:59:00Z`) };
}

test('the same booking sent twice is booked once; another one under its key is refused', async () => {
  const form = hanging();
  const [one, other] = await Promise.all([
    bookAppointment(studio.gallery, form),
    bookAppointment(studio.gallery, form),
  ]);
  expect(one.ok).toBe(true);
  expect(other).toEqual(one);
  expect(await db().appointment.count()).toBe(1);
  expect(await bookAppointment(studio.gallery, { ...form, to: '13:00' })).toEqual({
    ok: false,
    refusal: { code: 'key_used_for_something_else' },
  });
});

test('a refused booking leaves nothing behind', async () => {
  const refused = await bookAppointment(studio.gallery, hanging({ to: '08:00' }));
  expect(refused).toEqual({ ok: false, refusal: { code: 'ends_before_it_starts' } });
  const counts = [db().appointment.count(), db().auditLine.count(), db().commandKey.count()];
  expect(await Promise.all(counts)).toEqual([0, 0, 0]);
});

test('nothing is booked in the past, for an ended commission or for somebody who left', async () => {
  const code = async (input: BookInput) => {
    const answer = await bookAppointment(studio.gallery, input);
    return answer.ok ? 'booked' : answer.refusal.code;
  };
  const commission = await aCommission(studio.owner);
  const gone = await aPerson('maker', 'Tove Ash');
  await db().staff.update({ where: { id: gone.actor.id }, data: { active: false } });
  expect(await code(hanging({ day: '2026-05-04', from: '09:59' }))).toBe('in_the_past');
  expect(await code(hanging({ leadId: gone.actor.id }))).toBe('lead_does_not_work_here');
  expect(await code(hanging({ leadId: aKey() }))).toBe('lead_does_not_work_here');
  expect(await code(hanging({ commissionId: aKey() }))).toBe('no_such_commission');
  const staffId = studio.owner.actor.id;
  await db().commissionEnding.create({
    data: { commissionId: commission.id, why: 'Moved away', endedOn: monday, staffId, at: monday },
  });
  expect(await code(hanging({ commissionId: commission.id }))).toBe('commission_ended');
  expect(await listBookable(studio.gallery.actor)).toEqual([]);
  const leads = await listLeads(studio.gallery.actor);
  expect(leads.map((lead) => lead.name)).not.toContain('Tove Ash');
});

test('a moved appointment keeps its place in the diary, and its number of changes rises', async () => {
  const { id } = await booked();
  const moved = await moveAppointment(studio.gallery, moveTo(id));
  expect(moved).toMatchObject({ ok: true, value: { startsAt: '2026-05-08T20:00:00.000Z' } });
  expect(await findAppointment(studio.owner.actor, id, zone)).toMatchObject({ sequence: 1 });
  expect((await bookAppointment(studio.gallery, hanging())).ok).toBe(true);
  const back = await moveAppointment(
    studio.gallery,
    moveTo(id, { seenSequence: 1, from: '11:00' }),
  );
  expect(back).toMatchObject({ ok: false, refusal: { code: 'is_elsewhere' } });
  const overItself = moveTo(id, { seenSequence: 1, from: '14:00' });
  expect((await moveAppointment(studio.gallery, overItself)).ok).toBe(true);
});

test('of two who move the same appointment, the second is told that it changed', async () => {
  const { id } = await booked();
  const answers = await Promise.all([
    moveAppointment(studio.gallery, moveTo(id, { from: '13:00' })),
    moveAppointment(studio.maker, moveTo(id, { from: '14:00' })),
  ]);
  expect(answers.filter((one) => one.ok)).toHaveLength(1);
  expect(answers.flatMap((one) => (one.ok ? [] : [one.refusal]))).toEqual([
    { code: 'changed_meanwhile' },
  ]);
});

test('a called-off appointment says why, frees its hours and stays in the diary', async () => {
  const { id } = await booked();
  const call = { requestKey: aKey(), appointmentId: id, seenSequence: 0, why: 'Rain all week' };
  expect((await callOffAppointment(studio.gallery, call)).ok).toBe(true);
  expect((await callOffAppointment(studio.gallery, call)).ok).toBe(true);
  expect(await callOffAppointment(studio.owner, { ...call, requestKey: aKey() })).toEqual({
    ok: false,
    refusal: { code: 'called_off_already' },
  });
  expect((await bookAppointment(studio.gallery, hanging())).ok).toBe(true);
  const next = await listNext(studio.owner.actor, monday, { zone, most: 10 });
  expect(next).toHaveLength(1);
  const all = await listDiary(studio.owner.actor, dayOfTest('2026-05-08'), zone);
  expect(all.map((one) => one.calledOffWhy)).toContain('Rain all week');
});

test('what is over stays as it was', async () => {
  const { id } = await booked();
  const after = later(studio.gallery, '2026-05-09T17:00:00Z');
  expect(await moveAppointment(after, moveTo(id))).toEqual({
    ok: false,
    refusal: { code: 'over_already' },
  });
});

test('who keeps the books neither books nor looks', async () => {
  const refused = { ok: false, refusal: { code: 'not_allowed', permission: 'diary.book' } };
  expect(await bookAppointment(studio.books, hanging())).toEqual(refused);
  expect(await moveAppointment(studio.books, moveTo(aKey()))).toEqual(refused);
  await expect(listDiary(studio.books.actor, dayOfTest('2026-05-08'), zone)).rejects.toThrow();
});

test('the database itself keeps a lead in one place, and ends after starts', async () => {
  await booked();
  const put = (startsAt: string, endsAt: string) =>
    sql(
      `insert into "Appointment"
         (id, kind, "leadId", "startsAt", "endsAt", address, "bookedById", "bookedAt")
       values (gen_random_uuid(), 'delivery', $1, $2, $3, 'x', $1, now())`,
      [studio.owner.actor.id, startsAt, endsAt],
    ).then(
      () => null,
      (error: unknown) => constraintOf(error),
    );
  expect(await put('2026-05-08T18:59:59Z', '2026-05-08T21:00:00Z')).toBe('lead_is_in_one_place');
  expect(await put('2026-05-09T18:00:00Z', '2026-05-09T18:00:00Z')).toBe(
    'appointment_ends_after_it_starts',
  );
  expect(await put('2026-05-08T19:00:00Z', '2026-05-08T21:00:00Z')).toBeNull();
});
