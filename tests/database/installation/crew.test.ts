import { beforeEach, expect, test } from 'vitest';
import type { Doer } from '@/lib/access/rules';
import type { Day } from '@/lib/dates/rules';
import { findCrewMember, listCrew, listWays } from '@/lib/installation/reads/crew/people';
import { bookAppointment } from '@/lib/installation/writes';
import {
  addAbsence,
  keepHours,
  keepWay,
  withdrawAbsence,
} from '@/lib/installation/writes/crew/crew';
import { db } from '@/lib/platform/db/client';
import { constraintOf } from '@/lib/platform/db/errors';
import { aKey, aStudio, type TestStudio } from '../studio/a-studio';
import { sql, startAfresh } from '../../helpers/database';
import { aBooking } from './a-booking';

const how = { todayOn: '2026-05-04' as Day, zone: 'America/Los_Angeles' };
let studio: TestStudio;

beforeEach(async () => {
  await startAfresh();
  studio = await aStudio();
});

function away(staffId: string, fromOn: Day = '2026-05-08') {
  return { requestKey: aKey(), staffId, fromOn, toOn: fromOn, why: 'The dentist' };
}

function code(result: { ok: true } | { ok: false; refusal: { code: string } }): string {
  return result.ok ? 'done' : result.refusal.code;
}

async function absenceOf(doer: Doer): Promise<string> {
  const found = await db().absence.findFirstOrThrow({ where: { staffId: doer.actor.id } });
  return found.id;
}

test('the owner keeps hours; they take the place of those before, and empty ones the gallery’s', async () => {
  const staffId = studio.maker.actor.id;
  const friday = { weekday: 5, fromMinute: 600, toMinute: 900 };
  const hours = (workDays: (typeof friday)[]) => ({ requestKey: aKey(), staffId, workDays });
  expect(code(await keepHours(studio.owner, hours([friday, { ...friday, weekday: 1 }])))).toBe(
    'done',
  );
  expect(code(await keepHours(studio.owner, hours([friday])))).toBe('done');
  const member = await findCrewMember(studio.gallery.actor, staffId, how);
  expect(member?.workDays).toEqual([friday]);
  expect(code(await keepHours(studio.owner, hours([])))).toBe('done');
  expect((await findCrewMember(studio.gallery.actor, staffId, how))?.workDays).toEqual([]);
  expect(code(await keepHours(studio.maker, hours([friday])))).toBe('not_allowed');
  const nobody = { ...hours([friday]), staffId: aKey() };
  expect(code(await keepHours(studio.owner, nobody))).toBe('nobody_of_that_name');
});

test('everyone keeps their own absences, and the owner everyone’s', async () => {
  const makerId = studio.maker.actor.id;
  expect(code(await addAbsence(studio.maker, away(makerId)))).toBe('done');
  expect(code(await addAbsence(studio.owner, away(makerId, '2026-05-11')))).toBe('done');
  expect(code(await addAbsence(studio.gallery, away(makerId)))).toBe('not_allowed');
  expect(code(await addAbsence(studio.books, away(studio.books.actor.id)))).toBe('not_allowed');
  expect(code(await addAbsence(studio.owner, away(aKey())))).toBe('nobody_of_that_name');
  const crew = await listCrew(studio.gallery.actor, how);
  const member = crew.find(({ id }) => id === makerId);
  expect(member?.absences.map(({ fromOn }) => fromOn)).toEqual(['2026-05-08', '2026-05-11']);
  expect(member?.mayKeep).toBe(false);
});

test('an absence is taken back once, by whoever may, and sent twice it is written once', async () => {
  const form = away(studio.maker.actor.id);
  expect(await addAbsence(studio.maker, form)).toEqual(await addAbsence(studio.maker, form));
  expect(await db().absence.count()).toBe(1);
  const absenceId = await absenceOf(studio.maker);
  const back = () => ({ requestKey: aKey(), absenceId });
  expect(code(await withdrawAbsence(studio.gallery, back()))).toBe('not_allowed');
  expect(code(await withdrawAbsence(studio.maker, back()))).toBe('done');
  expect(code(await withdrawAbsence(studio.owner, back()))).toBe('withdrawn_before');
  expect(code(await withdrawAbsence(studio.owner, { ...back(), absenceId: aKey() }))).toBe(
    'no_such_absence',
  );
  const member = await findCrewMember(studio.owner.actor, studio.maker.actor.id, how);
  expect(member?.absences).toEqual([]);
});

test('what is booked on the days of an absence is told beside it', async () => {
  const leadId = studio.maker.actor.id;
  expect(code(await bookAppointment(studio.gallery, aBooking({ leadId })))).toBe('done');
  expect(code(await addAbsence(studio.maker, away(leadId)))).toBe('done');
  const member = await findCrewMember(studio.owner.actor, leadId, how);
  expect(member?.absences[0]?.booked.map(({ address }) => address)).toEqual(['4 Ropewalk Lane']);
});

test('a way is kept once for both directions, and a later word takes its place', async () => {
  const way = (from: string, to: string, minutes: number) => ({
    requestKey: aKey(),
    from,
    to,
    minutes,
  });
  expect(code(await keepWay(studio.gallery, way('9 Ferry Steps', '4 Ropewalk Lane', 20)))).toBe(
    'done',
  );
  expect(code(await keepWay(studio.maker, way('4 ropewalk lane.', '9 Ferry  Steps', 12)))).toBe(
    'done',
  );
  expect(code(await keepWay(studio.maker, way('9 Ferry Steps', '9 ferry steps.', 1)))).toBe(
    'same_place',
  );
  expect(code(await keepWay(studio.books, way('aaa', 'bbb', 1)))).toBe('not_allowed');
  expect(await listWays(studio.owner.actor)).toEqual([
    { fromPlace: '4 ropewalk lane', toPlace: '9 ferry steps', minutes: 12 },
  ]);
  const beyond = way('\u{1F3E0} house by the weir', '\uFF21 house', 5);
  expect(code(await keepWay(studio.maker, beyond))).toBe('done');
});

test('the database itself refuses hours that end before they begin, and ways out of order', async () => {
  const fault = (statement: string, values: unknown[]) =>
    sql(statement, values).then(
      () => null,
      (error: unknown) => constraintOf(error),
    );
  const hours = 'insert into "WorkDay" values ($1, 1, 600, 600)';
  expect(await fault(hours, [studio.maker.actor.id])).not.toBeNull();
  const way = `insert into "TravelTime" values ('b', 'a', 5, $1, now())`;
  expect(await fault(way, [studio.maker.actor.id])).not.toBeNull();
});
