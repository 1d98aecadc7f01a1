import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { findForWriting, tellHistory } from '@/lib/commissions/writes/carry-out';
import { dateFromDay, dayFromDate, type Day } from '@/lib/dates/rules';
import type { MendSnagInput, WriteSnagInput } from '@/lib/installation/input/work/snags';
import type { AnyWorkRefusal } from '@/lib/installation/rules/work/refusals';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** Something that is still to be put right, who puts it right, and by when. */
export type SnagToAdd = {
  commissionId: string;
  appointmentId: string | null;
  words: string;
  mendById: string;
  mendByOn: Day;
  /** The day on which a device wrote it; today where nothing is said. */
  writtenOn?: Day;
};

/** Whose commission a snag belongs to. */
export type SnagTold = { snagId: string; commissionNumber: number };

/**
 * Writes down what is still to be put right of a piece that hangs, or is to hang.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown commission,
 *   ended early, nobody who works here puts it right, a day that has passed
 */
export async function writeSnag(
  doer: Doer,
  input: WriteSnagInput,
): Promise<Result<SnagTold, AnyWorkRefusal>> {
  const allowed = allow(doer.actor, 'installation.do');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...snag } = input;
  const command = { key, name: 'writeSnag', staffId: doer.actor.id, input: snag, at: doer.at };
  return onceOnly<SnagTold, AnyWorkRefusal>(command, (tx) =>
    addSnag(tx, doer, { ...snag, appointmentId: null }),
  );
}

/** The step of {@link writeSnag}: joins the caller's transaction, asks nobody for leave. */
export async function addSnag(
  tx: Tx,
  doer: Doer,
  snag: SnagToAdd,
): Promise<Result<SnagTold, AnyWorkRefusal>> {
  const { commissionId, appointmentId, words, mendById, mendByOn } = snag;
  const found = await findForWriting(tx, doer, commissionId);
  if (!found.ok) return found;
  const { facts, today, number } = found.value;
  if (facts.ending) return refuse({ code: 'ended_early', endedOn: facts.ending.endedOn });
  const mender = await tx.staff.findUnique({ where: { id: mendById }, select: { active: true } });
  if (!mender?.active) return refuse({ code: 'unknown_mender' });
  if (mendByOn < (snag.writtenOn ?? today))
    return refuse({ code: 'mended_before_today', on: mendByOn });
  const { id } = await tx.snag.create({
    data: {
      ...{ commissionId, appointmentId, words, mendById },
      mendByOn: dateFromDay(mendByOn),
      staffId: doer.actor.id,
      at: doer.at,
    },
    select: { id: true },
  });
  const told = { commissionId, facts: { words, mendById, mendByOn } };
  await tellHistory(tx, doer, { ...told, did: 'wrote down a snag' });
  return ok({ snagId: id, commissionNumber: number });
}

/**
 * Says that a snag was put right, once.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, put right
 *   already, a day to come
 */
export async function mendSnag(
  doer: Doer,
  input: MendSnagInput,
): Promise<Result<SnagTold, AnyWorkRefusal>> {
  const allowed = allow(doer.actor, 'installation.do');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...mended } = input;
  const command = { key, name: 'mendSnag', staffId: doer.actor.id, input: mended, at: doer.at };
  return onceOnly<SnagTold, AnyWorkRefusal>(command, (tx) => addMending(tx, doer, mended));
}

async function addMending(
  tx: Tx,
  doer: Doer,
  { snagId, words, on }: Omit<MendSnagInput, 'requestKey'>,
): Promise<Result<SnagTold, AnyWorkRefusal>> {
  const snag = await tx.snag.findUnique({
    where: { id: snagId },
    select: { commissionId: true, words: true, mended: { select: { on: true } } },
  });
  if (!snag) return refuse({ code: 'unknown_snag' });
  if (snag.mended) return refuse({ code: 'mended_already', on: dayFromDate(snag.mended.on) });
  const { commissionId } = snag;
  const found = await findForWriting(tx, doer, commissionId);
  if (!found.ok) return found;
  if (on > found.value.today) return refuse({ code: 'day_to_come', on });
  await tx.snagMended.create({
    data: { snagId, words, on: dateFromDay(on), staffId: doer.actor.id, at: doer.at },
    select: { snagId: true },
  });
  const facts = { snag: snag.words, words, on };
  await tellHistory(tx, doer, { commissionId, did: 'put a snag right', facts });
  return ok({ snagId, commissionNumber: found.value.number });
}
