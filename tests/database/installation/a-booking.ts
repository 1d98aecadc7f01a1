import type { BookInput } from '@/lib/installation/input';
import { db } from '@/lib/platform/db/client';
import { aKey } from '../studio/a-studio';

/** A hanging on a Friday morning as the form sends it; of nobody's commission unless it is said. */
export function aBooking(change: Partial<BookInput> & { leadId: string }): BookInput {
  return {
    ...{ requestKey: aKey(), kind: 'hanging', commissionId: null, crewIds: [] },
    ...{ day: '2026-05-08', from: '09:00', to: '12:00', address: '4 Ropewalk Lane' },
    ...{ travelMinutes: 0, note: '', meets: '', prepares: '', fallBack: '', words: {} },
    ...change,
  };
}

/** Who goes along to an appointment, by name, and whether it is off. */
export async function crewOf(appointmentId: string): Promise<string[]> {
  const rows = await db().appointmentCrew.findMany({
    where: { appointmentId },
    select: { isOff: true, staff: { select: { name: true } } },
  });
  return rows.map(({ isOff, staff }) => (isOff ? `${staff.name}, off` : staff.name)).toSorted();
}
