import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay, instantOf, type Day } from '@/lib/dates/rules';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { ok, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { LightKilnInput, NoteReadingInput } from '@/lib/studio/input/firings';
import { loadToLight } from '@/lib/studio/reads/firings/lighting';
import {
  decideLight,
  decideReading,
  type LightRefusal,
  type ReadingRefusal,
} from '@/lib/studio/rules/firings/lighting';
import { todayOf } from '../jobs/keep-move';
import { commandOf, loadFiringToChange } from './to-change';

/** A kiln that was lit. */
export type KilnLit = { number: number };

/**
 * Lights a kiln with what lies in its load. From now on the load stays as it is, and its pieces
 * stay in the kiln until it is opened.
 *
 * Of two people who light the same kiln at once, one lights it and the other is told.
 *
 * @returns refuses, in this order: not allowed, then as {@link decideLight}
 */
export async function lightKiln(
  doer: Doer,
  input: LightKilnInput,
): Promise<Result<KilnLit, NotAllowed | LightRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'studio.move');
  if (!allowed.ok) return allowed;
  const { requestKey, firingId, saidOfDry: said, meterKwh } = input;
  const command = commandOf(doer, 'lightKiln', requestKey, { firingId, said, meterKwh });
  return onceOnly<KilnLit, LightRefusal>(command, async (tx) => {
    const firing = await loadFiringToChange(tx, { id: firingId });
    const load = firing && (await loadToLight(tx, firing));
    const decided = decideLight(load, said);
    if (!decided.ok) return decided;
    const litOn = await todayOf(tx, doer);
    const { saidOfDry } = decided.value;
    await tx.firingLit.create({
      data: {
        ...{ firingId, litOn: dateFromDay(litOn), at: doer.at, saidOfDry, meterKwh },
        staffId: doer.actor.id,
      },
    });
    const number = firing?.number ?? 0;
    const facts = { number, kiln: firing?.kiln ?? '', saidOfDry, meterKwh };
    const did = 'lit a kiln';
    await recordAudit(tx, doer, { did, subject: 'Firing', subjectId: firingId, facts });
    return ok({ number });
  });
}

/**
 * Writes down what a kiln reads, for good. Without a time it is read now.
 *
 * @returns refuses, in this order: not allowed, then as {@link decideReading}
 */
export async function noteReading(
  doer: Doer,
  input: NoteReadingInput,
): Promise<Result<{ number: number }, NotAllowed | ReadingRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'studio.move');
  if (!allowed.ok) return allowed;
  const { requestKey, firingId, ...reading } = input;
  const command = commandOf(doer, 'noteReading', requestKey, { firingId, ...reading });
  return onceOnly<{ number: number }, ReadingRefusal>(command, async (tx) => {
    const firing = await loadFiringToChange(tx, { id: firingId });
    const at = await readAt(tx, doer, reading);
    const decided = decideReading(firing, at, doer.at);
    if (!decided.ok) return decided;
    const { celsius, note } = reading;
    await tx.firingReading.create({
      data: { firingId, at, celsius, note, staffId: doer.actor.id },
    });
    const number = firing?.number ?? 0;
    const facts = { number, celsius, at: at.toISOString(), note };
    const did = 'wrote down what a kiln read';
    await recordAudit(tx, doer, { did, subject: 'Firing', subjectId: firingId, facts });
    return ok({ number });
  });
}

async function readAt(
  tx: Tx,
  doer: Doer,
  { on, time }: { on: Day | null; time: string | null },
): Promise<Date> {
  if (time === null) return doer.at;
  const { timeZone } = await getGallery(tx);
  return instantOf(on ?? (await todayOf(tx, doer)), time, timeZone);
}
