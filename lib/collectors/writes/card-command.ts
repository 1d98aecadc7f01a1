import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { refuse, type Result } from '@/lib/platform/result';
import { readGroup, type Group } from '../reads/group';
import type { CardRefusal } from '../rules/card';

/** What a command on a collector's card answers: the id of what was written. */
export type Carded = Promise<Result<string, CardRefusal>>;

type Asked = { requestKey: string; collectorId: string };

/**
 * Runs one command on a collector's card: may they, once only, and whose card it is.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, nobody with that id
 *   or one who was struck out, and then what the work refuses
 */
export async function cardCommand(
  doer: Doer,
  { name, input }: { name: string; input: Asked },
  work: (tx: Tx, group: Group) => Carded,
): Carded {
  const may = allow(doer.actor, 'collectors.write');
  if (!may.ok) return may;
  const { requestKey: key, ...asked } = input;
  const command = { key, name, staffId: doer.actor.id, input: asked, at: doer.at };
  return onceOnly<string, CardRefusal>(command, async (tx) => {
    const group = await readGroup(tx, input.collectorId);
    if (!group || group.erasedAt !== null) return refuse({ code: 'unknown_collector' });
    return work(tx, group);
  });
}

/** A line in the audit about a card: it says what was done, and never whom it names. */
export async function tellCard(
  tx: Tx,
  doer: Doer,
  told: { collectorId: string; did: string; facts?: Record<string, string | boolean> },
): Promise<void> {
  const { collectorId: subjectId, did, facts = {} } = told;
  await recordAudit(tx, doer, { did, subject: 'Collector', subjectId, facts });
}
