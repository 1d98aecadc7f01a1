import type { Doer } from '@/lib/access/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { collectors } from './scenario/collectors';

/** Writes the demo's collectors; their ids by name. */
export async function addCollectors(tx: Tx, doer: Doer): Promise<Map<string, string>> {
  const rows = collectors.map(({ kind, name, street, city, note }, place) => ({
    ...{ id: newId(), kind, name, street, city, note },
    state: 'Alderland',
    postcode: `000${String(14 + (place % 5)).padStart(2, '0')}`,
    phone: `(555) 010-0${String(150 + place)}`,
    email: `${name.toLowerCase().replaceAll(/[^a-z]+/g, '.')}@collector.example`,
    createdAt: doer.at,
  }));
  await tx.collector.createMany({ data: rows });
  return new Map(rows.map((row) => [row.name, row.id]));
}
