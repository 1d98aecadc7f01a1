import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayOf, type Day } from '@/lib/dates/rules';
import type { Span } from '@/lib/installation/rules';
import { db } from '@/lib/platform/db/client';

/** One of the days that are offered. */
export type SlotShown = Span & { position: number; on: Day; isFree: boolean };

/** Days that are offered, as they are told: who comes is told by what they come for. */
export type DaysShown = {
  offerId: string;
  kind: 'hanging' | 'delivery';
  address: string;
  note: string;
  slots: SlotShown[];
  /** The day that was chosen, as it stands in the diary now. */
  chosen: (Span & { on: Day; chosenBy: string; isCalledOff: boolean }) | null;
};

/** Days that are offered, for those who work here. */
export type DaysOffered = DaysShown & { leadName: string; at: Date; isWithdrawn: boolean };

const offerSelect = {
  ...{ id: true, kind: true, address: true, note: true, at: true, withdrawnAt: true },
  leadId: true,
  lead: { select: { name: true } },
  slots: { orderBy: { position: 'asc' } },
  chosen: {
    select: {
      chosenBy: true,
      appointment: { select: { startsAt: true, endsAt: true, calledOffAt: true } },
    },
  },
} as const satisfies Prisma.DayOfferSelect;

type OfferRow = Prisma.DayOfferGetPayload<{ select: typeof offerSelect }>;

/** What was offered of a commission, newest first, with what became of it. */
export async function listDayOffers(
  actor: Actor,
  commissionId: string,
  how: { zone: string; now: Date },
): Promise<DaysOffered[]> {
  assertAllowed(actor, 'commissions.see');
  const rows = await loadOffers({ commissionId });
  return Promise.all(rows.map(async (row) => offeredOf(row, await takenOf(row), how)));
}

/** The days that stand open on the collector's page, and those that were chosen. */
export async function daysForCollector(
  commissionId: string,
  how: { zone: string; now: Date },
): Promise<DaysShown[]> {
  const rows = await loadOffers({
    commissionId,
    OR: [{ withdrawnAt: null }, { chosen: { isNot: null } }],
  });
  const offers = await Promise.all(
    rows.map(async (row) => offeredOf(row, await takenOf(row), how)),
  );
  return offers.map(({ leadName: _lead, at: _at, isWithdrawn: _withdrawn, ...shown }) => shown);
}

async function loadOffers(where: Prisma.DayOfferWhereInput): Promise<OfferRow[]> {
  return db().dayOffer.findMany({
    where,
    select: offerSelect,
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
  });
}

/** What whoever leads it has in the diary around those days. */
async function takenOf({ leadId, slots, chosen }: OfferRow): Promise<Span[]> {
  const [first, last] = [slots.at(0), slots.at(-1)];
  if (!first || !last || chosen) return [];
  return db().appointment.findMany({
    where: {
      ...{ leadId, calledOffAt: null },
      startsAt: { lt: last.endsAt },
      endsAt: { gt: first.startsAt },
    },
    select: { startsAt: true, endsAt: true },
  });
}

function offeredOf(
  row: OfferRow,
  taken: readonly Span[],
  { zone, now }: { zone: string; now: Date },
): DaysOffered {
  const { id: offerId, kind, address, note, at, withdrawnAt, lead, chosen } = row;
  return {
    ...{ offerId, address, note, at },
    kind: kind === 'delivery' ? 'delivery' : 'hanging',
    leadName: lead.name,
    isWithdrawn: withdrawnAt !== null,
    slots: row.slots.map(({ position, startsAt, endsAt }) => ({
      ...{ position, startsAt, endsAt },
      on: dayOf(startsAt, zone),
      isFree:
        startsAt > now && !taken.some((one) => one.startsAt < endsAt && startsAt < one.endsAt),
    })),
    chosen: chosen && {
      startsAt: chosen.appointment.startsAt,
      endsAt: chosen.appointment.endsAt,
      on: dayOf(chosen.appointment.startsAt, zone),
      chosenBy: chosen.chosenBy,
      isCalledOff: chosen.appointment.calledOffAt !== null,
    },
  };
}
