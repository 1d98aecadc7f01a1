import { ok, refuse, type Result } from '@/lib/platform/result';
import { comesAfterHandOver, overlap, type AppointmentKind, type Span } from './kinds';

export type { AppointmentKind };

/** An appointment that stands in the way of another. */
export type Elsewhere = Span & { id: string; kind: AppointmentKind; forWhat: string };

/** Somebody who goes along. */
export type Goer = { id: string; name: string; isActive: boolean };

/** Why nothing was booked or moved. */
export type BookingRefusal =
  | { code: 'no_such_commission' }
  | { code: 'commission_ended'; commissionNumber: number }
  | { code: 'handed_over_already'; commissionNumber: number }
  | { code: 'lead_does_not_work_here' }
  | { code: 'crew_does_not_work_here' }
  | { code: 'ends_before_it_starts' }
  | { code: 'in_the_past' }
  | { code: 'wall_not_known'; commissionNumber: number }
  | { code: 'adhesive_cures'; curesAt: Date }
  | { code: 'is_elsewhere'; name: string; other: Elsewhere };

/** What a hanging stands on: whether somebody knows the wall, and until when the adhesive cures. */
export type HangsOn = { isWallKnown: boolean; curesAt: Date | null };

/** What is known when somebody wants to book: null where nothing was found. */
export type BookingFacts = {
  kind: AppointmentKind;
  /** Null for an appointment that has no commission. */
  commission:
    (HangsOn & { number: number; hasEnded: boolean; isHandedOver: boolean }) | 'not_found' | null;
  lead: Goer | null;
  /** Everyone who goes along besides the lead; null for somebody who was not found. */
  others: readonly (Goer | null)[];
  /** What any of them has in those hours, other than the appointment itself; earliest first. */
  elsewhere: readonly (Elsewhere & { staffId: string })[];
};

/**
 * Decides whether an appointment can be booked.
 *
 * @returns refuses, in this order: no such commission, the commission has ended, it was handed
 *   over (but for an after-care visit), the lead does not work here, somebody else who goes along
 *   does not, it ends before it starts, it lies in the past, a hanging on a wall that nobody knows,
 *   a hanging before the adhesive has cured, somebody is elsewhere then
 */
export function decideBooking(
  facts: BookingFacts,
  span: Span,
  now: Date,
): Result<Span, BookingRefusal> {
  const refusal =
    refusalOfCommission(facts) ??
    refusalOfPeople(facts) ??
    refusalOfTime(span, now) ??
    refusalOfWall(facts, span) ??
    refusalOfDiary(facts, span);
  return refusal ? refuse(refusal) : ok({ startsAt: span.startsAt, endsAt: span.endsAt });
}

function refusalOfCommission({ kind, commission }: BookingFacts): BookingRefusal | null {
  if (commission === 'not_found') return { code: 'no_such_commission' };
  if (commission?.hasEnded) {
    return { code: 'commission_ended', commissionNumber: commission.number };
  }
  if (commission?.isHandedOver && !comesAfterHandOver(kind)) {
    return { code: 'handed_over_already', commissionNumber: commission.number };
  }
  return null;
}

function refusalOfPeople({ lead, others }: BookingFacts): BookingRefusal | null {
  if (!lead?.isActive) return { code: 'lead_does_not_work_here' };
  return others.every((one) => one?.isActive) ? null : { code: 'crew_does_not_work_here' };
}

function refusalOfTime(span: Span, now: Date): BookingRefusal | null {
  if (span.endsAt <= span.startsAt) return { code: 'ends_before_it_starts' };
  return span.startsAt <= now ? { code: 'in_the_past' } : null;
}

function refusalOfWall({ kind, commission }: BookingFacts, span: Span): BookingRefusal | null {
  if (kind !== 'hanging' || !commission || commission === 'not_found') return null;
  const { number, isWallKnown, curesAt } = commission;
  if (!isWallKnown) return { code: 'wall_not_known', commissionNumber: number };
  return curesAt && curesAt > span.startsAt ? { code: 'adhesive_cures', curesAt } : null;
}

function refusalOfDiary(facts: BookingFacts, span: Span): BookingRefusal | null {
  const other = facts.elsewhere.find((one) => overlap(one, span));
  if (!other) return null;
  const { staffId, ...where } = other;
  const name = [facts.lead, ...facts.others].find((one) => one?.id === staffId)?.name ?? '';
  return { code: 'is_elsewhere', name, other: where };
}
