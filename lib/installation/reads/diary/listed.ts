import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayOf, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import type { AppointmentKind, Span } from '@/lib/installation/rules';

/** The most appointments that one page of the diary shows. */
export const appointmentsMax = 300;

/** An appointment as the diary shows it. */
export type InDiary = Span & {
  id: string;
  kind: AppointmentKind;
  /** The day it starts, in the gallery's zone. */
  startsOn: Day;
  leadId: string;
  leadName: string;
  /** Who goes along besides the lead, by name. */
  others: { id: string; name: string }[];
  address: string;
  travelMinutes: number;
  note: string;
  commission: { id: string; number: number; title: string; collector: string } | null;
  sequence: number;
  calledOffWhy: string | null;
};

/** The columns of an appointment in the diary. */
export const diaryColumns = {
  ...{ id: true, kind: true, startsAt: true, endsAt: true, leadId: true, address: true },
  ...{ travelMinutes: true, note: true, sequence: true, calledOffWhy: true },
  crew: { select: { staff: { select: { id: true, name: true } } }, orderBy: { staffId: 'asc' } },
  lead: { select: { name: true } },
  commission: {
    select: {
      id: true,
      number: true,
      title: true,
      collector: { select: { name: true, phone: true } },
    },
  },
} as const satisfies Prisma.AppointmentSelect;

const inOrder = [
  { startsAt: 'asc' },
  { id: 'asc' },
] as const satisfies Prisma.AppointmentOrderByWithRelationInput[];

/** A row of the diary, in the gallery's zone. */
export function readInDiary(
  row: Prisma.AppointmentGetPayload<{ select: typeof diaryColumns }>,
  zone: string,
): InDiary {
  const { lead, commission, crew, ...appointment } = row;
  const others = crew.map(({ staff }) => staff).filter(({ id }) => id !== row.leadId);
  return {
    ...appointment,
    others: others.toSorted((one, other) => one.name.localeCompare(other.name)),
    startsOn: dayOf(row.startsAt, zone),
    leadName: lead.name,
    commission: commission && { ...commission, collector: commission.collector.name },
  };
}

/**
 * The appointments that start in a stretch of time, called-off ones included; earliest first.
 *
 * @param stretch half open: from an instant until another
 */
export async function listDiary(
  actor: Actor,
  stretch: { fromAt: Date; untilAt: Date },
  zone: string,
): Promise<InDiary[]> {
  assertAllowed(actor, 'diary.see');
  const rows = await db().appointment.findMany({
    where: { startsAt: { gte: stretch.fromAt, lt: stretch.untilAt } },
    select: diaryColumns,
    orderBy: [...inOrder],
    take: appointmentsMax,
  });
  return rows.map((row) => readInDiary(row, zone));
}

/** The next appointments that still stand and are not over; earliest first. */
export async function listNext(
  actor: Actor,
  now: Date,
  { zone, most }: { zone: string; most: number },
): Promise<InDiary[]> {
  assertAllowed(actor, 'diary.see');
  const rows = await db().appointment.findMany({
    where: { endsAt: { gt: now }, calledOffAt: null },
    select: diaryColumns,
    orderBy: [...inOrder],
    take: most,
  });
  return rows.map((row) => readInDiary(row, zone));
}

/** The appointments of a commission, earliest first, called-off ones included. */
export async function listAppointmentsOf(
  actor: Actor,
  commissionId: string,
  zone: string,
): Promise<InDiary[]> {
  assertAllowed(actor, 'commissions.see');
  const rows = await db().appointment.findMany({
    where: { commissionId },
    select: diaryColumns,
    orderBy: [...inOrder],
    take: 50,
  });
  return rows.map((row) => readInDiary(row, zone));
}

/** Who can lead an appointment: everyone who works here, by name. */
export async function listLeads(actor: Actor): Promise<{ id: string; name: string }[]> {
  assertAllowed(actor, 'diary.book');
  return db().staff.findMany({
    where: { active: true },
    select: { id: true, name: true },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
    take: 100,
  });
}

/** A commission that something can be booked for. */
export type Bookable = {
  id: string;
  number: number;
  title: string;
  collector: string;
  /** Where it will hang, as far as it is known; empty when it is not. */
  address: string;
  isHandedOver: boolean;
};

/** The commissions that are neither ended nor handed over, the newest first; at most 300. */
export async function listBookable(actor: Actor): Promise<Bookable[]> {
  assertAllowed(actor, 'diary.book');
  return readBookable({ ending: null, handOver: null });
}

/** A commission by its number, for which something can be booked, after its hand-over too. */
export async function findBookable(actor: Actor, number: number): Promise<Bookable | null> {
  assertAllowed(actor, 'diary.book');
  const [found] = await readBookable({ number, ending: null });
  return found ?? null;
}

async function readBookable(where: Prisma.CommissionWhereInput): Promise<Bookable[]> {
  const rows = await db().commission.findMany({
    where,
    select: {
      id: true,
      number: true,
      title: true,
      siteAddress: true,
      collector: { select: { name: true, street: true, city: true } },
      handOver: { select: { commissionId: true } },
    },
    orderBy: { number: 'desc' },
    take: 300,
  });
  return rows.map(({ collector, siteAddress, handOver, ...commission }) => ({
    ...commission,
    isHandedOver: handOver !== null,
    collector: collector.name,
    address: siteAddress ?? [collector.street, collector.city].filter(Boolean).join(', '),
  }));
}
