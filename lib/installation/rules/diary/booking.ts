import { instantOf, type Day } from '@/lib/dates/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** What an appointment is for. */
export type AppointmentKind = 'hanging' | 'delivery' | 'site_visit' | 'fetching' | 'after_care';

/** The kinds in the order in which a form offers them. */
export const appointmentKinds = [
  'hanging',
  'delivery',
  'site_visit',
  'fetching',
  'after_care',
] as const satisfies readonly AppointmentKind[];

/** A kind in words: `hanging`, `site visit`. */
export const kindWords: Readonly<Record<AppointmentKind, string>> = {
  hanging: 'hanging',
  delivery: 'delivery',
  site_visit: 'site visit',
  fetching: 'fetching',
  after_care: 'after-care visit',
};

/** A day and two times of day, as they were typed. */
export type Times = { day: Day; from: string; to: string };

/** From an instant until another, which is not in it. */
export type Span = { startsAt: Date; endsAt: Date };

/** An appointment that stands in the way of another. */
export type Elsewhere = Span & { id: string; kind: AppointmentKind; forWhat: string };

/** Why nothing was booked or moved. */
export type BookingRefusal =
  | { code: 'no_such_commission' }
  | { code: 'commission_ended'; commissionNumber: number }
  | { code: 'handed_over_already'; commissionNumber: number }
  | { code: 'lead_does_not_work_here' }
  | { code: 'ends_before_it_starts' }
  | { code: 'in_the_past' }
  | { code: 'lead_is_elsewhere'; leadName: string; other: Elsewhere };

/** Why an appointment was not changed. */
export type ChangeRefusal =
  | { code: 'no_such_appointment' }
  | { code: 'called_off_already' }
  | { code: 'over_already' }
  | { code: 'changed_meanwhile' };

/** What is known when somebody wants to book: null where nothing was found. */
export type BookingFacts = {
  /** Null for an appointment that has no commission. */
  commission: { number: number; hasEnded: boolean; isHandedOver: boolean } | 'not_found' | null;
  lead: { name: string; isActive: boolean } | null;
  /** What the lead has in those hours, other than the appointment itself; earliest first. */
  elsewhere: readonly Elsewhere[];
};

/**
 * The instants of a day and its times in the gallery's zone. Where the clocks skip a time it is
 * taken that much later; where they show it twice, the first.
 */
export function spanOf(times: Times, zone: string): Span {
  return {
    startsAt: instantOf(times.day, times.from, zone),
    endsAt: instantOf(times.day, times.to, zone),
  };
}

/**
 * Whether two spans share a moment; one that ends as the other starts does not.
 */
export function overlap(one: Span, other: Span): boolean {
  return one.startsAt < other.endsAt && other.startsAt < one.endsAt;
}

/**
 * Decides whether an appointment can be booked.
 *
 * @returns refuses, in this order: no such commission, the commission has ended, it was handed
 *   over, the lead does not work here, it ends before it starts, it lies in the past, the lead is
 *   elsewhere then
 */
export function decideBooking(
  facts: BookingFacts,
  span: Span,
  now: Date,
): Result<Span, BookingRefusal> {
  const { commission, lead } = facts;
  if (commission === 'not_found') return refuse({ code: 'no_such_commission' });
  if (commission?.hasEnded) {
    return refuse({ code: 'commission_ended', commissionNumber: commission.number });
  }
  if (commission?.isHandedOver) {
    return refuse({ code: 'handed_over_already', commissionNumber: commission.number });
  }
  if (!lead?.isActive) return refuse({ code: 'lead_does_not_work_here' });
  if (span.endsAt <= span.startsAt) return refuse({ code: 'ends_before_it_starts' });
  if (span.startsAt <= now) return refuse({ code: 'in_the_past' });
  const other = facts.elsewhere.find((one) => overlap(one, span));
  if (other) return refuse({ code: 'lead_is_elsewhere', leadName: lead.name, other });
  return ok(span);
}

/**
 * Decides whether an appointment may still be changed by somebody who saw it as `seenSequence`.
 *
 * @returns refuses, in this order: no such appointment, called off already, over already,
 *   changed since it was seen
 */
export function decideChange(
  appointment: { sequence: number; endsAt: Date; isCalledOff: boolean } | null,
  seenSequence: number,
  now: Date,
): Result<true, ChangeRefusal> {
  if (!appointment) return refuse({ code: 'no_such_appointment' });
  if (appointment.isCalledOff) return refuse({ code: 'called_off_already' });
  if (appointment.endsAt <= now) return refuse({ code: 'over_already' });
  if (appointment.sequence !== seenSequence) return refuse({ code: 'changed_meanwhile' });
  return ok(true);
}
