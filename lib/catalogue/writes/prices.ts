import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay, dayFromDate, dayOf } from '@/lib/dates/rules';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type {
  CallOffPriceInput,
  ChangePriceInput,
  RaisePricesInput,
  TickTagsInput,
} from '../input/prices';
import { raisedMost, readRaise } from '../reads/raise';
import type { PriceRefusal } from '../rules/prices';
import { setPrices } from './set-prices';

/**
 * Sets the price of one piece from a day on; until its tag is written anew it stays on the list of
 * tags.
 *
 * @returns refuses, in this order: not allowed, an unknown piece, a day that is over, the price
 *   that it has on that day already
 */
export async function changePrice(
  doer: Doer,
  { requestKey, ...input }: ChangePriceInput,
): Promise<Result<{ code: string }, PriceRefusal>> {
  const allowed = allow(doer.actor, 'catalogue.price');
  if (!allowed.ok) return allowed;
  const command = commandOf(doer, 'changePrice', requestKey, input);
  return onceOnly<{ code: string }, PriceRefusal>(command, async (tx) => {
    const { skuId, priceCents, fromOn, reason } = input;
    const sku = await tx.sku.findUnique({ where: { id: skuId }, select: { code: true } });
    if (!sku) return refuse({ code: 'unknown_piece' });
    const todayOn = await today(tx, doer);
    if (fromOn < todayOn) return refuse({ code: 'in_the_past', todayOn });
    const [{ now }] = await tx.$queryRaw<[{ now: bigint }]>`
      SELECT price_on(${skuId}::uuid, ${fromOn}::date) AS now`;
    if (now === priceCents) return refuse({ code: 'same_price' });
    await setPrices(tx, doer, { prices: [{ skuId, priceCents }], fromOn, reason });
    const facts = { code: sku.code, priceCents, beforeCents: now, fromOn, reason };
    const did = 'set a price';
    await recordAudit(tx, doer, { did, subject: 'Sku', subjectId: skuId, facts });
    return ok({ code: sku.code });
  });
}

/**
 * Raises (or lowers) the prices of many pieces from a day on, exactly as they were shown.
 *
 * @returns how many changed; refuses, in this order: not allowed, a day that is over, too many
 *   pieces, no price that would change, a price that changed since it was shown
 */
export async function raisePrices(
  doer: Doer,
  { requestKey, ...input }: RaisePricesInput,
): Promise<Result<{ changed: number }, PriceRefusal>> {
  const allowed = allow(doer.actor, 'catalogue.price');
  if (!allowed.ok) return allowed;
  const command = commandOf(doer, 'raisePrices', requestKey, input);
  return onceOnly<{ changed: number }, PriceRefusal>(command, async (tx) => {
    const { fromOn, reason, shownSha256, ...wish } = input;
    const todayOn = await today(tx, doer);
    if (fromOn < todayOn) return refuse({ code: 'in_the_past', todayOn });
    const { prices, sha256 } = await readRaise(tx, wish, fromOn);
    if (prices.length > raisedMost) return refuse({ code: 'too_many_pieces', most: raisedMost });
    if (prices.length === 0) return refuse({ code: 'no_pieces_meant' });
    if (sha256 !== shownSha256) return refuse({ code: 'prices_moved' });
    const set = prices.map(({ skuId, newCents }) => ({ skuId, priceCents: newCents }));
    await setPrices(tx, doer, { prices: set, fromOn, reason });
    const facts = { ...wish, fromOn, reason, changed: prices.length };
    const did = 'set many prices';
    await recordAudit(tx, doer, { did, subject: 'PriceChange', subjectId: sha256, facts });
    return ok({ changed: prices.length });
  });
}

/**
 * Ticks tags off that were written anew; one that was ticked before stays so.
 *
 * @returns how many were still open; refuses who may not move pieces
 */
export async function tickTags(
  doer: Doer,
  { requestKey, skuIds }: TickTagsInput,
): Promise<Result<{ ticked: number }, PriceRefusal>> {
  const allowed = allow(doer.actor, 'stock.move');
  if (!allowed.ok) return allowed;
  const command = commandOf(doer, 'tickTags', requestKey, { skuIds });
  return onceOnly<{ ticked: number }, PriceRefusal>(command, async (tx) => {
    const todayOn = await today(tx, doer);
    const open = {
      skuId: { in: skuIds },
      fromOn: { lte: dateFromDay(todayOn) },
      tagDoneAt: null,
    };
    const select = { skuId: true };
    const done = { tagDoneAt: doer.at, tagDoneById: doer.actor.id };
    const rows = await tx.priceChange.updateManyAndReturn({ where: open, data: done, select });
    const ticked = new Set(rows.map((row) => row.skuId));
    const facts = { tags: ticked.size };
    const did = 'wrote tags anew';
    const subjectId = skuIds[0] ?? '';
    await recordAudit(tx, doer, { did, subject: 'PriceChange', subjectId, facts });
    return ok({ ticked: ticked.size });
  });
}

/**
 * Calls off a price that is still to come.
 *
 * @returns refuses, in this order: not allowed, a price that is not there any more, one that holds
 *   already
 */
export async function callOffPrice(
  doer: Doer,
  { requestKey, changeId }: CallOffPriceInput,
): Promise<Result<{ code: string }, PriceRefusal>> {
  const allowed = allow(doer.actor, 'catalogue.price');
  if (!allowed.ok) return allowed;
  const command = commandOf(doer, 'callOffPrice', requestKey, { changeId });
  return onceOnly<{ code: string }, PriceRefusal>(command, async (tx) => {
    const change = await tx.priceChange.findUnique({
      where: { id: changeId },
      select: { fromOn: true, priceCents: true, skuId: true, sku: { select: { code: true } } },
    });
    if (!change) return refuse({ code: 'unknown_piece' });
    const fromOn = dayFromDate(change.fromOn);
    if (fromOn <= (await today(tx, doer))) return refuse({ code: 'holds_already' });
    await tx.priceChange.delete({ where: { id: changeId } });
    const { priceCents, skuId, sku } = change;
    const facts = { code: sku.code, priceCents, fromOn };
    const did = 'called a price off';
    await recordAudit(tx, doer, { did, subject: 'Sku', subjectId: skuId, facts });
    return ok({ code: sku.code });
  });
}

async function today(tx: Tx, doer: Doer) {
  const { timeZone } = await getGallery(tx);
  return dayOf(doer.at, timeZone);
}

function commandOf(doer: Doer, name: string, key: string, input: unknown) {
  return { key, name, staffId: doer.actor.id, input, at: doer.at };
}
