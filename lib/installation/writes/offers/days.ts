import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import {
  carryOut,
  findForWriting,
  findOpen,
  tellHistory,
  type FoundCommission,
} from '@/lib/commissions/writes/carry-out';
import { dayOf } from '@/lib/dates/rules';
import type { OfferDaysInput, WithdrawDaysInput } from '@/lib/installation/input/offers/days';
import { everyone, loadHangsOn } from '@/lib/installation/reads/diary/booking';
import { loadBusy } from '@/lib/installation/reads/diary/busy';
import { readReadyForKind } from '@/lib/installation/reads/diary/ready';
import { elsewhereThen } from '@/lib/installation/rules/crew/busy';
import type { Span } from '@/lib/installation/rules/diary/kinds';
import type { Word } from '@/lib/installation/rules/diary/questions';
import { decideOffer } from '@/lib/installation/rules/offers/days';
import type { OffersNo, OffersRefusal } from '@/lib/installation/rules/offers/refusals';
import { askOfDays } from '@/lib/installation/writes/offers/ask';
import type { Tx } from '@/lib/platform/db/transaction';
import { getGallery } from '@/lib/platform/settings';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** Days that were offered. */
export type DaysOffered = { offerId: string; commissionNumber: number };

/** Days to offer; what is left out is nothing. Whatever a person decided of them is said already. */
export type DaysToOffer = Pick<
  OfferDaysInput,
  'commissionId' | 'kind' | 'leadId' | 'address' | 'note' | 'minutes' | 'days'
> &
  Partial<Pick<OfferDaysInput, 'crewIds' | 'travelMinutes'>> & { decided?: readonly Word[] };

type Offered = Result<DaysOffered, CommissionRefusal | OffersRefusal>;

/**
 * Offers days from which the collector chooses one.
 *
 * Nothing is held in the diary until one is chosen. What is not as it should be on any of the days
 * is asked once, and the word is kept with the offer.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended early,
 *   handed over, somebody who does not work here, as {@link decideOffer}, a hanging on a wall that
 *   nobody knows or before the adhesive has cured, somebody who is elsewhere; then what is asked
 */
export async function offerDays(
  doer: Doer,
  input: OfferDaysInput,
): Promise<Result<DaysOffered, OffersNo>> {
  const { requestKey: key, ...offer } = input;
  const todayOn = dayOf(doer.at, (await getGallery()).timeZone);
  const ready = await readReadyForKind(offer, todayOn);
  const command = { name: 'offerDays', permission: 'diary.book', key, input: offer } as const;
  return carryOut<DaysOffered, OffersRefusal>(doer, command, async (tx) => {
    const whole = await readyOffer(tx, doer, offer);
    if (!whole.ok) return whole;
    const { spans, found } = whole.value;
    const asked = { offer, spans, gallery: found.gallery, ready };
    const said = await askOfDays(tx, doer, asked);
    return said.ok ? keepOffer(tx, doer, { ...whole.value, words: said.value }) : said;
  });
}

/**
 * The step of {@link offerDays}: joins the caller's transaction, asks nobody for leave, and asks
 * none of the questions that a person decides.
 */
export async function addDayOffer(tx: Tx, doer: Doer, offer: DaysToOffer): Promise<Offered> {
  const whole = await readyOffer(tx, doer, offer);
  if (!whole.ok) return whole;
  return keepOffer(tx, doer, { ...whole.value, words: offer.decided ?? [] });
}

type WholeOffer = { offer: DaysToOffer; found: FoundCommission; spans: Span[]; leadName: string };

async function readyOffer(
  tx: Tx,
  doer: Doer,
  offer: DaysToOffer,
): Promise<Result<WholeOffer, CommissionRefusal | OffersRefusal>> {
  const { commissionId, kind, leadId, minutes, days } = offer;
  const found = await findOpen(tx, doer, commissionId);
  if (!found.ok) return found;
  const people = await tx.staff.findMany({
    where: { id: { in: goingOf(offer) }, active: true },
    select: { id: true, name: true },
  });
  const lead = people.find(({ id }) => id === leadId);
  if (!lead) return refuse({ code: 'leads_nothing_here' });
  if (people.length < goingOf(offer).length) return refuse({ code: 'goes_nowhere' });
  const zone = found.value.gallery.timeZone;
  const spans = decideOffer(days, { minutes, zone, now: doer.at });
  if (!spans.ok) return spans;
  const whole = { offer, found: found.value, spans: spans.value, leadName: lead.name };
  const refusal =
    (kind === 'hanging' ? await refusalOfWall(tx, whole) : null) ??
    (await refusalOfDiary(tx, whole));
  return refusal ? refuse(refusal) : ok(whole);
}

async function refusalOfWall(tx: Tx, whole: WholeOffer): Promise<OffersRefusal | null> {
  const { offer, spans, found } = whole;
  const { isWallKnown, curesAt } = await loadHangsOn(tx, offer.commissionId);
  if (!isWallKnown) return { code: 'wall_unknown' };
  const early = spans.find(({ startsAt }) => curesAt !== null && startsAt < curesAt);
  return early ? { code: 'still_cures', on: dayOf(early.startsAt, found.gallery.timeZone) } : null;
}

async function refusalOfDiary(tx: Tx, whole: WholeOffer): Promise<OffersRefusal | null> {
  const { offer, spans, found } = whole;
  const [first, last] = [spans.at(0), spans.at(-1)];
  if (!first || !last) return null;
  const around = { fromAt: first.startsAt, untilAt: last.endsAt, exceptId: null };
  const crew = await loadBusy(tx, goingOf(offer), around);
  for (const span of spans) {
    const one = elsewhereThen(crew, span);
    const on = dayOf(span.startsAt, found.gallery.timeZone);
    if (one) return { code: 'not_free_then', name: one.name, on };
  }
  return null;
}

async function keepOffer(
  tx: Tx,
  doer: Doer,
  whole: WholeOffer & { words: readonly Word[] },
): Promise<Offered> {
  const { offer, found, spans, leadName, words } = whole;
  const { commissionId, kind, leadId, address, note, travelMinutes = 0 } = offer;
  const others = goingOf(offer).filter((id) => id !== leadId);
  const { id: offerId } = await tx.dayOffer.create({
    data: {
      ...{ commissionId, kind, leadId, address, note, travelMinutes },
      ...{ offeredById: doer.actor.id, at: doer.at },
      crew: { create: others.map((staffId) => ({ staffId })) },
      slots: { create: spans.map((span, at) => ({ ...span, position: at + 1 })) },
      words: { create: words.map(({ about, why }) => ({ about, why })) },
    },
    select: { id: true },
  });
  const days = spans.map((span) => dayOf(span.startsAt, found.gallery.timeZone));
  const decided = words.map(({ about, why }) => `${about}: ${why}`);
  const facts = { days, lead: leadName, ...(decided.length > 0 ? { decided } : {}) };
  await tellHistory(tx, doer, { commissionId, did: `offered days for the ${kind}`, facts });
  return ok({ offerId, commissionNumber: found.number });
}

/** Everyone who goes along, the lead first. */
function goingOf({ leadId, crewIds = [] }: DaysToOffer): string[] {
  return everyone({ leadId, crewIds });
}

/**
 * Takes the offered days back; what was chosen stays booked.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown commission,
 *   unknown days, chosen already, taken back before
 */
export async function withdrawDays(
  doer: Doer,
  input: WithdrawDaysInput,
): Promise<Result<DaysOffered, OffersNo>> {
  const { requestKey: key, commissionId, offerId } = input;
  const sent = { commissionId, offerId };
  const command = { name: 'withdrawDays', permission: 'diary.book', key, input: sent } as const;
  return carryOut<DaysOffered, OffersRefusal>(doer, command, async (tx) => {
    const found = await findForWriting(tx, doer, commissionId);
    if (!found.ok) return found;
    const offer = await tx.dayOffer.findFirst({
      where: { id: offerId, commissionId },
      select: {
        withdrawnAt: true,
        chosen: { select: { appointment: { select: { startsAt: true } } } },
      },
    });
    if (!offer) return refuse({ code: 'unknown_offer' });
    if (offer.chosen) {
      const on = dayOf(offer.chosen.appointment.startsAt, found.value.gallery.timeZone);
      return refuse({ code: 'day_chosen_already', on });
    }
    if (offer.withdrawnAt) return refuse({ code: 'offer_withdrawn' });
    await tx.dayOffer.update({
      where: { id: offerId },
      data: { withdrawnAt: doer.at },
      select: { id: true },
    });
    await tellHistory(tx, doer, { commissionId, did: 'took the offered days back', facts: {} });
    return ok({ offerId, commissionNumber: found.value.number });
  });
}
