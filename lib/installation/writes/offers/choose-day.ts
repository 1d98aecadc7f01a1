import 'server-only';
import { isAtPage, staffIdOf, type AnyDoer } from '@/lib/access/rules';
import type { ChooseDayInput } from '@/lib/installation/input/offers/days';
import { decideChoice } from '@/lib/installation/rules/offers/days';
import type { OffersNo, OffersRefusal } from '@/lib/installation/rules/offers/refusals';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { carryOut, findOpen, tellHistory } from '@/lib/commissions/writes/carry-out';
import { dayOf } from '@/lib/dates/rules';
import { clockTime } from '@/lib/dates/rules/time-of-day';
import type { Span } from '@/lib/installation/rules';
import { addAppointment } from '@/lib/installation/writes';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** The day that was chosen; instants as ISO text. */
export type DayChosen = { startsAt: string; endsAt: string; commissionNumber: number };

/**
 * Chooses one of the offered days, which is then booked in the diary.
 *
 * Of two who choose from the same days at once one has chosen and the other is told; a day whose
 * hours were given away meanwhile is refused, and the others stay.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended early,
 *   handed over, then as {@link decideChoice}, then `day_taken` where whoever leads it is elsewhere
 */
export async function chooseDay(
  doer: AnyDoer,
  input: ChooseDayInput,
): Promise<Result<DayChosen, OffersNo>> {
  const { requestKey, ...choice } = input;
  const command = {
    name: 'chooseDay',
    permission: 'diary.book',
    key: requestKey,
    input: choice,
    onTheirPage: { commissionId: choice.commissionId },
  } as const;
  return carryOut<DayChosen, OffersRefusal>(doer, command, (tx) => addChosenDay(tx, doer, choice));
}

/** The step of {@link chooseDay}: joins the caller's transaction, asks nobody for leave. */
export async function addChosenDay(
  tx: Tx,
  doer: AnyDoer,
  choice: Omit<ChooseDayInput, 'requestKey'>,
): Promise<Result<DayChosen, CommissionRefusal | OffersRefusal>> {
  const { commissionId, offerId, position } = choice;
  const found = await findOpen(tx, doer, commissionId);
  if (!found.ok) return found;
  const zone = found.value.gallery.timeZone;
  const offer = await loadOffer(tx, commissionId, offerId);
  const decided = decideChoice(offer, position, { now: doer.at, zone });
  if (!decided.ok || !offer) return decided.ok ? refuse({ code: 'unknown_offer' }) : decided;
  const span = decided.value;
  const booked = await bookIt(tx, { offer, commissionId, span, zone, at: doer.at });
  if (!booked.ok) return refuse({ code: 'day_taken', on: dayOf(span.startsAt, zone) });
  await tx.dayOfferChosen.create({
    data: {
      ...{ offerId, position, appointmentId: booked.value.id, at: doer.at },
      chosenBy: isAtPage(doer) ? doer.page.name : doer.actor.name,
      linkId: isAtPage(doer) ? doer.page.linkId : null,
      recordedById: staffIdOf(doer),
    },
    select: { offerId: true },
  });
  const { startsAt, endsAt } = booked.value;
  const did = `chose the day of the ${offer.kind}`;
  await tellHistory(tx, doer, { commissionId, did, facts: { startsAt } });
  return ok({ startsAt, endsAt, commissionNumber: found.value.number });
}

async function loadOffer(tx: Tx, commissionId: string, id: string) {
  const row = await tx.dayOffer.findFirst({
    where: { id, commissionId },
    include: {
      slots: true,
      chosen: { select: { appointment: { select: { startsAt: true } } } },
    },
  });
  return row && { ...row, chosenAt: row.chosen?.appointment.startsAt ?? null };
}

type Offer = NonNullable<Awaited<ReturnType<typeof loadOffer>>>;
type ToBook = { offer: Offer; commissionId: string; span: Span; zone: string; at: Date };

/** It is booked in the name of the one who offered it: a collector keeps no diary here. */
async function bookIt(tx: Tx, { offer, commissionId, span, zone, at }: ToBook) {
  const { kind, leadId, address, note, offeredById: id } = offer;
  const { name } = await tx.staff.findUniqueOrThrow({ where: { id }, select: { name: true } });
  const doer = { actor: { id, name, roles: [] }, at };
  return addAppointment(tx, doer, {
    ...{ kind, commissionId, leadId, address, note },
    day: dayOf(span.startsAt, zone),
    from: clockTime(span.startsAt, zone),
    to: clockTime(span.endsAt, zone),
  });
}
