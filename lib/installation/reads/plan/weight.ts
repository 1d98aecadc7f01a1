import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { weightEstimate } from '@/lib/commissions/rules/enquiry/weight';
import { dayFromDate, type Day } from '@/lib/dates/rules';

/** What a piece weighs, and from what that is known. */
export type WeightKnown = {
  readonly weightG: number;
  readonly from: 'scale' | 'proposal' | 'estimate';
  /** The day on which it was on the scale. */
  readonly on: Day | null;
};

/**
 * What the piece of a commission weighs, as well as it is known: the last time it was on the scale,
 * else what was agreed, else what one of its size is reckoned at.
 *
 * @returns null while nothing is known, not even its size
 */
export async function weightKnown(
  from: Prisma.TransactionClient,
  commissionId: string,
): Promise<WeightKnown | null> {
  const row = await from.commission.findUnique({
    where: { id: commissionId },
    select: {
      ...{ widthUm: true, heightUm: true },
      progress: {
        where: { kind: 'weight', weightG: { gt: 0 } },
        select: { weightG: true, on: true },
        orderBy: [{ on: 'desc' }, { at: 'desc' }, { id: 'desc' }],
        take: 1,
      },
      agreements: {
        select: { proposal: { select: { weightG: true } } },
        orderBy: { version: 'desc' },
        take: 1,
      },
    },
  });
  const scale = row?.progress[0];
  if (scale?.weightG) {
    return { weightG: scale.weightG, from: 'scale', on: dayFromDate(scale.on) };
  }
  const agreed = row?.agreements[0]?.proposal?.weightG;
  if (agreed) return { weightG: agreed, from: 'proposal', on: null };
  const estimate = row && weightEstimate(row, 'in');
  return estimate ? { weightG: estimate.weightG, from: 'estimate', on: null } : null;
}
