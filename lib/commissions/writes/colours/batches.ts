import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import type { WriteBatchInput } from '@/lib/commissions/input/colours/batches';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { dateFromDay } from '@/lib/dates/rules';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** A bucket to write down; of no glaze of the book unless it says one. */
export type BatchToWrite = Omit<WriteBatchInput, 'glazeId' | 'recipeId'> &
  Partial<Pick<WriteBatchInput, 'glazeId' | 'recipeId'>>;

/**
 * Writes a bucket of glaze down by the number on its label; one of the book takes its name from it
 * where none was written.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, a number that is
 *   taken, a glaze that is not in the book or a recipe that is not its own
 */
export async function writeBatch(
  doer: Doer,
  input: BatchToWrite,
): Promise<Result<{ batchId: string }, CommissionRefusal | NotAllowed | KeyRefusal>> {
  const allowed = allow(doer.actor, 'commissions.write');
  if (!allowed.ok) return allowed;
  const { requestKey: key, mixedOn, ...batch } = input;
  const said = { ...batch, mixedOn };
  const command = { key, name: 'writeBatch', staffId: doer.actor.id, input: said, at: doer.at };
  return onceOnly<{ batchId: string }, CommissionRefusal>(command, async (tx) => {
    const taken = await tx.glazeBatch.findUnique({
      where: { number: batch.number },
      select: { id: true },
    });
    if (taken) return refuse({ code: 'batch_number_taken' });
    const named = await nameInBook(tx, batch);
    if (!named.ok) return named;
    const glaze = batch.glaze || named.value;
    const { id } = await tx.glazeBatch.create({
      data: { ...batch, glaze, mixedOn: dateFromDay(mixedOn) },
      select: { id: true },
    });
    const { number, recipeId = null } = batch;
    const facts = { number, glaze, inBook: named.value, recipeId };
    const line = {
      did: 'wrote a bucket of glaze down',
      subject: 'GlazeBatch',
      subjectId: id,
      facts,
    };
    await recordAudit(tx, doer, line);
    return ok({ batchId: id });
  });
}

/** The name of the bucket's glaze in the book; empty for one that is not of the book. */
async function nameInBook(
  tx: Tx,
  { glazeId, recipeId }: Pick<BatchToWrite, 'glazeId' | 'recipeId'>,
): Promise<Result<string, CommissionRefusal>> {
  if (!glazeId) return ok('');
  const glaze = await tx.glaze.findUnique({
    where: { id: glazeId },
    select: { name: true, recipes: { select: { id: true } } },
  });
  const isIts = !recipeId || glaze?.recipes.some(({ id }) => id === recipeId);
  return glaze && isIts ? ok(glaze.name) : refuse({ code: 'unknown_glaze' });
}

/**
 * Keeps a bucket of glaze for one commission; joins the caller's transaction.
 *
 * @returns refuses, in this order: no such bucket, kept for another commission
 */
export async function reserveBatch(
  tx: Tx,
  doer: Doer,
  { batchId, commissionId }: { batchId: string; commissionId: string },
): Promise<Result<true, CommissionRefusal>> {
  const batch = await tx.glazeBatch.findUnique({
    where: { id: batchId },
    select: {
      reserved: {
        where: { releasedAt: null },
        select: { commissionId: true, commission: { select: { number: true } } },
      },
    },
  });
  if (!batch) return refuse({ code: 'unknown_batch' });
  const [kept] = batch.reserved;
  if (kept && kept.commissionId !== commissionId) {
    return refuse({ code: 'batch_reserved', number: kept.commission.number });
  }
  if (kept) return ok(true);
  await tx.glazeReservation.create({
    data: { batchId, commissionId, staffId: doer.actor.id, at: doer.at },
    select: { id: true },
  });
  return ok(true);
}
