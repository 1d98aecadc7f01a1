import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay, dayFromDate, dayOf, type Day } from '@/lib/dates/rules';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { AddMouldInput, RecordCastsInput, RetireMouldInput } from '../input/moulds';
import type { MouldRefusal } from '../rules/moulds';

type MouldAnswer = Promise<Result<{ code: string }, MouldRefusal>>;

/**
 * Writes a working mould down.
 *
 * @returns refuses, in this order: not allowed, an unknown design, a code that is another
 *   mould's, a day that is still to come
 */
export async function addMould(doer: Doer, { requestKey, ...input }: AddMouldInput): MouldAnswer {
  const allowed = allow(doer.actor, 'catalogue.keep');
  if (!allowed.ok) return allowed;
  const command = commandOf(doer, 'addMould', requestKey, input);
  return onceOnly<{ code: string }, MouldRefusal>(command, async (tx) => {
    const { code, designId, madeOn } = input;
    const design = await tx.design.findUnique({ where: { id: designId }, select: { id: true } });
    if (!design) return refuse({ code: 'unknown_design' });
    const taken = await tx.mould.findUnique({ where: { code }, select: { id: true } });
    if (taken) return refuse({ code: 'mould_code_taken' });
    if (madeOn > (await today(tx, doer))) return refuse({ code: 'day_to_come' });
    const id = newId();
    await tx.mould.create({ data: { ...input, id, madeOn: dateFromDay(madeOn) } });
    const { lifeCasts, begunWith } = input;
    await audit(tx, doer, { did: 'wrote a mould down', id, facts: { code, lifeCasts, begunWith } });
    return ok({ code });
  });
}

/**
 * Writes down what was cast from a mould; makers do, and whoever keeps the catalogue.
 *
 * @returns refuses, in this order: not allowed, an unknown mould, one that is retired, a day that
 *   is still to come, a day before it was made
 */
export async function recordCasts(
  doer: Doer,
  { requestKey, ...input }: RecordCastsInput,
): MouldAnswer {
  const allowed = allow(doer.actor, 'stock.move');
  if (!allowed.ok) return allowed;
  const command = commandOf(doer, 'recordCasts', requestKey, input);
  return onceOnly<{ code: string }, MouldRefusal>(command, (tx) =>
    recordCastsStep(tx, doer, input),
  );
}

/** The step of {@link recordCasts}: joins the caller's transaction, asks nobody for leave. */
export async function recordCastsStep(
  tx: Tx,
  doer: Doer,
  cast: { mouldId: string; casts: number; on: Day; jobId?: string },
): MouldAnswer {
  const mould = await findInUse(tx, cast.mouldId);
  if (!mould.ok) return mould;
  const { code, madeOn } = mould.value;
  const { mouldId, casts, on, jobId = null } = cast;
  if (on > (await today(tx, doer))) return refuse({ code: 'day_to_come' });
  if (on < madeOn) return refuse({ code: 'before_it_was_made', madeOn });
  const staffId = doer.actor.id;
  await tx.mouldCast.create({
    data: { mouldId, casts, on: dateFromDay(on), jobId, staffId, at: doer.at },
    select: { id: true },
  });
  await audit(tx, doer, { did: 'cast from a mould', id: mouldId, facts: { code, casts, on } });
  return ok({ code });
}

/**
 * Retires a mould today; its casts stay counted.
 *
 * @returns refuses, in this order: not allowed, an unknown mould, one that is retired
 */
export async function retireMould(
  doer: Doer,
  { requestKey, mouldId }: RetireMouldInput,
): MouldAnswer {
  const allowed = allow(doer.actor, 'catalogue.keep');
  if (!allowed.ok) return allowed;
  const command = commandOf(doer, 'retireMould', requestKey, { mouldId });
  return onceOnly<{ code: string }, MouldRefusal>(command, async (tx) => {
    const mould = await findInUse(tx, mouldId);
    if (!mould.ok) return mould;
    const retiredOn = await today(tx, doer);
    await tx.mould.update({
      where: { id: mouldId },
      data: { retiredOn: dateFromDay(retiredOn) },
      select: { id: true },
    });
    const { code } = mould.value;
    await audit(tx, doer, { did: 'retired a mould', id: mouldId, facts: { code, retiredOn } });
    return ok({ code });
  });
}

async function findInUse(
  tx: Tx,
  id: string,
): Promise<Result<{ code: string; madeOn: Day }, MouldRefusal>> {
  const select = { code: true, madeOn: true, retiredOn: true };
  const mould = await tx.mould.findUnique({ where: { id }, select });
  if (!mould) return refuse({ code: 'unknown_mould' });
  const { code, retiredOn } = mould;
  if (retiredOn) return refuse({ code: 'retired_already', retiredOn: dayFromDate(retiredOn) });
  return ok({ code, madeOn: dayFromDate(mould.madeOn) });
}

async function today(tx: Tx, doer: Doer): Promise<Day> {
  const { timeZone } = await getGallery(tx);
  return dayOf(doer.at, timeZone);
}

async function audit(
  tx: Tx,
  doer: Doer,
  told: { did: string; id: string; facts: Record<string, string | number> },
): Promise<void> {
  const { did, id: subjectId, facts } = told;
  await recordAudit(tx, doer, { did, subject: 'Mould', subjectId, facts });
}

function commandOf(doer: Doer, name: string, key: string, input: unknown) {
  return { key, name, staffId: doer.actor.id, input, at: doer.at };
}
