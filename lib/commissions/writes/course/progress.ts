import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import type { KeepProgressInput, ShareProgressInput } from '@/lib/commissions/input/course-told';
import { progressWords } from '@/lib/commissions/rules/course/progress';
import type { CommissionRefusal } from '@/lib/commissions/rules/refusals';
import {
  carryOut,
  findForWriting,
  tellHistory,
  type AnyRefusal,
} from '@/lib/commissions/writes/carry-out';
import { fileToKeep, readyPicture, type ReadyPicture } from '@/lib/files/ready';
import { dateFromDay } from '@/lib/dates/rules';
import { keepFile } from '@/lib/files/writes';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

type Kept = Omit<KeepProgressInput, 'requestKey' | 'picture'> & { picture: ReadyPicture | null };

/**
 * Remembers something of the making or the hanging: a picture, a weight, a firing, a bucket of
 * glaze, a fixing. It stays as it was written; only whether the collector sees it may change.
 *
 * @returns refuses, in this order: not allowed, a picture that cannot be kept, a key used for
 *   something else, unknown, ended early, a day to come, a bucket nobody knows. After the hand-over
 *   it can still be written: the wall is often looked at again
 */
export async function keepProgress(
  doer: Doer,
  input: KeepProgressInput,
): Promise<Result<{ commissionNumber: number }, AnyRefusal>> {
  const permission = 'commissions.write';
  const allowed = allow(doer.actor, permission);
  if (!allowed.ok) return allowed;
  const { requestKey, picture, ...said } = input;
  const ready = picture ? await readyPicture(picture) : ok(null);
  if (!ready.ok) return ready;
  const wanted = { ...said, sha256: ready.value?.sha256 ?? null };
  const command = { name: 'keepProgress', permission, key: requestKey, input: wanted } as const;
  return carryOut(doer, command, (tx) => addProgress(tx, doer, { ...said, picture: ready.value }));
}

/** The step of {@link keepProgress}: joins the caller's transaction, asks nobody for leave. */
export async function addProgress(
  tx: Tx,
  doer: Doer,
  kept: Kept,
): Promise<Result<{ commissionNumber: number }, CommissionRefusal>> {
  const { commissionId, kind, words, on, picture, weightG, firing, batchId, shared } = kept;
  const found = await findForWriting(tx, doer, commissionId);
  if (!found.ok) return found;
  const { facts, today, number } = found.value;
  if (facts.ending) return refuse({ code: 'ended_early', endedOn: facts.ending.endedOn });
  if (on > today) return refuse({ code: 'day_to_come', on });
  const batch = batchId && (await tx.glazeBatch.findUnique({ where: { id: batchId } }));
  if (batchId && !batch) return refuse({ code: 'unknown_batch' });
  const file = picture && (await keepFile(tx, fileToKeep(picture, doer.at)));
  await tx.progress.create({
    data: {
      ...{ commissionId, kind, weightG, firing, batchId, on: dateFromDay(on) },
      // A firing or a bucket is something said by itself.
      words: words === '' ? progressWords[kind] : words,
      fileId: file?.id ?? null,
      shared: shared === 'yes',
      staffId: doer.actor.id,
      at: doer.at,
    },
    select: { id: true },
  });
  const did = `wrote down ${progressWords[kind]}`;
  await tellHistory(tx, doer, { commissionId, did, facts: { kind } });
  return ok({ commissionNumber: number });
}

/**
 * Shows something that was remembered to the collector on their page, or no longer.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown commission,
 *   unknown, shown (or not) already
 */
export async function shareProgress(
  doer: Doer,
  input: ShareProgressInput,
): Promise<Result<{ commissionNumber: number }, AnyRefusal>> {
  const { requestKey, ...wanted } = input;
  const permission = 'commissions.write';
  const command = { name: 'shareProgress', permission, key: requestKey, input: wanted } as const;
  return carryOut(doer, command, async (tx) => {
    const { commissionId, progressId: id } = wanted;
    const shared = wanted.shared === 'yes';
    const found = await findForWriting(tx, doer, commissionId);
    if (!found.ok) return found;
    const row = await tx.progress.findFirst({
      where: { id, commissionId },
      select: { shared: true },
    });
    if (!row) return refuse({ code: 'unknown_progress' });
    if (row.shared === shared) return refuse({ code: 'shown_already', shared });
    await tx.progress.update({ where: { id }, data: { shared }, select: { id: true } });
    const did = shared ? 'put something on their page' : 'took something off their page';
    await tellHistory(tx, doer, { commissionId, did, facts: {} });
    return ok({ commissionNumber: found.value.number });
  });
}
