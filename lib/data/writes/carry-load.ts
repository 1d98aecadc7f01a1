import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { allow } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { db } from '@/lib/platform/db/client';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { planFile, type FilePlan } from '../reads/plan-file';
import { loadCountsWords, fileKinds, type LoadCounts } from '../rules/plan';
import { dataRefusalMessage, type DataRefusal } from '../rules/refusals';
import { bringPeople } from './bring-people';
import { bringSales } from './bring-sales';
import { noteEnd, noteProgress } from './progress';

/** How many rows go between two looks at whether to stop. */
const rowsAtOnce = 250;
/** A hundred thousand rows on a slow disk get half an hour. */
const loadLimits = { timeoutMs: 1_800_000 };

/** What was said yes to. */
export type LoadAgreed = { loadId: string; planSha256: string; leaveRefusedOut: boolean };

/**
 * Brings a file in that was begun, whole or not at all: one transaction, in batches, telling how
 * far it is on a connection of its own. Its answer is kept with the rows themselves, so that after
 * a process that was ended either all of it is there or nothing.
 *
 * @returns the counts; refuses, in this order: not allowed, a file that is not here, things that
 *   changed since it was looked at, refused lines that were not left out, nothing to do, stopped
 */
export async function carryLoad(
  doer: Doer,
  agreed: LoadAgreed,
): Promise<Result<LoadCounts, DataRefusal>> {
  const allowed = allow(doer.actor, 'data.bring_in');
  if (!allowed.ok) return allowed;
  const { loadId } = agreed;
  const command = {
    ...{ key: loadId, name: 'carryLoad', staffId: doer.actor.id, input: agreed, at: doer.at },
  };
  const carried = await onceOnly<LoadCounts, DataRefusal>(
    command,
    (tx) => bringIn(tx, doer, agreed),
    loadLimits,
  ).catch(async (fault: unknown) => {
    await noteEnd(loadId, 'It could not be brought in; nothing was kept.');
    throw fault;
  });
  const words = carried.ok
    ? `It was brought in: ${loadCountsWords(carried.value)}`
    : dataRefusalMessage(carried.refusal);
  await noteEnd(loadId, words);
  return carried;
}

async function bringIn(
  tx: Tx,
  doer: Doer,
  agreed: LoadAgreed,
): Promise<Result<LoadCounts, DataRefusal>> {
  // On the other connection: what is written there while this goes on must not be in its way.
  const load = await db().dataLoad.findUnique({
    where: { id: agreed.loadId },
    select: { kind: true, fileName: true, file: { select: { bytes: true } } },
  });
  const kind = fileKinds.find((each) => each === load?.kind);
  if (!load || !kind) return refuse({ code: 'unknown_load' });
  const planned = await planFile(tx, { kind, bytes: load.file.bytes, now: doer.at });
  if (!planned.ok) return planned;
  const { counts, planSha256 } = planned.value;
  if (planSha256 !== agreed.planSha256) return refuse({ code: 'things_changed' });
  if (counts.refusedLines > 0 && !agreed.leaveRefusedOut) {
    return refuse({ code: 'lines_refused', lines: counts.refusedLines });
  }
  if (counts.newLines + counts.changedLines === 0) return refuse({ code: 'nothing_to_do' });
  const brought = await inBatches(tx, doer, planned.value, agreed.loadId);
  if (!brought.ok) return brought;
  await recordAudit(tx, doer, {
    did: 'brought in a file',
    subject: 'DataLoad',
    subjectId: agreed.loadId,
    facts: { kind, fileName: load.fileName, ...counts },
  });
  return ok(counts);
}

async function inBatches(
  tx: Tx,
  doer: Doer,
  planned: FilePlan,
  loadId: string,
): Promise<Result<true, DataRefusal>> {
  let linesDone = 0;
  for (let from = 0; from < planned.plan.length; from += rowsAtOnce) {
    if (await noteProgress(loadId, linesDone)) return refuse({ code: 'stopped' });
    const until = from + rowsAtOnce;
    if (planned.kind === 'people') {
      const rows = planned.plan.slice(from, until);
      await bringPeople(tx, doer, rows);
      linesDone += rows.length;
    } else {
      const rows = planned.plan.slice(from, until);
      await bringSales(tx, doer, rows);
      linesDone += rows.reduce((sum, row) => sum + row.lines, 0);
    }
  }
  return (await noteProgress(loadId, linesDone)) ? refuse({ code: 'stopped' }) : ok(true);
}
