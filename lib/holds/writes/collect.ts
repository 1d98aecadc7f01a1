import 'server-only';
import type { Doer, NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import type { KeyRefusal } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { CollectedInput } from '../input';
import type { CollectRefusal } from '../rules/still-here';
import { carryOut } from './carry-out';

/**
 * Notes that a piece that was sold and still hung here was collected.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, nothing of the kind
 *   is here, collected before
 */
export async function noteCollected(
  doer: Doer,
  input: CollectedInput,
): Promise<Result<{ title: string }, CollectRefusal | NotAllowed | KeyRefusal>> {
  const command = { name: 'noteCollected', input };
  return carryOut<{ title: string }, CollectRefusal>(doer, command, async (tx) => {
    const { saleLineId } = input;
    const found = await tx.toCollect.findUnique({
      where: { saleLineId },
      select: { collectedAt: true, saleLine: { select: { title: true } } },
    });
    if (!found) return refuse({ code: 'not_here_to_collect' });
    if (found.collectedAt) {
      return refuse({ code: 'collected_already', collectedAt: found.collectedAt });
    }
    const { title } = found.saleLine;
    const collected = { collectedAt: doer.at, collectedById: doer.actor.id };
    await tx.toCollect.update({
      where: { saleLineId },
      data: collected,
      select: { saleLineId: true },
    });
    await recordAudit(tx, doer, {
      ...{ did: 'handed over what was sold and still here', subject: 'SaleLine' },
      ...{ subjectId: saleLineId, facts: { title } },
    });
    return ok({ title });
  });
}
