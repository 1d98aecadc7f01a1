import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { dayFromDate } from '@/lib/dates/rules';
import type { ConsentSaid } from '../rules/consent';
import { idsOf } from './group';

const rowsMost = 500;

/** All that somebody said yes or no to, the last first, as {@link lastSaid} looks at it. */
export async function readConsents(
  from: Prisma.TransactionClient,
  collectorId: string,
): Promise<(ConsentSaid & { id: string; how: string; staffId: string })[]> {
  const ids = [...(await idsOf(from, collectorId))];
  const [rows, merges] = await Promise.all([
    from.consent.findMany({
      where: { collectorId: { in: ids } },
      orderBy: [{ saidOn: 'desc' }, { at: 'desc' }, { id: 'desc' }],
      take: rowsMost,
    }),
    from.collectorMerge.findMany({
      where: { goneId: { in: ids }, undoneAt: null },
      select: { at: true },
      orderBy: { at: 'desc' },
      take: 1,
    }),
  ]);
  const mergedAt = merges[0]?.at ?? null;
  return rows.map(({ collectorId: under, saidOn, ...row }) => ({
    ...{ ...row, under, saidOn: dayFromDate(saidOn) },
    isAskedAnew: mergedAt !== null && row.at > mergedAt,
  }));
}
