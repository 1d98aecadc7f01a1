import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { recordAudit, type Fact } from '@/lib/audit/writes';
import { everyone, loadBookingFacts } from '@/lib/installation/reads/diary/booking';
import { decideBooking, type BookingRefusal } from '@/lib/installation/rules/diary/booking';
import type { AppointmentKind, Span } from '@/lib/installation/rules/diary/kinds';
import type { Word } from '@/lib/installation/rules/diary/questions';
import { spanOf, type TimeRefusal, type Times } from '@/lib/installation/rules/diary/when';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';

/** An appointment as it stands after it was booked or changed; instants as ISO text. */
export type Booked = {
  id: string;
  kind: AppointmentKind;
  startsAt: string;
  endsAt: string;
};

/** What an appointment is besides its hours; what is left out is nothing. */
export type AppointmentWords = {
  kind: AppointmentKind;
  commissionId: string | null;
  leadId: string;
  crewIds?: readonly string[];
  address: string;
  travelMinutes?: number;
  note: string;
  meets?: string;
  prepares?: string;
  fallBack?: string;
};

/** An appointment with its hours as they were typed. */
export type AppointmentToAdd = AppointmentWords & Times;

/** An appointment with its instants, and what was decided by a person. */
export type AppointmentToPut = AppointmentWords & {
  span: Span;
  words?: readonly Word[];
};

/**
 * The step of booking: joins the caller's transaction, asks nobody for leave, and asks none of the
 * questions that a person decides.
 *
 * @returns refuses a time that the clocks skip, then as {@link decideBooking}
 */
export async function addAppointment(
  tx: Tx,
  doer: Doer,
  appointment: AppointmentToAdd,
): Promise<Result<Booked, TimeRefusal | BookingRefusal>> {
  const { day, from, to, ...words } = appointment;
  const span = spanOf({ day, from, to }, (await getGallery(tx)).timeZone);
  return span.ok ? putInDiary(tx, doer, { ...words, span: span.value }) : span;
}

/**
 * Writes an appointment with its instants, everyone who goes along, and what was decided; joins the
 * caller's transaction and asks nobody for leave.
 *
 * @returns refuses as {@link decideBooking}
 */
export async function putInDiary(
  tx: Tx,
  doer: Doer,
  appointment: AppointmentToPut,
): Promise<Result<Booked, BookingRefusal>> {
  const { span, words = [], crewIds = [], ...own } = appointment;
  const going = { leadId: own.leadId, crewIds };
  const facts = await loadBookingFacts(tx, { ...own, ...going, span, exceptId: null });
  const decided = decideBooking(facts, span, doer.at);
  if (!decided.ok) return decided;
  const row = await tx.appointment.create({
    data: { ...own, ...decided.value, bookedById: doer.actor.id, bookedAt: doer.at },
    select: { id: true },
  });
  await goAlong(tx, row.id, going, decided.value);
  await keepWords(tx, doer, { appointmentId: row.id, sequence: 0, words });
  const booked = bookedOf(row.id, own.kind, span);
  const { leadId, commissionId, address } = own;
  const told = { leadId, crewIds: everyone(going), commissionId, address };
  await recordDiary(tx, doer, 'booked an appointment', { ...booked, ...told });
  return ok(booked);
}

/** Puts everyone besides the lead beside an appointment; the lead's row is kept by the database. */
export async function goAlong(
  tx: Tx,
  appointmentId: string,
  going: { leadId: string; crewIds: readonly string[] },
  { startsAt, endsAt }: Span,
): Promise<void> {
  const others = everyone(going).filter((staffId) => staffId !== going.leadId);
  await tx.appointmentCrew.createMany({
    data: others.map((staffId) => ({ appointmentId, staffId, startsAt, endsAt })),
    skipDuplicates: true,
  });
}

/** Keeps what a person decided when a day was booked that is not as it should be. */
export async function keepWords(
  tx: Tx,
  doer: Doer,
  said: { appointmentId: string; sequence: number; words: readonly Word[] },
): Promise<void> {
  const { appointmentId, sequence, words } = said;
  if (words.length === 0) return;
  await tx.appointmentWord.createMany({
    data: words.map((word) => ({
      ...{ appointmentId, sequence, ...word },
      ...{ staffId: doer.actor.id, at: doer.at },
    })),
  });
  const facts = Object.fromEntries(words.map(({ about, why }) => [about, why]));
  await recordDiary(tx, doer, 'decided that the day stands all the same', {
    id: appointmentId,
    ...facts,
  });
}

/** An appointment as a command answers it. */
export function bookedOf(id: string, kind: AppointmentKind, span: Span): Booked {
  return { id, kind, startsAt: span.startsAt.toISOString(), endsAt: span.endsAt.toISOString() };
}

/** Writes one line about an appointment; joins the caller's transaction. */
export async function recordDiary(
  tx: Tx,
  doer: Doer,
  did: string,
  facts: { id: string } & Record<string, Fact>,
): Promise<void> {
  const { id, ...rest } = facts;
  await recordAudit(tx, doer, { did, subject: 'Appointment', subjectId: id, facts: rest });
}
