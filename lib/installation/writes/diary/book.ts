import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import type { BookInput } from '@/lib/installation/input/diary/book';
import { loadBookingFacts } from '@/lib/installation/reads/diary/booking';
import { readReadyForKind } from '@/lib/installation/reads/diary/ready';
import { decideBooking, type BookingRefusal } from '@/lib/installation/rules/diary/booking';
import type { AskRefusal, ReadyBy } from '@/lib/installation/rules/diary/questions';
import { spanOf, type TimeRefusal } from '@/lib/installation/rules/diary/when';
import { askFirst } from '@/lib/installation/writes/diary/ask';
import { putInDiary, type Booked } from '@/lib/installation/writes/diary/put';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import type { Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';

/** Why a command did not book: what can hurt somebody, or what a person has to decide first. */
export type NotBooked = TimeRefusal | BookingRefusal | AskRefusal;

/**
 * Books an appointment with everyone who goes along.
 *
 * Of two people who book the same person at once, one books and the other is told with what. When
 * the piece is ready is told before the transaction: it is a forecast, and takes its time.
 *
 * @returns refuses, in this order: not allowed, a time that the clocks skip, then as
 *   {@link decideBooking}, then what is asked and was not answered
 */
export async function bookAppointment(
  doer: Doer,
  input: BookInput,
): Promise<Result<Booked, NotAllowed | NotBooked | KeyRefusal>> {
  const allowed = allow(doer.actor, 'diary.book');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...form } = input;
  const todayOn = dayOf(doer.at, (await getGallery()).timeZone);
  const ready = await readReadyForKind(form, todayOn);
  const command = { name: 'bookAppointment', staffId: doer.actor.id, input: form };
  return onceOnly({ ...command, key, at: doer.at }, (tx) => bookIt(tx, doer, { form, ready }));
}

async function bookIt(
  tx: Tx,
  doer: Doer,
  { form, ready }: { form: Omit<BookInput, 'requestKey'>; ready: ReadyBy | null },
): Promise<Result<Booked, NotBooked>> {
  const { day, from, to, words, ...appointment } = form;
  const gallery = await getGallery(tx);
  const span = spanOf({ day, from, to }, gallery.timeZone);
  if (!span.ok) return span;
  const wanted = { ...appointment, span: span.value, exceptId: null };
  const may = decideBooking(await loadBookingFacts(tx, wanted), span.value, doer.at);
  if (!may.ok) return may;
  const said = await askFirst(tx, doer, { wanted, place: appointment, words, gallery, ready });
  if (!said.ok) return said;
  return putInDiary(tx, doer, { ...appointment, span: span.value, words: said.value });
}
