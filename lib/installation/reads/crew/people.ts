import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import { isAllowed, type Actor } from '@/lib/access/rules';
import { addDays, dateFromDay, dayFromDate, dayStartAt, type Day } from '@/lib/dates/rules';
import { diaryColumns, readInDiary, type InDiary } from '@/lib/installation/reads/diary/listed';
import type { AbsentSpan, WorkDay } from '@/lib/installation/rules/crew/hours';
import { wayKey, type Ways } from '@/lib/installation/rules/crew/ways';
import { db } from '@/lib/platform/db/client';

/** An absence as it is written down, and what is booked all the same on its days. */
export type AbsenceShown = AbsentSpan & { id: string; booked: InDiary[] };

/** Somebody who works here: when, and on which coming days they are away. */
export type CrewMember = {
  id: string;
  name: string;
  /** Empty where they work as the gallery is open. */
  workDays: WorkDay[];
  absences: AbsenceShown[];
  /** Whether whoever looks may write down that they are away. */
  mayKeep: boolean;
};

const memberColumns = {
  ...{ id: true, name: true },
  workDays: {
    select: { weekday: true, fromMinute: true, toMinute: true },
    orderBy: { weekday: 'asc' },
  },
} as const satisfies Prisma.StaffSelect;

/** Everyone who works here, by name. */
export async function listCrew(
  actor: Actor,
  { todayOn, zone }: { todayOn: Day; zone: string },
): Promise<CrewMember[]> {
  assertAllowed(actor, 'diary.see');
  const rows = await db().staff.findMany({
    where: { active: true },
    select: {
      ...memberColumns,
      absences: {
        where: { withdrawnAt: null, toOn: { gte: dateFromDay(todayOn) } },
        select: { id: true, fromOn: true, toOn: true, why: true },
        orderBy: [{ fromOn: 'asc' }, { id: 'asc' }],
        take: 40,
      },
    },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
    take: 100,
  });
  return Promise.all(
    rows.map(async ({ absences, ...member }) => ({
      ...member,
      absences: await Promise.all(absences.map((row) => readAbsence(row, member.id, zone))),
      mayKeep: member.id === actor.id || isAllowed(actor.roles, 'staff.keep'),
    })),
  );
}

/** One of those who work here; null when there is none of that id. */
export async function findCrewMember(
  actor: Actor,
  id: string,
  how: { todayOn: Day; zone: string },
): Promise<CrewMember | null> {
  return (await listCrew(actor, how)).find((member) => member.id === id) ?? null;
}

async function readAbsence(
  row: { id: string; fromOn: Date; toOn: Date; why: string },
  staffId: string,
  zone: string,
): Promise<AbsenceShown> {
  const [fromOn, toOn] = [dayFromDate(row.fromOn), dayFromDate(row.toOn)];
  const booked = await db().appointment.findMany({
    where: {
      crew: { some: { staffId, isOff: false } },
      startsAt: { gte: dayStartAt(fromOn, zone), lt: dayStartAt(addDays(toOn, 1), zone) },
    },
    select: diaryColumns,
    orderBy: { startsAt: 'asc' },
    take: 20,
  });
  return {
    ...{ id: row.id, why: row.why, fromOn, toOn },
    booked: booked.map((one) => readInDiary(one, zone)),
  };
}

/** A way that is kept, with who kept it. */
export type WayKept = { fromPlace: string; toPlace: string; minutes: number };

/** The ways that are kept, by place; at most two hundred. */
export async function listWays(actor: Actor): Promise<WayKept[]> {
  assertAllowed(actor, 'diary.see');
  return db().travelTime.findMany({
    select: { fromPlace: true, toPlace: true, minutes: true },
    orderBy: [{ fromPlace: 'asc' }, { toPlace: 'asc' }],
    take: 200,
  });
}

/** The ways that are kept, as they are looked up. */
export async function readWays(actor: Actor): Promise<Ways> {
  const ways = await listWays(actor);
  return new Map(
    ways.map(({ fromPlace, toPlace, minutes }) => [wayKey(fromPlace, toPlace), minutes]),
  );
}
