import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { dayFromDate } from '@/lib/dates/rules';
import type { Busy } from '@/lib/installation/rules/crew/busy';
import type { AbsentSpan } from '@/lib/installation/rules/crew/hours';

/** How far around a stretch another appointment may stand that a way leads to: two days. */
const aroundMs = 2 * 86_400_000;

/** A stretch of time, and an appointment that does not count. */
export type Around = { fromAt: Date; untilAt: Date; exceptId: string | null };

/** People with their hours and absences, and what they have within a stretch and two days around. */
export async function loadBusy(
  from: Prisma.TransactionClient,
  ids: readonly string[],
  { fromAt, untilAt, exceptId }: Around,
): Promise<Busy[]> {
  const rows = await from.staff.findMany({
    where: { id: { in: [...ids] } },
    select: {
      ...{ id: true, name: true },
      workDays: { select: { weekday: true, fromMinute: true, toMinute: true } },
      absences: {
        where: { withdrawnAt: null },
        select: { fromOn: true, toOn: true, why: true },
        orderBy: { fromOn: 'asc' },
      },
      crews: {
        where: {
          isOff: false,
          startsAt: { lt: new Date(untilAt.getTime() + aroundMs) },
          endsAt: { gt: new Date(fromAt.getTime() - aroundMs) },
          ...(exceptId ? { appointmentId: { not: exceptId } } : {}),
        },
        select: {
          ...{ startsAt: true, endsAt: true },
          appointment: { select: { kind: true, address: true, travelMinutes: true } },
        },
        orderBy: { startsAt: 'asc' },
      },
    },
  });
  const people = rows.map(({ id, absences, crews, ...person }) => ({
    ...{ ...person, staffId: id, absences: absences.map(readSpan) },
    busy: crews.map(({ appointment, ...span }) => ({ ...span, ...appointment })),
  }));
  return ids.flatMap((id) => people.filter(({ staffId }) => staffId === id));
}

/** Days of an absence or of a standstill as they are stored. */
export function readSpan(row: { fromOn: Date; toOn: Date; why: string }): AbsentSpan {
  return { fromOn: dayFromDate(row.fromOn), toOn: dayFromDate(row.toOn), why: row.why };
}
