import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { livingId } from '@/lib/collectors/reads/group';
import type { Cents } from '@/lib/money/rules';
import { inTransaction, onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import { changeCents, type TenderOffered } from '@/lib/sales/rules/tenders';
import { readSlipFacts } from './reads/facts';
import type { KeptSlip } from './reads/slip-row';
import type { SlipChange } from './rules/change';
import { decideSlip } from './rules/decide';
import type { AnyCounterRefusal, CounterRefusal } from './rules/refusals';
import type { LineToPut } from './rules/slip';
import { decideChange, type RowChange } from './writes/change';
import { findOpenSlip, keepSlip, openSlip, readWhereToSell } from './writes/keep-slip';
import { putLinesOn } from './writes/put-on';
import { readCreditsOffered, recordSlip, withLastSold } from './writes/sell';

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
  const placeId = await readWhereToSell(doer);
  return onceOnly<OnSlip, CounterRefusal>(command, (tx) => put(tx, doer, input, placeId));
}

async function put(
  tx: Tx,
  doer: Doer,
  { slipId, line, collectorId }: ToPutOn,
  placeId: string,
): Promise<Result<OnSlip, CounterRefusal>> {
  const opened = await openOrFind(tx, doer, slipId, placeId);
  if (!opened.ok) return opened;
  const slip = opened.value;
  const asked = slip.collectorId === null ? (collectorId ?? null) : null;
  const forWhom = asked === null ? slip.collectorId : await livingId(tx, asked);
  if (asked !== null && forWhom === null) {
    return refuse({ code: 'unknown_collector', collectorId: asked });
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
  placeId: string,
): Promise<Result<KeptSlip, CounterRefusal>> {
  if (slipId === null) return ok(await openSlip(tx, doer, { id: null, placeId }));
  const found = await findOpenSlip(tx, slipId, null);
  if (found.ok || found.refusal.code !== 'unknown_slip') return found;
  return ok(await openSlip(tx, doer, { id: slipId, placeId }));
}

/** A change of one slip, and which state of it the person had before them. */
export type ToChange = {
  requestKey: string;
  slipId: string;
  version: number;
  change: SlipChange | RowChange;
};

/**
 * Changes a slip: how many, a discount, how it leaves, whose name is on it, set aside or taken up.
 *
 * @returns the slip; refuses, in this order: not allowed, a key used for something else, a slip that
 *   is unknown, sold, thrown away or changed meanwhile, and then what the change itself is refused
 */
export async function changeOnSlip(
  doer: Doer,
  input: ToChange,
): Promise<Result<OnSlip, AnyCounterRefusal>> {
  const allowed = allow(doer.actor, 'counter.sell');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...said } = input;
  const command = { key, name: 'changeOnSlip', staffId: doer.actor.id, input: said, at: doer.at };
  return onceOnly<OnSlip, CounterRefusal>(command, async (tx) => {
    const slip = await findOpenSlip(tx, input.slipId, input.version);
    if (!slip.ok) return slip;
    const decided = await decideChange(tx, doer, slip.value, input.change);
    if (!decided.ok) return decided;
    const kept = await keepSlip(tx, doer, slip.value, decided.value);
    return kept.ok ? ok({ slipId: input.slipId }) : kept;
  });
}

/**
 * Throws away a slip that was never sold; it is no longer listed.
 *
 * @returns refuses, in this order: not allowed, unknown, sold, thrown away already
 */
export async function throwSlipAway(
  doer: Doer,
  slipId: string,
): Promise<Result<OnSlip, AnyCounterRefusal>> {
  const allowed = allow(doer.actor, 'counter.sell');
  if (!allowed.ok) return allowed;
  return inTransaction<OnSlip, CounterRefusal>(async (tx) => {
    const slip = await findOpenSlip(tx, slipId, null);
    if (!slip.ok) return slip;
    await tx.slip.update({ where: { id: slipId }, data: { thrownAwayAt: doer.at } });
    const { asideAs, content } = slip.value;
    await recordAudit(tx, doer, {
      did: 'threw a slip away',
      subject: 'Slip',
      subjectId: slipId,
      facts: { asideAs, lines: content.lines.length },
    });
    return ok({ slipId });
  });
}

/** A slip that is to be sold, and how it is paid. */
export type SlipToSell = {
  requestKey: string;
  slipId: string;
  /** The state of the slip that the person had before them. */
  slipVersion: number;
  tenders: readonly TenderOffered[];
  /** The total that was shown when the money was taken. */
  expectedTotalCents: Cents;
};

/** What the counter is told: where the receipt is, and what goes back, in cents as text. */
export type SoldAnswer = { saleId: string; number: number; total: string; change: string };

/**
 * Sells a slip: pieces leave, the money is told, the books know it, in one transaction. Prices,
 * rates, holds and stock are read again inside it.
 *
 * @returns the receipt's number; refuses, in this order: not allowed, a key used for something else,
 *   a slip that is unknown, sold already, thrown away or changed meanwhile, a fair that is over, and
 *   then what {@link decideSlip} refuses, and what a commission refuses of its payment
 */
export async function sellSlip(
  doer: Doer,
  input: SlipToSell,
): Promise<Result<SoldAnswer, AnyCounterRefusal>> {
  const allowed = allow(doer.actor, 'counter.sell');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...said } = input;
  const command = { key, name: 'sellSlip', staffId: doer.actor.id, input: said, at: doer.at };
  return onceOnly<SoldAnswer, CounterRefusal>(command, (tx) => sell(tx, doer, input));
}

async function sell(
  tx: Tx,
  doer: Doer,
  input: SlipToSell,
): Promise<Result<SoldAnswer, CounterRefusal>> {
  const slip = await findOpenSlip(tx, input.slipId, input.slipVersion);
  if (!slip.ok) return slip;
  const read = await readSlipFacts(tx, doer, await getGallery(tx), slip.value);
  if (!read) return refuse({ code: 'unknown_place' });
  const { facts } = read;
  const credits = await readCreditsOffered(tx, input.tenders, facts.on);
  const decided = decideSlip(slip.value.content, facts, { ...input, credits });
  if (!decided.ok) return refuse(await withLastSold(tx, decided.refusal, facts));
  const sold = await recordSlip(tx, doer, { ...decided.value, ...read, slip: slip.value });
  if (!sold.ok) return sold;
  const { saleId, number } = sold.value;
  await tx.slip.update({
    where: { id: slip.value.id },
    data: { saleId, version: slip.value.version + 1, changedAt: doer.at, asideAs: null },
  });
  const { totalCents, tenders } = decided.value.sale;
  return ok({ saleId, number, total: `${totalCents}`, change: `${changeCents(tenders)}` });
}
