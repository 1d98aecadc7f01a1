import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import { lossKey, type LossCounts } from '@/lib/studio/rules/forecast/load/facts';
import { techniques } from '@/lib/studio/rules/routes';

const rows = z.array(
  z.object({
    technique: z.enum(techniques),
    step: z.string(),
    of: z.number(),
    lost: z.number(),
  }),
);

/**
 * What the studio has counted of losses: by technique and the name of a step, how many pieces left
 * it or were lost there, and how many of them were lost. A move that was taken back counts for
 * nothing.
 */
export async function readLossCounts(from: Prisma.TransactionClient): Promise<LossCounts> {
  const found = await from.$queryRaw`
    SELECT job.technique::text AS technique, step.name AS step, sum(move.pieces)::int AS of,
      coalesce(sum(move.pieces) FILTER (WHERE move."toPosition" = -1), 0)::int AS lost
    FROM "JobMove" move
    JOIN "Job" job ON job.id = move."jobId"
    JOIN "JobStep" step
      ON step."jobId" = move."jobId" AND step.position = move."fromPosition"
    WHERE move."undoesId" IS NULL
      AND NOT EXISTS (SELECT FROM "JobMove" undo WHERE undo."undoesId" = move.id)
    GROUP BY 1, 2 ORDER BY 1, 2`;
  return new Map(
    rows
      .parse(found)
      .map(({ technique, step, of, lost }) => [lossKey(technique, step), { of, lost }]),
  );
}
