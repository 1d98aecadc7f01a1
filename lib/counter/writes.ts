import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { KeptSlip } from './reads/slip-row';
import type { AnyCounterRefusal, CounterRefusal } from './rules/refusals';
import type { LineToPut } from './rules/slip';
import { findOpenSlip, keepSlip, openSlip } from './writes/keep-slip';
import { putLinesOn } from './writes/put-on';

/** The slip on which something was put; its page is `/counter?slip=` with that id. */
export type OnSlip = { slipId: string };

/** What is put on a slip, and on which. */
export type ToPutOn = {
  requestKey: string;
  /** Null opens a new slip; so does an id that no slip has yet. */
  slipId: string | null;
  line: LineToPut | readonly LineToPut[];
  /** Whose name goes on it, if nobody's is. */
  collectorId?: string | null;
};

/**
 * Puts a line, or several, on a slip: from the counter, and from any page that asks for money
 * (a layaway, an order, a hold). Lines that others put on it meanwhile stay.
 *
 * @returns the slip; refuses, in this order: not allowed, a key used for something else, a slip
 *   that was sold or thrown away, a collector nobody knows, a slip that is full, a card's number in
 *   its words
 */
export async function putOnSlip(
  doer: Doer,
  input: ToPutOn,
): Promise<Result<OnSlip, AnyCounterRefusal>> {
  const allowed = allow(doer.actor, 'counter.sell');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...said } = input;
  const command = { key, name: 'putOnSlip', staffId: doer.actor.id, input: said, at: doer.at };
  return onceOnly<OnSlip, CounterRefusal>(command, (tx) => put(tx, doer, input));
}

async function put(
  tx: Tx,
  doer: Doer,
  { slipId, line, collectorId }: ToPutOn,
): Promise<Result<OnSlip, CounterRefusal>> {
  const opened = await openOrFind(tx, doer, slipId);
  if (!opened.ok) return opened;
  const slip = opened.value;
  const forWhom = slip.collectorId ?? collectorId ?? null;
  if (forWhom !== slip.collectorId && !(await isCollector(tx, forWhom))) {
    return refuse({ code: 'unknown_collector', collectorId: forWhom ?? '' });
  }
  const content = await putLinesOn(tx, { ...slip, collectorId: forWhom }, [line].flat());
  if (!content.ok) return content;
  const kept = await keepSlip(tx, doer, slip, { content: content.value, collectorId: forWhom });
  return kept.ok ? ok({ slipId: slip.id }) : kept;
}

async function openOrFind(
  tx: Tx,
  doer: Doer,
  slipId: string | null,
): Promise<Result<KeptSlip, CounterRefusal>> {
  if (slipId === null) return ok(await openSlip(tx, doer, null));
  const found = await findOpenSlip(tx, slipId, null);
  if (found.ok || found.refusal.code !== 'unknown_slip') return found;
  return ok(await openSlip(tx, doer, slipId));
}

async function isCollector(tx: Tx, id: string | null): Promise<boolean> {
  if (id === null) return true;
  return (await tx.collector.findUnique({ where: { id }, select: { id: true } })) !== null;
}
