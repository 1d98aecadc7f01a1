import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import type { CallOffInput, TellMoreInput } from '@/lib/installation/input/diary/book';
import { loadToChange, type ToChange } from '@/lib/installation/reads/diary/booking';
import { decideChange, type ChangeRefusal } from '@/lib/installation/rules/diary/change';
import { bookedOf, recordDiary, type Booked } from '@/lib/installation/writes/diary/put';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** What a change of an appointment answers. */
export type Changed = Result<Booked, NotAllowed | ChangeRefusal | KeyRefusal>;

/**
 * Calls an appointment off, and says why. It stays in the diary as called off, and its hours are
 * free again.
 *
 * @returns refuses, in this order: not allowed, then as {@link decideChange}
 */
export async function callOffAppointment(doer: Doer, input: CallOffInput): Promise<Changed> {
  const { why } = input;
  return changeOnce(doer, input, {
    name: 'callOffAppointment',
    did: 'called an appointment off',
    why,
    kept: '',
    data: { calledOffAt: doer.at, calledOffWhy: why },
  });
}

/**
 * Writes down who lets us in, what is made ready, what is done in a storm, and what else to know.
 *
 * @returns refuses, in this order: not allowed, then as {@link decideChange}
 */
export async function tellMore(doer: Doer, input: TellMoreInput): Promise<Changed> {
  const { note, meets, prepares, fallBack } = input;
  return changeOnce(doer, input, {
    name: 'tellMore',
    did: 'told more of an appointment',
    why: 'What is told of it was changed.',
    kept: 'What is told of it was changed.',
    data: { note, meets, prepares, fallBack },
  });
}

type Change = {
  name: string;
  did: string;
  why: string;
  /** What is kept of why beside how it stood. */
  kept: string;
  data: Prisma.AppointmentUncheckedUpdateManyInput;
};

type AsSent = { requestKey: string; appointmentId: string; seenSequence: number };

async function changeOnce(doer: Doer, input: AsSent, change: Change): Promise<Changed> {
  const allowed = allow(doer.actor, 'diary.book');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...rest } = input;
  const { name, did, why, kept, data } = change;
  const command = { key, name, staffId: doer.actor.id, input: rest, at: doer.at };
  return onceOnly(command, async (tx): Promise<Result<Booked, ChangeRefusal>> => {
    const { appointmentId: id, seenSequence } = rest;
    const standing = await loadToChange(tx, id);
    const decided = decideChange(standing, seenSequence, doer.at);
    if (!decided.ok) return decided;
    invariant(standing, 'Only an appointment that was found is changed.');
    const changed = await changeAsSeen(tx, { id, seenSequence }, data);
    if (!changed.ok) return changed;
    // Why it was called off stands at the appointment, from which it can be struck out.
    await keepAsItStood(tx, doer, { id, standing, why: kept });
    const booked = bookedOf(id, standing.kind, standing);
    await recordDiary(tx, doer, did, { ...booked, why });
    return ok(booked);
  });
}

/** Changes an appointment that still stands as it was seen; its number of changes goes up. */
export async function changeAsSeen(
  tx: Tx,
  seen: { id: string; seenSequence: number },
  data: Prisma.AppointmentUncheckedUpdateManyInput,
): Promise<Result<true, ChangeRefusal>> {
  const { count } = await tx.appointment.updateMany({
    where: { id: seen.id, sequence: seen.seenSequence, calledOffAt: null },
    data: { ...data, sequence: { increment: 1 } },
  });
  return count === 1 ? ok(true) : refuse({ code: 'changed_meanwhile' });
}

/** Keeps how an appointment stood before it was changed; joins the caller's transaction. */
export async function keepAsItStood(
  tx: Tx,
  doer: Doer,
  { id, standing, why }: { id: string; standing: ToChange; why: string },
): Promise<void> {
  const { sequence, startsAt, endsAt, leadId, crewIds } = standing;
  await tx.appointmentChange.create({
    data: {
      ...{ appointmentId: id, sequence, startsAt, endsAt, leadId, crewIds, why },
      ...{ staffId: doer.actor.id, at: doer.at },
    },
    select: { sequence: true },
  });
}
