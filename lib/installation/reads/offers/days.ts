import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayOf, type Day } from '@/lib/dates/rules';
import { readOwed, type Owed } from '@/lib/installation/reads/diary/asks';
import { loadStillFacts } from '@/lib/installation/reads/offers/still';
import type { AppointmentKind, Span } from '@/lib/installation/rules/diary/kinds';
import type { Word } from '@/lib/installation/rules/diary/questions';
import { canStillBe } from '@/lib/installation/rules/offers/slots';
import { getGallery } from '@/lib/platform/settings';
import { db } from '@/lib/platform/db/client';

/** One of the days that are offered. */
export type SlotShown = Span & { position: number; on: Day; isFree: boolean };

/** Days that are offered, as they are told: who comes is told by what they come for. */
export type DaysShown = {
  offerId: string;
  kind: AppointmentKind;
  address: string;
  note: string;
  slots: SlotShown[];
  /** The day that was chosen, as it stands in the diary now. */
  chosen: (Span & { on: Day; chosenBy: string; isCalledOff: boolean }) | null;
};

/** Days that are offered, for those who work here. */
export type DaysOffered = DaysShown & {
  leadName: string;
  /** Who goes along besides the lead, by name. */
  otherNames: string[];
  travelMinutes: number;
  at: Date;
  isWithdrawn: boolean;
  words: Word[];
};

const offerSelect = {
  ...{ id: true, kind: true, address: true, note: true, at: true, withdrawnAt: true },
  ...{ commissionId: true, leadId: true, travelMinutes: true },
  lead: { select: { name: true } },
  crew: { select: { staffId: true, staff: { select: { name: true } } } },
  words: { select: { about: true, why: true } },
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
  return Promise.all(rows.map(async (row) => offeredOf(row, how)));
}

/** Days on a collector's page: what they come to in money, and whether that bars a choice. */
export type DaysForCollector = DaysShown & {
  owed: Owed;
  /** What the agreement asks for first, where nobody at the gallery let it go. */
  isBarred: boolean;
};

/** The days that stand open on the collector's page, and those that were chosen. */
export async function daysForCollector(
  commissionId: string,
  how: { zone: string; now: Date },
): Promise<DaysForCollector[]> {
  const rows = await loadOffers({
    commissionId,
    OR: [{ withdrawnAt: null }, { chosen: { isNot: null } }],
  });
  const gallery = await getGallery();
  return Promise.all(
    rows.map(async (row) => {
      const { offerId, kind, address, note, slots, chosen, words } = await offeredOf(row, how);
      const owed = await readOwed(db(), { wanted: row, gallery, now: how.now });
      const isLetGo = words.some(({ about }) => about === 'balance_owed');
      const isBarred = owed.beforeCents > 0n && !isLetGo;
      return { ...{ offerId, kind, address, note, slots, chosen }, owed, isBarred };
    }),
  );
}

async function loadOffers(where: Prisma.DayOfferWhereInput): Promise<OfferRow[]> {
  return db().dayOffer.findMany({
    where,
    select: offerSelect,
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
  });
}

async function offeredOf(row: OfferRow, how: { zone: string; now: Date }): Promise<DaysOffered> {
  const { id: offerId, kind, address, note, at, travelMinutes, words, lead, crew } = row;
  return {
    ...{ offerId, kind, address, note, at, travelMinutes, words },
    leadName: lead.name,
    otherNames: crew.map(({ staff }) => staff.name).toSorted(),
    isWithdrawn: row.withdrawnAt !== null,
    slots: await slotsOf(row, how),
    chosen: chosenOf(row, how.zone),
  };
}

/** The days, with whether each can still be for everyone who goes along. */
async function slotsOf(
  row: OfferRow,
  { zone, now }: { zone: string; now: Date },
): Promise<SlotShown[]> {
  const crewIds = row.crew.map(({ staffId }) => staffId);
  const still = row.chosen ? null : await loadStillFacts(db(), { ...row, crewIds }, zone);
  return row.slots.map(({ position, startsAt, endsAt }) => ({
    ...{ position, startsAt, endsAt },
    on: dayOf(startsAt, zone),
    isFree: still !== null && canStillBe(still, { startsAt, endsAt }, now),
  }));
}

function chosenOf({ chosen }: OfferRow, zone: string): DaysShown['chosen'] {
  if (!chosen) return null;
  const { startsAt, endsAt, calledOffAt } = chosen.appointment;
  return {
    ...{ startsAt, endsAt, chosenBy: chosen.chosenBy },
    on: dayOf(startsAt, zone),
    isCalledOff: calledOffAt !== null,
  };
}
