import { learnLoss, statedWeighsPieces } from '@/lib/studio/rules/losses/learned';
import type { RouteStep, Technique } from '@/lib/studio/rules/routes';
import { lossKey, type LossCounts } from './facts';

/**
 * The chance of a piece to be lost at a step, 0 to 1: what the route states, and what the studio
 * counted there since. A step that is said to lose nothing is believed until a piece is lost there.
 */
export function lossRateOf(
  technique: Technique,
  step: Pick<RouteStep, 'name' | 'lossPercent'>,
  counts: LossCounts,
): number {
  const counted = counts.get(lossKey(technique, step.name)) ?? { lost: 0, of: 0 };
  const isStated = Number(step.lossPercent) > 0;
  if (!isStated && counted.lost === 0) return 0;
  const stated = isStated ? { percent: step.lossPercent, weighsPieces: statedWeighsPieces } : null;
  const learned = learnLoss(counted, stated);
  return learned.ok ? learned.value.share : 0;
}
