import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dateFromDay, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { lossCauses, type LossCause } from '@/lib/studio/rules';
import { lossKey } from '@/lib/studio/rules/forecast/load/facts';
import { learnLoss, statedWeighsPieces, type LearnedLoss } from '@/lib/studio/rules/losses/learned';
import type { RouteStep, Technique } from '@/lib/studio/rules/routes';
import { readLossCounts } from './forecast/loss-counts';
import { listRoutes } from './route-list';

/** What a step of a route loses, as far as it is known. */
export type StepLearned = { step: string; learned: LearnedLoss };

/** A route with what is known of the losses at its steps. */
export type RouteLearned = {
  routeId: string;
  name: string;
  technique: Technique;
  isUsual: boolean;
  routeSteps: readonly RouteStep[];
  /** Only steps at which something is stated or counted. */
  steps: StepLearned[];
};

/** Every route in use with what the studio's own pieces tell of its losses. */
export async function listLearnedLosses(actor: Actor): Promise<RouteLearned[]> {
  const [routes, counts] = await Promise.all([listRoutes(actor), readLossCounts(db())]);
  return routes.map(({ id, name, technique, isUsual, steps }) => ({
    ...{ routeId: id, name, technique, isUsual, routeSteps: steps },
    steps: steps.flatMap((step) => {
      const counted = counts.get(lossKey(technique, step.name)) ?? { lost: 0, of: 0 };
      const learned = learnStep(step, counted);
      return learned ? [{ step: step.name, learned }] : [];
    }),
  }));
}

function learnStep(
  step: Pick<RouteStep, 'lossPercent'>,
  counted: { lost: number; of: number },
): LearnedLoss | null {
  const isStated = Number(step.lossPercent) > 0;
  if (!isStated && counted.lost === 0) return null;
  const { lossPercent: percent } = step;
  const stated = isStated ? { percent, weighsPieces: statedWeighsPieces } : null;
  const learned = learnLoss(counted, stated);
  return learned.ok ? learned.value : null;
}

/** Pieces that were lost for a cause at a step. */
export type LostFor = { cause: LossCause; step: string; pieces: number };

const lostRows = z.array(
  z.object({ cause: z.enum(lossCauses), step: z.string(), pieces: z.number() }),
);

/** What was lost since a day and why, the most first; what was taken back is left out. */
export async function listLostFor(actor: Actor, sinceOn: Day): Promise<LostFor[]> {
  assertAllowed(actor, 'studio.see');
  const found = await db().$queryRaw`
    SELECT move.cause::text AS cause, coalesce(step.name, 'finished') AS step,
      sum(move.pieces)::int AS pieces
    FROM "JobMove" move
    LEFT JOIN "JobStep" step ON step."jobId" = move."jobId" AND step.position = move."fromPosition"
    WHERE move.cause IS NOT NULL AND move."movedOn" >= ${dateFromDay(sinceOn)}::date
      AND NOT EXISTS (SELECT 1 FROM "JobMove" undo WHERE undo."undoesId" = move.id)
    GROUP BY 1, 2 ORDER BY 3 DESC, 1, 2`;
  return lostRows.parse(found);
}
