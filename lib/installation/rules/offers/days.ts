import { dayOf, instantOf, type Day } from '@/lib/dates/rules';
import { overlap, type Span } from '@/lib/installation/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** The most days that are offered at once. */
export const daysMost = 6;

/** A day that is offered, as it was typed: its hour and how long it takes. */
export type DayTyped = { readonly day: Day; readonly from: string };

/** Why days were not offered. */
export type OfferRefusal =
  | { code: 'day_gone_by'; on: Day }
  | { code: 'past_midnight'; on: Day }
  | { code: 'same_hours_twice'; on: Day };

/**
 * The hours of the days that are offered, in time.
 *
 * Each lasts equally long; one that would go past midnight in the gallery's zone is two days in
 * the diary, and is not offered.
 *
 * @param minutes how long it takes, more than 0
 * @param now what begins at this instant or before has gone by
 * @returns refuses, for the first day of which it is true and in this order: gone by, past
 *   midnight; then hours that lie upon each other
 * @example 9:00 and 11:00 for two hours each do not touch: one ends as the other begins
 */
export function decideOffer(
  typed: readonly DayTyped[],
  how: { minutes: number; zone: string; now: Date },
): Result<Span[], OfferRefusal> {
  const spans: Span[] = [];
  for (const { day, from } of typed) {
    const startsAt = instantOf(day, from, how.zone);
    const endsAt = new Date(startsAt.getTime() + how.minutes * 60_000);
    if (startsAt <= how.now) return refuse({ code: 'day_gone_by', on: day });
    if (dayOf(endsAt, how.zone) !== day) return refuse({ code: 'past_midnight', on: day });
    spans.push({ startsAt, endsAt });
  }
  const inTime = spans.toSorted((one, other) => one.startsAt.getTime() - other.startsAt.getTime());
  const twice = inTime.find((span, at) => inTime.slice(at + 1).some((one) => overlap(one, span)));
  if (twice) return refuse({ code: 'same_hours_twice', on: dayOf(twice.startsAt, how.zone) });
  return ok(inTime);
}

/** An offer as somebody wants to choose from it. */
export type OfferStanding = {
  readonly withdrawnAt: Date | null;
  readonly chosenAt: Date | null;
  /** The spans by their position. */
  readonly slots: readonly (Span & { readonly position: number })[];
};

/** Why no day was chosen. */
export type ChooseRefusal =
  | { code: 'unknown_offer' }
  | { code: 'day_chosen_already'; on: Day }
  | { code: 'offer_withdrawn' }
  | { code: 'unknown_day' }
  | { code: 'day_taken'; on: Day };

/**
 * Decides whether one of the offered days may be chosen; whether the hours are still free is asked
 * of the diary.
 *
 * @param offer null where nothing of that name is offered for this commission; `chosenAt` is when
 *   the chosen day begins
 * @returns refuses, in this order: unknown, chosen before, withdrawn, not one of the days, a day
 *   that has begun
 */
export function decideChoice(
  offer: OfferStanding | null,
  position: number,
  { now, zone }: { now: Date; zone: string },
): Result<Span, ChooseRefusal> {
  if (!offer) return refuse({ code: 'unknown_offer' });
  if (offer.chosenAt)
    return refuse({ code: 'day_chosen_already', on: dayOf(offer.chosenAt, zone) });
  if (offer.withdrawnAt) return refuse({ code: 'offer_withdrawn' });
  const slot = offer.slots.find((each) => each.position === position);
  if (!slot) return refuse({ code: 'unknown_day' });
  if (slot.startsAt <= now) return refuse({ code: 'day_taken', on: dayOf(slot.startsAt, zone) });
  return ok({ startsAt: slot.startsAt, endsAt: slot.endsAt });
}

/**
 * The offered days on which the piece may not be ready; a caution, never a refusal.
 *
 * @param readyOn the day by which it is likely to be ready; null while nobody can say
 */
export function beforeItIsReady(spans: readonly Span[], readyOn: Day | null, zone: string): Day[] {
  if (!readyOn) return [];
  return spans.map((span) => dayOf(span.startsAt, zone)).filter((day) => day < readyOn);
}
