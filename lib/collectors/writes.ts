import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { CollectorFields, KeepCollectorInput } from './input';
import { livingId } from './reads/group';
import type { CollectorRefusal } from './rules';

/**
 * Adds a collector to the address book, or changes the one whose id it carries.
 *
 * @returns the collector's id; refuses, in this order: not allowed, a key used for something else,
 *   nobody with that id
 * @example the same form sent twice adds one collector, and answers the same id
 */
export async function keepCollector(
  doer: Doer,
  input: KeepCollectorInput,
): Promise<Result<{ collectorId: string }, CollectorRefusal | NotAllowed | KeyRefusal>> {
  const allowed = allow(doer.actor, 'collectors.write');
  if (!allowed.ok) return allowed;
  const { requestKey, collectorId, ...fields } = input;
  const command = {
    key: requestKey,
    name: 'keepCollector',
    staffId: doer.actor.id,
    input,
    at: doer.at,
  };
  return onceOnly(command, async (tx) => {
    if (collectorId !== null) return changeCollector(tx, doer, { collectorId, fields });
    return ok({ collectorId: await addCollector(tx, doer, fields) });
  });
}

/** What is kept of somebody; the firm may be left out. */
type FieldsToKeep = CollectorFields & { firm?: string | null };

/**
 * Adds a collector in the caller's transaction; the caller has asked whether the doer may. The
 * audit names nobody: it is never changed, and somebody may ask to be struck out.
 *
 * @param fields the way to reach them may be null throughout: "not known yet"
 * @returns the new collector's id
 * @example addCollector(tx, doer, collectorFields.parse({ name: 'Wren Alder' }))
 */
export async function addCollector(tx: Tx, doer: Doer, fields: FieldsToKeep): Promise<string> {
  const id = newId();
  await tx.collector.create({ data: { id, ...fields, createdAt: doer.at }, select: { id: true } });
  await recordAudit(tx, doer, {
    did: 'added a collector',
    subject: 'Collector',
    subjectId: id,
    facts: { kind: fields.kind },
  });
  return id;
}

async function changeCollector(
  tx: Tx,
  doer: Doer,
  change: { collectorId: string; fields: FieldsToKeep },
): Promise<Result<{ collectorId: string }, CollectorRefusal>> {
  const { fields } = change;
  const collectorId = await livingId(tx, change.collectorId);
  if (!collectorId) return refuse({ code: 'unknown_collector' });
  const before = await tx.collector.findUniqueOrThrow({ where: { id: collectorId } });
  const changed = Object.entries(fields)
    .filter(([name, value]) => before[name as keyof FieldsToKeep] !== value)
    .map(([name]) => name);
  await tx.collector.update({ where: { id: collectorId }, data: fields, select: { id: true } });
  await recordAudit(tx, doer, {
    did: 'changed a collector',
    subject: 'Collector',
    subjectId: collectorId,
    facts: { changed },
  });
  return ok({ collectorId });
}
