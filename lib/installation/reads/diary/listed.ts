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
  address: string;
  note: string;
  commission: { id: string; number: number; title: string; collector: string } | null;
  sequence: number;
  calledOffWhy: string | null;
};

/** An appointment with who booked it when. */
export type AppointmentTold = InDiary & {
  bookedAt: Date;
  bookedBy: string;
  calledOffAt: Date | null;
  collectorPhone: string | null;
};

const columns = {
  id: true,
  kind: true,
  startsAt: true,
  endsAt: true,
  leadId: true,
  address: true,
  note: true,
  sequence: true,
  calledOffWhy: true,
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

function read(
  row: Prisma.AppointmentGetPayload<{ select: typeof columns }>,
  zone: string,
): InDiary {
  const { lead, commission, ...appointment } = row;
  return {
    ...appointment,
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
    select: columns,
    orderBy: [...inOrder],
    take: appointmentsMax,
  });
  return rows.map((row) => read(row, zone));
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
    select: columns,
    orderBy: [...inOrder],
    take: most,
  });
  return rows.map((row) => read(row, zone));
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
    select: columns,
    orderBy: [...inOrder],
    take: 50,
  });
  return rows.map((row) => read(row, zone));
}

/** One appointment; null when there is none. */
export async function findAppointment(
  actor: Actor,
  id: string,
  zone: string,
): Promise<AppointmentTold | null> {
  assertAllowed(actor, 'diary.see');
  const row = await db().appointment.findUnique({
    where: { id },
    select: { ...columns, bookedAt: true, bookedById: true, calledOffAt: true },
  });
  if (!row) return null;
  const { bookedAt, bookedById, calledOffAt, ...appointment } = row;
  const booker = await db().staff.findUnique({ where: { id: bookedById }, select: { name: true } });
  return {
    ...read(appointment, zone),
    bookedAt,
    bookedBy: booker?.name ?? 'somebody',
    calledOffAt,
    collectorPhone: row.commission?.collector.phone ?? null,
  };
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
};

/** The commissions that are neither ended nor handed over, the newest first; at most 300. */
export async function listBookable(actor: Actor): Promise<Bookable[]> {
  assertAllowed(actor, 'diary.book');
  const rows = await db().commission.findMany({
    where: { ending: null, handOver: null },
    select: {
      id: true,
      number: true,
      title: true,
      siteAddress: true,
      collector: { select: { name: true, street: true, city: true } },
    },
    orderBy: { number: 'desc' },
    take: 300,
  });
  return rows.map(({ collector, siteAddress, ...commission }) => ({
    ...commission,
    collector: collector.name,
    address: siteAddress ?? [collector.street, collector.city].filter(Boolean).join(', '),
  }));
}
