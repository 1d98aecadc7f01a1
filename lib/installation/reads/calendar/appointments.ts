import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { weightEstimate } from '@/lib/commissions/rules/enquiry/weight';
import type { ForCalendar } from '@/lib/installation/rules/calendar/told';
import { db } from '@/lib/platform/db/client';

/** The most appointments that one calendar tells of. */
const appointmentsMost = 2_000;

const columns = {
  ...{ id: true, kind: true, sequence: true, startsAt: true, endsAt: true, address: true },
  ...{ travelMinutes: true, meets: true, prepares: true, fallBack: true, note: true },
  ...{ leadId: true, bookedAt: true, calledOffAt: true, calledOffWhy: true },
  lead: { select: { name: true } },
  crew: { select: { staffId: true, staff: { select: { name: true } } } },
  changes: { select: { at: true }, orderBy: { sequence: 'desc' }, take: 1 },
  commission: {
    select: {
      ...{ number: true, title: true, widthUm: true, heightUm: true },
      collector: { select: { name: true } },
      progress: {
        where: { weightG: { not: null } },
        select: { weightG: true },
        orderBy: [{ on: 'desc' }, { at: 'desc' }, { id: 'desc' }],
        take: 1,
      },
    },
  },
} as const satisfies Prisma.AppointmentSelect;

type Row = Prisma.AppointmentGetPayload<{ select: typeof columns }>;

/** Everything that somebody leads or goes along to within a stretch, called off or not; earliest first. */
export async function appointmentsForCalendar(
  staffId: string,
  { fromAt, untilAt }: { fromAt: Date; untilAt: Date },
): Promise<ForCalendar[]> {
  const rows = await db().appointment.findMany({
    where: { startsAt: { gte: fromAt, lt: untilAt }, crew: { some: { staffId } } },
    select: columns,
    orderBy: [{ startsAt: 'asc' }, { id: 'asc' }],
    take: appointmentsMost,
  });
  return rows.map(told);
}

/** One appointment for a calendar file, whoever asks; null when there is none. */
export async function appointmentForCalendar(id: string): Promise<ForCalendar | null> {
  const row = await db().appointment.findUnique({ where: { id }, select: columns });
  return row && told(row);
}

/** One appointment of a commission, for its collector; null when it is none of that commission. */
export async function calendarForCollector(
  commissionId: string,
  id: string,
): Promise<ForCalendar | null> {
  const row = await db().appointment.findFirst({ where: { id, commissionId }, select: columns });
  return row && told(row);
}

/** A day that is still to come, or would be if it had not been called off. */
export type ComingDay = Pick<ForCalendar, 'id' | 'kind' | 'startsAt'> & { isOff: boolean };

/** What is still to come of a commission, for its collector; earliest first. */
export async function comingForCollector(commissionId: string, now: Date): Promise<ComingDay[]> {
  const rows = await db().appointment.findMany({
    where: { commissionId, endsAt: { gt: now } },
    select: { id: true, kind: true, startsAt: true, calledOffAt: true },
    orderBy: [{ startsAt: 'asc' }, { id: 'asc' }],
    take: 10,
  });
  return rows.map(({ calledOffAt, ...day }) => ({ ...day, isOff: calledOffAt !== null }));
}

function told(row: Row): ForCalendar {
  const { lead, leadId, crew, changes, commission, bookedAt, calledOffAt, ...appointment } = row;
  const others = crew.filter((one) => one.staffId !== leadId).map((one) => one.staff.name);
  const changedAts = [
    bookedAt,
    ...changes.map(({ at }) => at),
    ...(calledOffAt ? [calledOffAt] : []),
  ];
  return {
    ...appointment,
    leadName: lead.name,
    withNames: others.toSorted((one, other) => one.localeCompare(other)),
    commission: commission && {
      ...{ number: commission.number, title: commission.title },
      collector: commission.collector.name,
    },
    weight: commission && weightOf(commission),
    calledOffWhy: calledOffAt ? (row.calledOffWhy ?? '') : null,
    madeAt: bookedAt,
    changedAt: new Date(Math.max(...changedAts.map((at) => at.getTime()))),
  };
}

function weightOf(commission: NonNullable<Row['commission']>): ForCalendar['weight'] {
  const byScale = commission.progress[0]?.weightG ?? null;
  if (byScale !== null) return { weightG: byScale, isByScale: true };
  const reckoned = weightEstimate(commission, 'in');
  return reckoned && { weightG: reckoned.weightG, isByScale: false };
}
