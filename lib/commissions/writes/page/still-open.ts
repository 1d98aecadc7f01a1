import 'server-only';
import type { PageDoer } from '@/lib/access/rules';
import { decideAnswer, type LinkRefusal } from '@/lib/commissions/rules/page/link';
import type { Tx } from '@/lib/platform/db/transaction';
import type { Result } from '@/lib/platform/result';

const hourMs = 3_600_000;

/**
 * Whether the address through which a collector answers still opens the page, asked inside the
 * transaction that writes the answer.
 *
 * The row is locked against being changed: withdrawing it waits for the answer, or the answer
 * finds it withdrawn.
 *
 * @returns refuses as {@link decideAnswer}
 */
export async function linkStillOpen(tx: Tx, doer: PageDoer): Promise<Result<true, LinkRefusal>> {
  const { linkId, commissionId } = doer.page;
  await tx.$queryRaw`SELECT id FROM "CollectorLink" WHERE id = ${linkId}::uuid FOR SHARE`;
  const link = await tx.collectorLink.findFirst({
    where: { id: linkId, commissionId },
    select: { runsOutAt: true, withdrawnAt: true },
  });
  const anHourBefore = new Date(doer.at.getTime() - hourMs);
  const answers = await tx.auditLine.count({ where: { linkId, at: { gt: anHourBefore } } });
  return decideAnswer(link, answers, doer.at);
}
