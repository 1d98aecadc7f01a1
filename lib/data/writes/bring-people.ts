import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { recordAudits } from '@/lib/audit/writes';
import type { Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import type { PlannedPerson } from '../rules/people';

/**
 * Brings some of the people of a file into the address book, each with a line in the audit; a key
 * of the file becomes the id. Joins the caller's transaction.
 */
export async function bringPeople(
  tx: Tx,
  doer: Doer,
  plan: readonly PlannedPerson[],
): Promise<void> {
  const added = plan.flatMap((row) =>
    row.verdict === 'new' ? [{ id: row.id ?? newId(), ...row.fields }] : [],
  );
  if (added.length > 0) {
    await tx.collector.createMany({
      data: added.map((person) => ({ ...person, createdAt: doer.at })),
    });
  }
  const changed = plan.flatMap((row) => (row.verdict === 'changed' ? [row] : []));
  for (const { id, fields } of changed) {
    await tx.collector.update({ where: { id }, data: fields, select: { id: true } });
  }
  const said = { doer, subject: 'Collector' } as const;
  await recordAudits(tx, [
    ...added.map(({ id, name }) => ({
      ...{ ...said, did: 'brought in a collector', subjectId: id, facts: { name } },
    })),
    ...changed.map(({ id, fields, changes }) => ({
      ...{ ...said, did: 'changed a collector from a file', subjectId: id },
      facts: { name: fields.name, changed: changes },
    })),
  ]);
}
