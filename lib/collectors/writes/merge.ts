import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { MergeInput, SetApartInput } from '../input/merge';
import { readTradeTerms } from '../reads/trade';
import { livingOf, mayMerge, type MergeRefusal, type ToMerge } from '../rules/merge';

type Merged = Promise<Result<string, MergeRefusal>>;

/**
 * Finds two entries of the address book to be one: the other is looked up at the kept one from now
 * on. Nothing is moved and nothing is lost: each row stays where it was written.
 *
 * @returns the kept one's id; refuses, in this order: not allowed, a key used for something else,
 *   one that nobody knows or that was struck out, and then what {@link mayMerge} refuses
 * @example two who merge the same pair at once: one wins, the other is told
 */
export async function mergeCollectors(doer: Doer, input: MergeInput): Merged {
  const { requestKey, oneId, otherId, keep: keptId } = input;
  const goneId = keptId === oneId ? otherId : oneId;
  const command = { requestKey, name: 'mergeCollectors', asked: { keptId, goneId } };
  return mergeCommand(doer, command, async (tx) => {
    const [kept, gone] = [await findToMerge(tx, keptId), await findToMerge(tx, goneId)];
    if (!kept || !gone) return refuse({ code: 'unknown_collector' });
    const may = mayMerge(kept, gone);
    if (!may.ok) return may;
    // Those that were laid into the other before go with it, and only then the other itself.
    await tx.collector.updateMany({
      where: { mergedIntoId: goneId },
      data: { mergedIntoId: keptId },
    });
    await tx.collector.update({
      where: { id: goneId },
      data: { mergedIntoId: keptId },
      select: { id: true },
    });
    const mergeId = newId();
    const row = { id: mergeId, keptId, goneId, staffId: doer.actor.id, at: doer.at };
    await tx.collectorMerge.create({ data: row, select: { id: true } });
    await tell(tx, doer, { did: 'found two collectors to be one', keptId, goneId });
    return ok(keptId);
  });
}

/**
 * Sets two apart again that were found to be one: each has what was written under it, and those
 * that were laid into the other before are the other's again. What was written since the merge
 * stays with the kept one.
 *
 * @returns the other's id; refuses, in this order: not allowed, a key used for something else, a
 *   merge that was undone already, one of somebody who was struck out
 */
export async function setApart(doer: Doer, input: SetApartInput): Merged {
  const { requestKey, mergeId } = input;
  const command = { requestKey, name: 'setApart', asked: { mergeId } };
  return mergeCommand(doer, command, async (tx) => {
    const merge = await tx.collectorMerge.findUnique({ where: { id: mergeId, undoneAt: null } });
    if (!merge) return refuse({ code: 'set_apart_already' });
    const { keptId, goneId } = merge;
    const gone = await tx.collector.findUniqueOrThrow({
      where: { id: goneId },
      select: { erasedAt: true, mergedIntoId: true },
    });
    if (gone.erasedAt !== null) return refuse({ code: 'unknown_collector' });
    await tx.collectorMerge.update({
      where: { id: mergeId },
      data: { undoneAt: doer.at },
      select: { id: true },
    });
    await lookUpAnew(tx, { goneId, livingId: gone.mergedIntoId ?? keptId });
    await tell(tx, doer, { did: 'set two collectors apart again', keptId, goneId });
    return ok(goneId);
  });
}

/** Lets the one set apart stand for itself, with those that had been laid into it. */
async function lookUpAnew(
  tx: Tx,
  { goneId, livingId }: { goneId: string; livingId: string },
): Promise<void> {
  const laid = await tx.collectorMerge.findMany({
    where: { undoneAt: null },
    select: { keptId: true, goneId: true },
  });
  const others = await tx.collector.findMany({
    where: { mergedIntoId: livingId },
    select: { id: true },
  });
  const living = livingOf(
    others.map(({ id }) => id),
    laid,
  );
  await tx.collector.update({
    where: { id: goneId },
    data: { mergedIntoId: null },
    select: { id: true },
  });
  const withIt = [...living].flatMap(([id, under]) =>
    under === goneId && id !== goneId ? [id] : [],
  );
  await tx.collector.updateMany({
    where: { id: { in: withIt } },
    data: { mergedIntoId: goneId },
  });
}

async function findToMerge(tx: Tx, id: string): Promise<ToMerge | null> {
  const row = await tx.collector.findUnique({
    where: { id, erasedAt: null },
    select: { name: true, mergedInto: { select: { name: true } } },
  });
  if (!row) return null;
  const terms = await readTradeTerms(tx, id);
  return { id, name: row.name, terms, mergedIntoName: row.mergedInto?.name ?? null };
}

type Told = { did: string; keptId: string; goneId: string };

async function tell(tx: Tx, doer: Doer, { did, keptId, goneId }: Told): Promise<void> {
  const facts = { keptId, goneId };
  await recordAudit(tx, doer, { did, subject: 'Collector', subjectId: keptId, facts });
}

type Asked = { requestKey: string; name: string; asked: Record<string, unknown> };

async function mergeCommand(
  doer: Doer,
  { requestKey: key, name, asked }: Asked,
  work: (tx: Tx) => Merged,
): Merged {
  const may = allow(doer.actor, 'collectors.merge');
  if (!may.ok) return may;
  const command = { key, name, staffId: doer.actor.id, input: asked, at: doer.at };
  return onceOnly<string, MergeRefusal>(command, work);
}
