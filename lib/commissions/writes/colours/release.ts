import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { ReleaseBatchInput } from '@/lib/commissions/input/colours/batches';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { carryOut, tellHistory, type AnyRefusal } from '@/lib/commissions/writes/carry-out';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** The bucket that was let go, and for which commission it was kept. */
export type BatchReleased = { batchNumber: string; commissionNumber: number };

/**
 * Lets a bucket of glaze go before its commission is at its end, and says why: another one may have
 * it from now on.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, no such bucket, a
 *   bucket that is kept for nobody
 */
export async function releaseBatch(
  doer: Doer,
  input: ReleaseBatchInput,
): Promise<Result<BatchReleased, AnyRefusal>> {
  const { requestKey, batchId, why } = input;
  const command = {
    name: 'releaseBatch',
    permission: 'commissions.write',
    key: requestKey,
    input: { batchId, why },
  } as const;
  return carryOut(doer, command, (tx) => addRelease(tx, doer, { batchId, why }));
}

/** The step of {@link releaseBatch}: joins the caller's transaction, asks nobody for leave. */
export async function addRelease(
  tx: Tx,
  doer: Doer,
  { batchId, why }: { batchId: string; why: string },
): Promise<Result<BatchReleased, CommissionRefusal>> {
  const batch = await tx.glazeBatch.findUnique({
    where: { id: batchId },
    select: {
      number: true,
      reserved: {
        where: { releasedAt: null },
        select: { id: true, commissionId: true, commission: { select: { number: true } } },
      },
    },
  });
  if (!batch) return refuse({ code: 'unknown_batch' });
  const [kept] = batch.reserved;
  if (!kept) return refuse({ code: 'batch_kept_for_nobody' });
  await tx.glazeReservation.update({
    where: { id: kept.id },
    data: { releasedAt: doer.at },
    select: { id: true },
  });
  const did = `let bucket ${batch.number} go`;
  await tellHistory(tx, doer, { commissionId: kept.commissionId, did, facts: { why } });
  return ok({ batchNumber: batch.number, commissionNumber: kept.commission.number });
}

/**
 * Lets every bucket go that is kept for a commission: it is handed over, or has ended. Joins the
 * caller's transaction.
 *
 * @returns the numbers on their labels
 */
export async function releaseBatchesOf(
  tx: Tx,
  doer: Doer,
  commissionId: string,
): Promise<string[]> {
  const kept = await tx.glazeReservation.findMany({
    where: { commissionId, releasedAt: null },
    select: { batch: { select: { number: true } } },
    orderBy: { at: 'asc' },
  });
  if (kept.length === 0) return [];
  await tx.glazeReservation.updateMany({
    where: { commissionId, releasedAt: null },
    data: { releasedAt: doer.at },
  });
  return kept.map(({ batch }) => batch.number);
}
