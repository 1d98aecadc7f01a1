import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import { addDays, dateFromDay, dayFromDate, weekdayOf, type Day } from '@/lib/dates/rules';
import type { InKiln, KilnFacts } from '@/lib/studio/rules/forecast/load/facts';

const inKilnRows = z.array(
  z.object({
    jobId: z.uuid(),
    position: z.number(),
    pieces: z.number(),
    kilnId: z.uuid(),
    litOn: z.date().transform(dayFromDate),
  }),
);

/** Pieces of jobs in kilns that were lit and not opened yet, by job. */
export async function readInKilns(
  from: Prisma.TransactionClient,
): Promise<ReadonlyMap<string, InKiln[]>> {
  const found = await from.$queryRaw`
    SELECT line."jobId", line.position, sum(line.pieces)::int AS pieces, firing."kilnId",
      lit."litOn"
    FROM "FiringLit" lit
    JOIN "Firing" firing ON firing.id = lit."firingId"
    JOIN "FiringLine" line ON line."firingId" = firing.id
    LEFT JOIN "FiringOpened" opened ON opened."firingId" = firing.id
    WHERE opened."firingId" IS NULL
    GROUP BY 1, 2, 4, 5 ORDER BY 1, 2, 4`;
  const byJob = new Map<string, InKiln[]>();
  for (const { jobId, ...inside } of inKilnRows.parse(found)) {
    byJob.set(jobId, [...(byJob.get(jobId) ?? []), inside]);
  }
  return byJob;
}

/**
 * The kilns that are in use, with how often each was lit since Monday. One that was put away is
 * among them only while it still holds pieces, and fires no more.
 */
export async function readKilnFacts(
  from: Prisma.TransactionClient,
  todayOn: Day,
  holding: ReadonlySet<string>,
): Promise<KilnFacts[]> {
  const monday = addDays(todayOn, -((weekdayOf(todayOn) + 6) % 7));
  const today = dateFromDay(todayOn);
  const rows = await from.kiln.findMany({
    where: {
      OR: [{ retiredOn: null }, { retiredOn: { gt: today } }, { id: { in: [...holding] } }],
    },
    include: {
      firings: {
        where: { lit: { litOn: { gte: dateFromDay(monday), lte: today } } },
        select: { id: true },
      },
    },
    orderBy: { name: 'asc' },
  });
  return rows.map(({ firings, retiredOn, ...kiln }) => ({
    ...kiln,
    cones: retiredOn && retiredOn <= today ? [] : kiln.cones,
    loadsThisWeek: firings.length,
  }));
}
