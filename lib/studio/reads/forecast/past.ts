import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dayFromDate } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import type { PastJob, PastPromise } from '@/lib/studio/rules/forecast/telling/past';

/** The most past jobs and promises that are looked at; the newest first. */
const pastMost = 200;

const day = z.date().transform(dayFromDate);

const jobRows = z.array(
  z.object({
    number: z.number(),
    title: z.string(),
    toldOn: day,
    in50On: day.nullable(),
    in80On: day,
    in95On: day.nullable(),
    finishedOn: day,
  }),
);

/** Finished jobs of which a day was foretold, with the first that was; the last finished first. */
export async function listPastJobs(actor: Actor): Promise<PastJob[]> {
  assertAllowed(actor, 'studio.see');
  const found = await db().$queryRaw`
    WITH first AS (
      SELECT DISTINCT ON ("jobId") "jobId", "toldOn", "in50On", "in80On", "in95On"
      FROM "Foretold" WHERE "jobId" IS NOT NULL AND "in80On" IS NOT NULL ORDER BY "jobId", id
    ), coming AS (
      SELECT move."jobId", move."movedOn",
        sum(move.pieces) OVER (PARTITION BY move."jobId" ORDER BY move.id) AS "soFar"
      FROM "JobMove" move
      WHERE move."undoesId" IS NULL
        AND NOT EXISTS (SELECT FROM "JobMove" undo WHERE undo."undoesId" = move.id)
        AND move."toPosition" > (
          SELECT count(*) FROM "JobStep" step WHERE step."jobId" = move."jobId")
    )
    SELECT job.number, job.title, first."toldOn", first."in50On", first."in80On", first."in95On",
      min(coming."movedOn") AS "finishedOn"
    FROM first
    JOIN "Job" job ON job.id = first."jobId"
    JOIN coming ON coming."jobId" = job.id AND coming."soFar" >= job.wanted
    GROUP BY 1, 2, 3, 4, 5, 6 ORDER BY "finishedOn" DESC, job.number DESC
    LIMIT ${pastMost}`;
  return jobRows.parse(found);
}

/** Commissions that were handed over and had a promised day; the last first. */
export async function listPastPromises(actor: Actor): Promise<PastPromise[]> {
  assertAllowed(actor, 'studio.see');
  const rows = await db().handOver.findMany({
    select: {
      handedOn: true,
      commission: {
        select: {
          ...{ number: true, title: true },
          agreements: { select: { promisedOn: true }, orderBy: { version: 'desc' }, take: 1 },
        },
      },
    },
    orderBy: [{ handedOn: 'desc' }, { commissionId: 'asc' }],
    take: pastMost,
  });
  return rows.flatMap(({ handedOn, commission }) => {
    const promised = commission.agreements[0]?.promisedOn;
    if (!promised) return [];
    return [
      {
        ...{ commissionNumber: commission.number, title: commission.title },
        ...{ promisedOn: dayFromDate(promised), handedOn: dayFromDate(handedOn) },
      },
    ];
  });
}
