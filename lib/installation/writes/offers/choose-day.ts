import 'server-only';
import { isAtPage, staffIdOf, type AnyDoer, type Doer } from '@/lib/access/rules';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { carryOut, findOpen, tellHistory } from '@/lib/commissions/writes/carry-out';
import { dayOf } from '@/lib/dates/rules';
import type { ChooseDayInput } from '@/lib/installation/input/offers/days';
import { readOwed } from '@/lib/installation/reads/diary/asks';
import { loadStillFacts } from '@/lib/installation/reads/offers/still';
import type { Span } from '@/lib/installation/rules/diary/kinds';
import { decideChoice } from '@/lib/installation/rules/offers/days';
import type { OffersNo, OffersRefusal } from '@/lib/installation/rules/offers/refusals';
import { canStillBe } from '@/lib/installation/rules/offers/slots';
import { putInDiary } from '@/lib/installation/writes/diary/put';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { Gallery } from '@/lib/platform/settings';

/** The day that was chosen; instants as ISO text. */
export type DayChosen = { startsAt: string; endsAt: string; commissionNumber: number };

/**
 * Chooses one of the offered days, which is then booked in the diary with everyone who goes along.
 *
 * Of two who choose from the same days at once one has chosen and the other is told; a day whose
 * hours were given away meanwhile is refused, and the others stay. What the gallery decided when it
 * offered the days is kept with the appointment.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended early,
 *   handed over, then as {@link decideChoice}, then `balance_first` where the agreement asks for
 *   money before and nobody let it go, then `day_taken` where it can be no longer
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
  const { gallery, number } = found.value;
  const offer = await loadOffer(tx, commissionId, offerId);
  const decided = decideChoice(offer, position, { now: doer.at, zone: gallery.timeZone });
  if (!decided.ok || !offer) return decided.ok ? refuse({ code: 'unknown_offer' }) : decided;
  const booked = await bookIt(tx, { offer, span: decided.value, gallery, now: doer.at });
  if (!booked.ok) return booked;
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
  return ok({ startsAt, endsAt, commissionNumber: number });
}

async function loadOffer(tx: Tx, commissionId: string, id: string) {
  const row = await tx.dayOffer.findFirst({
    where: { id, commissionId },
    include: {
      ...{ slots: true, words: true },
      crew: { select: { staffId: true } },
      chosen: { select: { appointment: { select: { startsAt: true } } } },
    },
  });
  if (!row) return null;
  const { crew, chosen, ...offer } = row;
  const crewIds = crew.map(({ staffId }) => staffId);
  return { ...offer, crewIds, chosenAt: chosen?.appointment.startsAt ?? null };
}

type Offer = NonNullable<Awaited<ReturnType<typeof loadOffer>>>;
type ToBook = { offer: Offer; span: Span; gallery: Gallery; now: Date };

/** It is booked in the name of the one who offered it: a collector keeps no diary here. */
async function bookIt(tx: Tx, { offer, span, gallery, now }: ToBook) {
  const { beforeCents: owedCents } = await readOwed(tx, { wanted: offer, gallery, now });
  const isLetGo = offer.words.some(({ about }) => about === 'balance_owed');
  if (owedCents > 0n && !isLetGo) return refuse({ code: 'balance_first' as const, owedCents });
  const taken = { code: 'day_taken' as const, on: dayOf(span.startsAt, gallery.timeZone) };
  const still = await loadStillFacts(tx, { ...offer, slots: [span] }, gallery.timeZone);
  if (!canStillBe(still, span, now)) return refuse(taken);
  const { kind, commissionId, leadId, crewIds, address, travelMinutes, note, words } = offer;
  const booked = await putInDiary(tx, await offeredBy(tx, offer, now), {
    ...{ kind, commissionId, leadId, crewIds, address, travelMinutes, note },
    ...{ span, words: words.map(({ about, why }) => ({ about, why })) },
  });
  return booked.ok ? booked : refuse(taken);
}

async function offeredBy(tx: Tx, { offeredById: id }: Offer, at: Date): Promise<Doer> {
  const { name } = await tx.staff.findUniqueOrThrow({ where: { id }, select: { name: true } });
  return { actor: { id, name, roles: [] }, at };
}
