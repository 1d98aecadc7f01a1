import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import type { HandOverFacts } from '@/lib/commissions/rules/agreement/hand-over';
import { sizeSentence } from '@/lib/commissions/rules/proposal/body';
import { getGallery } from '@/lib/platform/settings';

/**
 * What is known of a piece before it is handed over: its size and parts by the agreement, else the
 * parts of its jobs, and the fixings that were noted.
 */
export async function readHandOverFacts(
  from: Prisma.TransactionClient,
  commissionId: string,
): Promise<HandOverFacts> {
  const row = await from.commission.findUniqueOrThrow({
    where: { id: commissionId },
    select: {
      ...{ number: true, title: true, collector: { select: { name: true } } },
      agreements: {
        select: {
          proposal: {
            select: { widthUm: true, heightUm: true, depthUm: true, pieces: true, weightG: true },
          },
        },
        orderBy: { version: 'desc' },
        take: 1,
      },
      progress: {
        where: { kind: 'fixing', words: { not: '' } },
        select: { words: true },
        orderBy: [{ at: 'asc' }, { id: 'asc' }],
        take: 50,
      },
    },
  });
  const { lengthUnit } = await getGallery(from);
  const proposal = row.agreements[0]?.proposal ?? null;
  return {
    ...{ commissionNumber: row.number, title: row.title, collector: row.collector.name },
    sizeWords: proposal && `${sizeSentence(proposal, { lengthUnit })}.`,
    parts: proposal?.pieces ?? null,
    fixings: row.progress.map(({ words }) => words).join('; '),
  };
}
