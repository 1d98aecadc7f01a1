import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay, dayOf } from '@/lib/dates/rules';
import { onceOnly } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { ChangeMouldInput, LookAtMouldInput } from '../input/moulds';
import type { MouldRefusal } from '../rules/moulds';
import { sourceFits } from './mould-source';
import { findInUse } from './moulds';

type MouldAnswer = Promise<Result<{ code: string }, MouldRefusal>>;

/**
 * Writes down how the face of a mould looked; makers do, and whoever keeps the catalogue. The last
 * look says whether more may be promised from it.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, an unknown mould, one
 *   that is retired, a day that is still to come, a day before it was made
 */
export async function lookAtMould(
  doer: Doer,
  { requestKey: key, ...input }: LookAtMouldInput,
): MouldAnswer {
  const allowed = allow(doer.actor, 'stock.move');
  if (!allowed.ok) return allowed;
  const command = { key, name: 'lookAtMould', staffId: doer.actor.id, input, at: doer.at };
  return onceOnly<{ code: string }, MouldRefusal>(command, async (tx) => {
    const { mouldId, face, note, lookedOn } = input;
    const mould = await findInUse(tx, mouldId);
    if (!mould.ok) return mould;
    const { code, madeOn } = mould.value;
    const { timeZone } = await getGallery(tx);
    if (lookedOn > dayOf(doer.at, timeZone)) return refuse({ code: 'day_to_come' });
    if (lookedOn < madeOn) return refuse({ code: 'before_it_was_made', madeOn });
    const staffId = doer.actor.id;
    await tx.mouldLook.create({
      data: { mouldId, face, note, lookedOn: dateFromDay(lookedOn), staffId, at: doer.at },
      select: { id: true },
    });
    const facts = { code, face, note, lookedOn };
    const did = 'looked at the face of a mould';
    await recordAudit(tx, doer, { did, subject: 'Mould', subjectId: mouldId, facts });
    return ok({ code });
  });
}

/**
 * Changes what is known of a mould beside its casts: what it is for, what it was made from, the slip
 * that one cast takes, the life it is trusted for.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, an unknown mould, one
 *   that is retired, then what it cannot have been made from
 */
export async function changeMould(
  doer: Doer,
  { requestKey: key, ...input }: ChangeMouldInput,
): MouldAnswer {
  const allowed = allow(doer.actor, 'catalogue.keep');
  if (!allowed.ok) return allowed;
  const command = { key, name: 'changeMould', staffId: doer.actor.id, input, at: doer.at };
  return onceOnly<{ code: string }, MouldRefusal>(command, async (tx) => {
    const { mouldId: id, ...known } = input;
    const mould = await findInUse(tx, id);
    if (!mould.ok) return mould;
    const { code, designId } = mould.value;
    const fits = await sourceFits(tx, { id, designId, kind: known.kind, fromId: known.fromId });
    if (!fits.ok) return fits;
    await tx.mould.update({ where: { id }, data: known, select: { id: true } });
    const facts = { code, ...known };
    const did = 'changed what is known of a mould';
    await recordAudit(tx, doer, { did, subject: 'Mould', subjectId: id, facts });
    return ok({ code });
  });
}
