import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay } from '@/lib/dates/rules';
import { onceOnly, type KeyRefusal } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { GlazePartsInput } from '@/lib/studio/input/parts';
import { numbersWords, type PartsRefusal } from '@/lib/studio/rules/parts/words';
import { todayOf } from '../jobs/keep-move';
import { loadChosen } from './chosen';

/** Glaze that was written down. */
export type PartsGlazed = { parts: number; coats: number; bucket: string };

/**
 * Writes down how many coats were laid on chosen parts, and from which bucket.
 *
 * @returns refuses, in this order: not allowed, then as {@link loadChosen}, a part that is not
 *   begun, no such bucket, a day to come
 */
export async function glazeParts(
  doer: Doer,
  input: GlazePartsInput,
): Promise<Result<PartsGlazed, NotAllowed | PartsRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'studio.move');
  if (!allowed.ok) return allowed;
  const { requestKey, ...glazing } = input;
  const command = {
    ...{ key: requestKey, name: 'glazeParts', staffId: doer.actor.id, at: doer.at },
    input: glazing,
  };
  return onceOnly<PartsGlazed, PartsRefusal>(command, async (tx) => {
    const chosen = await loadChosen(tx, glazing);
    if (!chosen.ok) return chosen;
    const notBegun = chosen.value.find(({ position }) => position === 0);
    if (notBegun) return refuse({ code: 'part_not_begun', number: notBegun.number });
    const { batchId, coats, on, jobId } = glazing;
    const batch = await tx.glazeBatch.findUnique({
      where: { id: batchId },
      select: { number: true, glaze: true },
    });
    if (!batch) return refuse({ code: 'no_such_bucket' });
    if (on > (await todayOf(tx, doer))) return refuse({ code: 'day_to_come' });
    const by = { staffId: doer.actor.id, at: doer.at };
    await tx.partGlaze.createMany({
      data: chosen.value.map(({ id }) => ({
        ...{ partId: id, batchId, coats, on: dateFromDay(on), ...by },
      })),
    });
    const numbers = numbersWords(chosen.value.map(({ number }) => number));
    await recordAudit(tx, doer, {
      did: 'wrote down glaze on numbered parts',
      subject: 'Job',
      subjectId: jobId,
      facts: { parts: numbers, bucket: batch.number, glaze: batch.glaze, coats, on },
    });
    return ok({ parts: chosen.value.length, coats, bucket: batch.number });
  });
}
