import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay, dayFromDate, dayOf, type Day } from '@/lib/dates/rules';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { AddMouldInput, RecordCastsInput, RetireMouldInput } from '../input/moulds';
import type { MouldFace, MouldKind, MouldRefusal } from '../rules/moulds';
import { sourceFits } from './mould-source';

type MouldAnswer = Promise<Result<{ code: string }, MouldRefusal>>;

/** A mould to write down: a working one, made from nobody knows what, unless it says otherwise. */
export type MouldToAdd = Omit<AddMouldInput, 'kind' | 'fromId' | 'slipMl'> &
  Partial<Pick<AddMouldInput, 'kind' | 'fromId' | 'slipMl'>>;

/**
 * Writes a mould down.
 *
 * @returns refuses, in this order: not allowed, an unknown design, a code that is another
 *   mould's, a day that is still to come, then what it cannot have been made from
 */
export async function addMould(doer: Doer, { requestKey, ...input }: MouldToAdd): MouldAnswer {
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
    const { kind = 'working', fromId = null } = input;
    const fits = await sourceFits(tx, { designId, kind, fromId });
    if (!fits.ok) return fits;
    const id = newId();
    await tx.mould.create({ data: { ...input, id, madeOn: dateFromDay(madeOn) } });
    const { lifeCasts, begunWith } = input;
    const facts = { code, kind, lifeCasts, begunWith };
    await audit(tx, doer, { did: 'wrote a mould down', id, facts });
    return ok({ code });
  });
}

/**
 * Writes down what was cast from a mould; makers do, and whoever keeps the catalogue.
 *
 * @returns refuses, in this order: not allowed, an unknown mould, one that is retired, a model or a
 *   master, one that is broken, a day that is still to come, a day before it was made
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
  const { code, madeOn, kind, face } = mould.value;
  const { mouldId, casts, on, jobId = null } = cast;
  if (kind !== 'working') return refuse({ code: 'not_cast_from', kind });
  if (face === 'broken') return refuse({ code: 'mould_is_broken' });
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

/** A mould that is in use. */
export type MouldInUse = {
  code: string;
  designId: string;
  kind: MouldKind;
  madeOn: Day;
  face: MouldFace | null;
};

/**
 * Finds a mould that is in use; joins the caller's transaction.
 *
 * @returns refuses, in this order: an unknown mould, one that is retired
 */
export async function findInUse(tx: Tx, id: string): Promise<Result<MouldInUse, MouldRefusal>> {
  const mould = await tx.mould.findUnique({
    where: { id },
    select: {
      ...{ code: true, designId: true, kind: true, madeOn: true, retiredOn: true },
      looks: {
        select: { face: true },
        orderBy: [{ lookedOn: 'desc' }, { at: 'desc' }, { id: 'desc' }],
        take: 1,
      },
    },
  });
  if (!mould) return refuse({ code: 'unknown_mould' });
  const { code, designId, kind, retiredOn, looks } = mould;
  if (retiredOn) return refuse({ code: 'retired_already', retiredOn: dayFromDate(retiredOn) });
  const face = looks[0]?.face ?? null;
  return ok({ code, designId, kind, face, madeOn: dayFromDate(mould.madeOn) });
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
