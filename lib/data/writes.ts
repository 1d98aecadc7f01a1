import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { keepFile } from '@/lib/files/writes';
import { inTransaction, onceOnly } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { planFile } from './reads/plan-file';
import { loadKinds, loadNeeds, type FileKind, type LoadCounts } from './rules/plan';
import type { DataRefusal } from './rules/refusals';

/** A file of 100,000 lines is looked at in seconds; a slow disk gets two minutes. */
const lookLimits = { timeoutMs: 120_000 };

/**
 * Looks at a file: keeps it, and says what each line would do. Nothing of it is brought in.
 *
 * @returns the id to look at it again; refuses, in this order: not allowed, what
 *   {@link planFile} refuses
 */
export async function lookAtFile(
  doer: Doer,
  input: { requestKey: string; kind: FileKind; fileName: string; bytes: Uint8Array },
): Promise<Result<{ loadId: string }, DataRefusal>> {
  const allowed = allow(doer.actor, 'data.bring_in');
  if (!allowed.ok) return allowed;
  const { requestKey, kind, bytes } = input;
  const fileName = nameFrom(input.fileName);
  const command = { kind, fileName, bytes: bytes.byteLength };
  const { id: staffId } = doer.actor;
  const key = { key: requestKey, name: 'lookAtFile', staffId, input: command, at: doer.at };
  return onceOnly<{ loadId: string }, DataRefusal>(
    key,
    async (tx) => {
      const planned = await planFile(tx, { kind, bytes, now: doer.at });
      if (!planned.ok) return planned;
      const file = await keepFile(tx, { bytes, mediaType: 'text/csv', at: doer.at });
      const loadId = newId();
      const times = { startedAt: doer.at, seenAt: doer.at, endedAt: doer.at };
      const rowsTotal = linesOf(planned.value.counts);
      const names = { kind: shownKind(kind), fileId: file.id, fileName, rowsTotal };
      await tx.dataLoad.create({ data: { id: loadId, ...names, ...times, staffId } });
      return ok({ loadId });
    },
    lookLimits,
  );
}

/**
 * Begins to bring a file in that was looked at: writes down that it is under way. What follows is
 * the work of `carryLoad`.
 *
 * @returns the id under which it goes; refuses, in this order: not allowed, a file that is not here
 */
export async function beginLoad(
  doer: Doer,
  input: { requestKey: string; loadId: string },
): Promise<Result<{ loadId: string }, DataRefusal>> {
  const allowed = allow(doer.actor, 'data.bring_in');
  if (!allowed.ok) return allowed;
  const { requestKey, loadId: shownId } = input;
  const { id: staffId } = doer.actor;
  const key = { key: requestKey, name: 'beginLoad', staffId, input: { shownId }, at: doer.at };
  return onceOnly<{ loadId: string }, DataRefusal>(key, async (tx) => {
    const shown = await tx.dataLoad.findUnique({
      where: { id: shownId },
      select: { kind: true, fileId: true, fileName: true, rowsTotal: true },
    });
    const kind = shown && kindShown(shown.kind);
    if (!kind) return refuse({ code: 'unknown_load' });
    const loadId = newId();
    const { fileId, fileName, rowsTotal } = shown;
    const times = { startedAt: doer.at, seenAt: doer.at };
    const names = { kind, fileId, fileName, rowsTotal };
    await tx.dataLoad.create({ data: { id: loadId, ...names, ...times, staffId } });
    return ok({ loadId });
  });
}

/**
 * Asks a file that is under way to stop; between two batches it looks, and then nothing is kept.
 *
 * @returns refuses, in this order: a file that is not here, not allowed, one that has ended
 */
export async function askToStop(
  doer: Doer,
  input: { loadId: string },
): Promise<Result<{ loadId: string }, DataRefusal>> {
  const { loadId } = input;
  return inTransaction<{ loadId: string }, DataRefusal>(async (tx) => {
    const select = { kind: true, endedAt: true } as const;
    const load = await tx.dataLoad.findUnique({ where: { id: loadId }, select });
    const kind = loadKinds.find((each) => each === load?.kind);
    if (!load || !kind) return refuse({ code: 'unknown_load' });
    const allowed = allow(doer.actor, loadNeeds[kind]);
    if (!allowed.ok) return allowed;
    if (load.endedAt) return refuse({ code: 'ended_before' });
    const where = { id: loadId, stopAskedAt: null };
    await tx.dataLoad.updateMany({ where, data: { stopAskedAt: doer.at } });
    return ok({ loadId });
  });
}

/** A file that was only looked at is kept under another word than one that is brought in. */
function shownKind(kind: FileKind): string {
  return `${kind} shown`;
}

/** What a file holds that was looked at; null for one that is brought in, or of another sort. */
function kindShown(kind: string): FileKind | null {
  if (kind === 'people shown') return 'people';
  return kind === 'sales shown' ? 'sales' : null;
}

function linesOf(counts: LoadCounts): number {
  return counts.newLines + counts.changedLines + counts.sameLines + counts.refusedLines;
}

function nameFrom(name: string): string {
  return (name.split(/[\\/]/).at(-1) ?? '').slice(-200) || 'a file';
}
