import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { OfferDaysInput, WithdrawDaysInput } from '@/lib/installation/input/offers/days';
import { decideOffer } from '@/lib/installation/rules/offers/days';
import type { OffersNo, OffersRefusal } from '@/lib/installation/rules/offers/refusals';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import {
  carryOut,
  findForWriting,
  findOpen,
  tellHistory,
} from '@/lib/commissions/writes/carry-out';
import { dayOf } from '@/lib/dates/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** Days that were offered. */
export type DaysOffered = { offerId: string; commissionNumber: number };

/**
 * Offers days for the hanging or the delivery, from which the collector chooses one.
 *
 * Nothing is held in the diary until one is chosen.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended early,
 *   handed over, nobody who leads it, then as {@link decideOffer}
 */
export async function offerDays(
  doer: Doer,
  input: OfferDaysInput,
): Promise<Result<DaysOffered, OffersNo>> {
  const { requestKey, ...offer } = input;
  const command = {
    name: 'offerDays',
    permission: 'diary.book',
    key: requestKey,
    input: offer,
  } as const;
  return carryOut<DaysOffered, OffersRefusal>(doer, command, (tx) => addDayOffer(tx, doer, offer));
}

/** The step of {@link offerDays}: joins the caller's transaction, asks nobody for leave. */
export async function addDayOffer(
  tx: Tx,
  doer: Doer,
  offer: Omit<OfferDaysInput, 'requestKey'>,
): Promise<Result<DaysOffered, CommissionRefusal | OffersRefusal>> {
  const { commissionId, kind, leadId, address, note, minutes, days } = offer;
  const found = await findOpen(tx, doer, commissionId);
  if (!found.ok) return found;
  const lead = await tx.staff.findUnique({
    where: { id: leadId },
    select: { name: true, active: true },
  });
  if (!lead?.active) return refuse({ code: 'leads_nothing_here' });
  const zone = found.value.gallery.timeZone;
  const spans = decideOffer(days, { minutes, zone, now: doer.at });
  if (!spans.ok) return spans;
  const { id: offerId } = await tx.dayOffer.create({
    data: {
      ...{ commissionId, kind, leadId, address, note },
      offeredById: doer.actor.id,
      at: doer.at,
      slots: { create: spans.value.map((span, at) => ({ ...span, position: at + 1 })) },
    },
    select: { id: true },
  });
  const facts = { days: spans.value.map((span) => dayOf(span.startsAt, zone)), lead: lead.name };
  await tellHistory(tx, doer, { commissionId, did: `offered days for the ${kind}`, facts });
  return ok({ offerId, commissionNumber: found.value.number });
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
  const { requestKey, commissionId, offerId } = input;
  const command = {
    name: 'withdrawDays',
    permission: 'diary.book',
    key: requestKey,
    input: { commissionId, offerId },
  } as const;
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
