import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { costOfOne } from '@/lib/studio/rules/costs/cost';
import { costFactsOf } from '@/lib/studio/rules/costs/facts';
import { readStudioFacts } from './facts';
import { readPieceOfJob, readPieceOfSku } from './pieces';

/**
 * What one good piece costs as the studio reckons it; joins the caller's transaction.
 *
 * @param of a SKU, or a job for its own steps, size and clay
 * @returns cents; null while the hour of hands is not written down, because without it the sum would
 *   be a small part of the truth, and null for what cannot be reckoned
 */
export async function readUnitCost(
  tx: Prisma.TransactionClient,
  of: { skuId: string } | { jobId: string },
): Promise<bigint | null> {
  const studio = await readStudioFacts(tx);
  if (studio.centsPerHour === 0n) return null;
  const piece = await ('skuId' in of ? readPieceOfSku(tx, of.skuId) : readPieceOfJob(tx, of.jobId));
  if (!piece) return null;
  const cost = costOfOne(costFactsOf(studio, piece).facts);
  return cost.ok ? cost.value.totalCents : null;
}
