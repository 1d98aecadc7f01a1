import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay, dayFromDate } from '@/lib/dates/rules';
import type {
  AddAbsenceInput,
  KeepHoursInput,
  KeepWayInput,
  WithdrawAbsenceInput,
} from '@/lib/installation/input/crew/crew';
import type { CrewRefusal } from '@/lib/installation/rules/crew/refusals';
import { minuteWords } from '@/lib/installation/rules/crew/hours';
import { inOrder } from '@/lib/installation/rules/crew/ways';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** Whose hours or absence was kept. */
export type CrewKept = { staffId: string };
type Kept = Result<CrewKept, NotAllowed | CrewRefusal | KeyRefusal>;

/**
 * Keeps when somebody works by weekday; without any day they work as the gallery is open.
 *
 * @returns refuses, in this order: not allowed, nobody of that name
 */
export async function keepHours(doer: Doer, input: KeepHoursInput): Promise<Kept> {
  const allowed = allow(doer.actor, 'staff.keep');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...hours } = input;
  const command = { key, name: 'keepHours', staffId: doer.actor.id, input: hours, at: doer.at };
  return onceOnly(command, async (tx): Promise<Result<CrewKept, CrewRefusal>> => {
    const { staffId, workDays } = hours;
    if (!(await worksHere(tx, staffId))) return refuse({ code: 'nobody_of_that_name' });
    await tx.workDay.deleteMany({ where: { staffId } });
    await tx.workDay.createMany({ data: workDays.map((day) => ({ staffId, ...day })) });
    const told = workDays.map(
      ({ weekday, fromMinute, toMinute }) =>
        `${weekday}: ${minuteWords(fromMinute)} to ${minuteWords(toMinute)}`,
    );
    await record(tx, doer, { did: 'kept when they work', staffId, facts: { hours: told } });
    return ok({ staffId });
  });
}

/**
 * Writes down that somebody is away. Everyone keeps their own; the owner keeps everyone's. What is
 * booked on those days stays booked, and is told on the page.
 *
 * @returns refuses, in this order: not allowed, nobody of that name
 */
export async function addAbsence(doer: Doer, input: AddAbsenceInput): Promise<Kept> {
  const allowed = mayKeepFor(doer, input.staffId);
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...absence } = input;
  const command = { key, name: 'addAbsence', staffId: doer.actor.id, input: absence, at: doer.at };
  return onceOnly(command, async (tx): Promise<Result<CrewKept, CrewRefusal>> => {
    const { staffId, fromOn, toOn, why } = absence;
    if (!(await worksHere(tx, staffId))) return refuse({ code: 'nobody_of_that_name' });
    await tx.absence.create({
      data: {
        ...{ staffId, why, fromOn: dateFromDay(fromOn), toOn: dateFromDay(toOn) },
        ...{ madeById: doer.actor.id, at: doer.at },
      },
      select: { id: true },
    });
    await record(tx, doer, { did: 'is away', staffId, facts: { fromOn, toOn, why } });
    return ok({ staffId });
  });
}

/**
 * Takes an absence back.
 *
 * @returns refuses, in this order: no such absence, not allowed, taken back before
 */
export async function withdrawAbsence(doer: Doer, input: WithdrawAbsenceInput): Promise<Kept> {
  const { requestKey: key, absenceId } = input;
  const command = { key, name: 'withdrawAbsence', staffId: doer.actor.id, input: { absenceId } };
  return onceOnly<CrewKept, NotAllowed | CrewRefusal>({ ...command, at: doer.at }, async (tx) => {
    const absence = await tx.absence.findUnique({ where: { id: absenceId } });
    if (!absence) return refuse({ code: 'no_such_absence' });
    const { staffId, fromOn, toOn, withdrawnAt } = absence;
    const allowed = mayKeepFor(doer, staffId);
    if (!allowed.ok) return allowed;
    if (withdrawnAt) return refuse({ code: 'withdrawn_before' });
    await tx.absence.update({
      where: { id: absenceId },
      data: { withdrawnAt: doer.at },
      select: { id: true },
    });
    const facts = { fromOn: dayFromDate(fromOn), toOn: dayFromDate(toOn) };
    await record(tx, doer, { did: 'is not away after all', staffId, facts });
    return ok({ staffId });
  });
}

/**
 * Keeps how long the way between two places takes; a later word takes the place of the one before.
 *
 * @returns refuses, in this order: not allowed, the same place twice
 */
export async function keepWay(
  doer: Doer,
  input: KeepWayInput,
): Promise<Result<{ minutes: number }, NotAllowed | CrewRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'diary.book');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...way } = input;
  const command = { key, name: 'keepWay', staffId: doer.actor.id, input: way, at: doer.at };
  return onceOnly<{ minutes: number }, CrewRefusal>(command, async (tx) => {
    const { minutes } = way;
    const [fromPlace, toPlace] = inOrder(way.from, way.to);
    if (fromPlace === toPlace) return refuse({ code: 'same_place' });
    const told = { minutes, staffId: doer.actor.id, at: doer.at };
    await tx.travelTime.upsert({
      where: { fromPlace_toPlace: { fromPlace, toPlace } },
      create: { fromPlace, toPlace, ...told },
      update: told,
    });
    const facts = { fromPlace, toPlace, minutes };
    await record(tx, doer, { did: 'kept a way', staffId: doer.actor.id, facts });
    return ok({ minutes });
  });
}

function mayKeepFor(doer: Doer, staffId: string): Result<true, NotAllowed> {
  return allow(doer.actor, staffId === doer.actor.id ? 'diary.book' : 'staff.keep');
}

async function worksHere(tx: Tx, id: string): Promise<boolean> {
  const person = await tx.staff.findUnique({ where: { id }, select: { active: true } });
  return person?.active === true;
}

type CrewLine = {
  did: string;
  staffId: string;
  facts: Parameters<typeof recordAudit>[2]['facts'];
};

async function record(tx: Tx, doer: Doer, { did, staffId, facts }: CrewLine): Promise<void> {
  await recordAudit(tx, doer, { did, subject: 'Staff', subjectId: staffId, facts });
}
