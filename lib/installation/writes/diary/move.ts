import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import type { MoveAppointmentInput } from '@/lib/installation/input/diary/book';
import {
  everyone,
  loadBookingFacts,
  loadToChange,
  type ToChange,
} from '@/lib/installation/reads/diary/booking';
import { readReadyOf } from '@/lib/installation/reads/diary/ready';
import { decideBooking } from '@/lib/installation/rules/diary/booking';
import { decideChange, type ChangeRefusal } from '@/lib/installation/rules/diary/change';
import type { ReadyBy, Word } from '@/lib/installation/rules/diary/questions';
import type { Span } from '@/lib/installation/rules/diary/kinds';
import { spanOf } from '@/lib/installation/rules/diary/when';
import { askFirst } from '@/lib/installation/writes/diary/ask';
import type { NotBooked } from '@/lib/installation/writes/diary/book';
import { changeAsSeen, keepAsItStood } from '@/lib/installation/writes/diary/change';
import {
  bookedOf,
  goAlong,
  keepWords,
  recordDiary,
  type Booked,
} from '@/lib/installation/writes/diary/put';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { ok, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';

type Move = Omit<MoveAppointmentInput, 'requestKey'>;

/**
 * Moves an appointment to another time or place, or gives it to other people. How it stood before
 * is kept, and everything that was asked is asked anew.
 *
 * @returns refuses, in this order: not allowed, then as {@link decideChange}, a time that the
 *   clocks skip, then as {@link decideBooking} but for an end or a hand-over meanwhile, then what is
 *   asked and was not answered
 */
export async function moveAppointment(
  doer: Doer,
  input: MoveAppointmentInput,
): Promise<Result<Booked, NotAllowed | ChangeRefusal | NotBooked | KeyRefusal>> {
  const allowed = allow(doer.actor, 'diary.book');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...move } = input;
  const todayOn = dayOf(doer.at, (await getGallery()).timeZone);
  const ready = await readReadyOf(move.appointmentId, todayOn);
  const command = { name: 'moveAppointment', staffId: doer.actor.id, input: move };
  return onceOnly({ ...command, key, at: doer.at }, (tx) => moveIt(tx, doer, { move, ready }));
}

async function moveIt(
  tx: Tx,
  doer: Doer,
  { move, ready }: { move: Move; ready: ReadyBy | null },
): Promise<Result<Booked, ChangeRefusal | NotBooked>> {
  const { appointmentId: id, leadId, crewIds } = move;
  const standing = await loadToChange(tx, id);
  const change = decideChange(standing, move.seenSequence, doer.at);
  if (!change.ok) return change;
  invariant(standing, 'Only an appointment that was found is moved.');

  const gallery = await getGallery(tx);
  const span = spanOf(move, gallery.timeZone);
  if (!span.ok) return span;
  const { kind, commissionId } = standing;
  const wanted = { kind, commissionId, leadId, crewIds, span: span.value, exceptId: id };
  const facts = await loadBookingFacts(tx, wanted);
  const may = decideBooking(goesOn(facts), span.value, doer.at);
  if (!may.ok) return may;
  const { words, address, travelMinutes } = move;
  const place = { address, travelMinutes };
  const said = await askFirst(tx, doer, { wanted, place, words, gallery, ready });
  if (!said.ok) return said;
  return putElsewhere(tx, doer, { move, standing, span: span.value, words: said.value });
}

/** What was booked before it ended or was handed over may still be moved. */
function goesOn(facts: Parameters<typeof decideBooking>[0]): Parameters<typeof decideBooking>[0] {
  const { commission } = facts;
  if (!commission || commission === 'not_found') return facts;
  return { ...facts, commission: { ...commission, hasEnded: false, isHandedOver: false } };
}

type Decided = { move: Move; standing: ToChange; span: Span; words: Word[] };

async function putElsewhere(
  tx: Tx,
  doer: Doer,
  { move, standing, span, words }: Decided,
): Promise<Result<Booked, ChangeRefusal>> {
  const { appointmentId: id, seenSequence, address, travelMinutes, whyMoved: why } = move;
  const going = everyone(move);
  const { startsAt, endsAt } = span;
  // Whoever stays at home goes first: their other hours must not stand in the way of the move.
  await tx.appointmentCrew.deleteMany({
    where: { appointmentId: id, staffId: { notIn: [...going, standing.leadId] } },
  });
  const changed = await changeAsSeen(
    tx,
    { id, seenSequence },
    { startsAt, endsAt, leadId: move.leadId, address, travelMinutes },
  );
  if (!changed.ok) return changed;
  await goAlong(tx, id, move, span);
  await keepAsItStood(tx, doer, { id, standing, why });
  await keepWords(tx, doer, { appointmentId: id, sequence: seenSequence + 1, words });
  const booked = bookedOf(id, standing.kind, span);
  await recordDiary(tx, doer, 'moved an appointment', {
    ...booked,
    ...{ leadId: move.leadId, crewIds: going, address, why },
    wasAt: standing.startsAt.toISOString(),
    wasLeadId: standing.leadId,
  });
  return ok(booked);
}
