import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit, type Fact } from '@/lib/audit/writes';
import type { BookInput, CallOffInput, MoveAppointmentInput } from '@/lib/installation/input';
import { loadBookingFacts, loadToChange } from '@/lib/installation/reads/diary/booking';
import {
  decideBooking,
  decideChange,
  spanOf,
  type AppointmentKind,
} from '@/lib/installation/rules';
import type { BookingRefusal, ChangeRefusal, Span } from '@/lib/installation/rules';
import { onceOnly, type Command, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';

/** An appointment as it stands after it was booked or changed; instants as ISO text. */
export type Booked = { id: string; kind: AppointmentKind; startsAt: string; endsAt: string };

/** What {@link addAppointment} needs besides what the form says. */
export type AppointmentToAdd = Omit<BookInput, 'requestKey'>;

/**
 * Books an appointment: hanging, delivery or site visit.
 *
 * Of two people who book the same lead at once, one books and the other is told with what.
 *
 * @returns refuses, in this order: not allowed, then as {@link decideBooking}
 */
export async function bookAppointment(
  doer: Doer,
  input: BookInput,
): Promise<Result<Booked, NotAllowed | BookingRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'diary.book');
  if (!allowed.ok) return allowed;
  const { requestKey, ...appointment } = input;
  const command = commandOf(doer, 'bookAppointment', requestKey, appointment);
  return onceOnly(command, (tx) => addAppointment(tx, doer, appointment));
}

/** The step of {@link bookAppointment}: joins the caller's transaction, asks nobody for leave. */
export async function addAppointment(
  tx: Tx,
  doer: Doer,
  appointment: AppointmentToAdd,
): Promise<Result<Booked, BookingRefusal>> {
  const { kind, commissionId, leadId, address, note, ...times } = appointment;
  const span = spanOf(times, (await getGallery(tx)).timeZone);
  const facts = await loadBookingFacts(tx, { commissionId, leadId, span, exceptId: null });
  const decided = decideBooking(facts, span, doer.at);
  if (!decided.ok) return decided;
  const row = await tx.appointment.create({
    data: {
      ...{ kind, commissionId, leadId, address, note },
      ...decided.value,
      bookedById: doer.actor.id,
      bookedAt: doer.at,
    },
    select: { id: true },
  });
  const booked = bookedOf(row.id, kind, span);
  await record(tx, doer, 'booked an appointment', { ...booked, leadId, commissionId, address });
  return ok(booked);
}

/**
 * Moves an appointment to another time, or gives it to somebody else to lead.
 *
 * @returns refuses, in this order: not allowed, then as {@link decideChange}, then as
 *   {@link decideBooking} but for the commission, which may have been handed over meanwhile
 */
export async function moveAppointment(
  doer: Doer,
  input: MoveAppointmentInput,
): Promise<Result<Booked, NotAllowed | ChangeRefusal | BookingRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'diary.book');
  if (!allowed.ok) return allowed;
  const { requestKey, ...move } = input;
  const command = commandOf(doer, 'moveAppointment', requestKey, move);
  return onceOnly(command, (tx) => putElsewhere(tx, doer, move));
}

async function putElsewhere(
  tx: Tx,
  doer: Doer,
  move: Omit<MoveAppointmentInput, 'requestKey'>,
): Promise<Result<Booked, ChangeRefusal | BookingRefusal>> {
  const { appointmentId: id, seenSequence, leadId, ...times } = move;
  const standing = await loadToChange(tx, id);
  const change = decideChange(standing, seenSequence, doer.at);
  if (!change.ok) return change;
  invariant(standing, 'Only an appointment that was found is moved.');

  const span = spanOf(times, (await getGallery(tx)).timeZone);
  const facts = await loadBookingFacts(tx, { commissionId: null, leadId, span, exceptId: id });
  const decided = decideBooking(facts, span, doer.at);
  if (!decided.ok) return decided;
  const data = { ...decided.value, leadId, sequence: { increment: 1 } };
  const changed = await changeAsSeen(tx, { id, seenSequence }, data);
  if (!changed.ok) return changed;
  const booked = bookedOf(id, standing.kind, span);
  await record(tx, doer, 'moved an appointment', {
    ...booked,
    leadId,
    wasAt: standing.startsAt.toISOString(),
    wasLeadId: standing.leadId,
  });
  return ok(booked);
}

/**
 * Calls an appointment off, and says why. It stays in the diary as called off, and its hours are
 * free again.
 *
 * @returns refuses, in this order: not allowed, then as {@link decideChange}
 */
export async function callOffAppointment(
  doer: Doer,
  input: CallOffInput,
): Promise<Result<Booked, NotAllowed | ChangeRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'diary.book');
  if (!allowed.ok) return allowed;
  const { requestKey, appointmentId: id, seenSequence, why } = input;
  const command = commandOf(doer, 'callOffAppointment', requestKey, { id, seenSequence, why });
  return onceOnly(command, async (tx): Promise<Result<Booked, ChangeRefusal>> => {
    const standing = await loadToChange(tx, id);
    const change = decideChange(standing, seenSequence, doer.at);
    if (!change.ok) return change;
    invariant(standing, 'Only an appointment that was found is called off.');
    const data = { calledOffAt: doer.at, calledOffWhy: why, sequence: { increment: 1 } };
    const changed = await changeAsSeen(tx, { id, seenSequence }, data);
    if (!changed.ok) return changed;
    const booked = bookedOf(id, standing.kind, standing);
    await record(tx, doer, 'called an appointment off', { ...booked, why });
    return ok(booked);
  });
}

async function changeAsSeen(
  tx: Tx,
  seen: { id: string; seenSequence: number },
  data: Prisma.AppointmentUncheckedUpdateManyInput,
): Promise<Result<true, ChangeRefusal>> {
  const { count } = await tx.appointment.updateMany({
    where: { id: seen.id, sequence: seen.seenSequence, calledOffAt: null },
    data,
  });
  return count === 1 ? ok(true) : refuse({ code: 'changed_meanwhile' });
}

function bookedOf(id: string, kind: AppointmentKind, span: Span): Booked {
  return { id, kind, startsAt: span.startsAt.toISOString(), endsAt: span.endsAt.toISOString() };
}

async function record(
  tx: Tx,
  doer: Doer,
  did: string,
  facts: Booked & Record<string, Fact>,
): Promise<void> {
  const { id, ...rest } = facts;
  await recordAudit(tx, doer, { did, subject: 'Appointment', subjectId: id, facts: rest });
}

function commandOf(doer: Doer, name: string, key: string, input: unknown): Command {
  return { key, name, staffId: doer.actor.id, input, at: doer.at };
}
