import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import type { Day } from '@/lib/dates/rules';
import { bringsThePiece, type AppointmentKind } from '@/lib/installation/rules/diary/kinds';
import type { ReadyBy } from '@/lib/installation/rules/diary/questions';
import { db } from '@/lib/platform/db/client';
import { readStudioLoad } from '@/lib/studio/reads/forecast/load';
import { tellDays } from '@/lib/studio/reads/forecast/tell';
import { readyDayIn } from '@/lib/studio/rules/forecast/forecast';

/**
 * The day by which every job of a commission is ready in as many of 100 as the studio promises by.
 *
 * @returns null when all of them are finished; a day of null where nothing was begun, or where
 *   nothing can be foretold
 */
export async function readReadyBy(
  from: Prisma.TransactionClient,
  commissionId: string,
  todayOn: Day,
): Promise<ReadyBy | null> {
  const jobs = await from.job.findMany({ where: { commissionId }, select: { id: true } });
  const load = await readStudioLoad(from, todayOn);
  const inHundred = load.facts.promiseInHundred;
  if (jobs.length === 0) return { readyOn: null, inHundred };
  const own = new Set(jobs.map(({ id }) => id));
  if (load.stuck.some(({ of }) => own.has(of.job.id))) return { readyOn: null, inHundred };
  if (!load.jobs.some(({ job }) => own.has(job.id))) return null;
  const told = tellDays(load).filter(({ of }) => own.has(of.job.id));
  const days = told.map((one) => readyDayIn(one.told, inHundred));
  const isKnown = days.length > 0 && days.every((day) => day !== null);
  return { readyOn: isKnown ? latest(days) : null, inHundred };
}

function latest(days: readonly Day[]): Day | null {
  return days.toSorted().at(-1) ?? null;
}

/** The same for what somebody wants to book; null where no piece of a commission goes along. */
export async function readReadyForKind(
  { kind, commissionId }: { kind: AppointmentKind; commissionId: string | null },
  todayOn: Day,
): Promise<ReadyBy | null> {
  if (!commissionId || !bringsThePiece(kind)) return null;
  return readReadyBy(db(), commissionId, todayOn);
}

/** The same for an appointment that is booked; null where there is none. */
export async function readReadyOf(appointmentId: string, todayOn: Day): Promise<ReadyBy | null> {
  const row = await db().appointment.findUnique({
    where: { id: appointmentId },
    select: { kind: true, commissionId: true },
  });
  return row && readReadyForKind(row, todayOn);
}
