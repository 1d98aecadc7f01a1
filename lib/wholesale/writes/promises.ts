import 'server-only';
import { allow, type Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { dateFromDay, dayFromDate, dayOf } from '@/lib/dates/rules';
import { onceOnly, type Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';
import type { EndPromiseInput, PromiseTownInput } from '../input';
import { findShop } from '../reads/towns';
import type { ShopRefusal } from '../rules';
import type { ShopAnswer } from '../writes';

/**
 * Promises a shop that no other one of its town gets our pieces, from a day on, until a day or for
 * good. Two promises for one town never overlap; capitals do not count.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, a shop that is no
 *   business among the people, a town that is promised already, with whose promise it is
 */
export async function promiseTown(
  doer: Doer,
  input: PromiseTownInput,
): Promise<ShopAnswer<{ promiseId: string }>> {
  const allowed = allow(doer.actor, 'outside.keep');
  if (!allowed.ok) return allowed;
  const { requestKey: key, ...said } = input;
  const command = { key, name: 'promiseTown', staffId: doer.actor.id, input: said, at: doer.at };
  return onceOnly<{ promiseId: string }, ShopRefusal>(command, async (tx) => {
    const shop = await findShop(tx, input.shopId);
    if (!shop) return refuse({ code: 'unknown_shop' });
    const taken = await overlapping(tx, input);
    if (taken) return refuse(taken);

    const id = newId();
    const { town, state, fromOn, untilOn } = input;
    const days = { fromOn: dateFromDay(fromOn), untilOn: untilOn && dateFromDay(untilOn) };
    await tx.townPromise.create({ data: { id, collectorId: shop.id, town, state, ...days } });
    const facts = { shop: shop.name, town, state, fromOn, untilOn };
    const did = 'promised a shop its town';
    await recordAudit(tx, doer, { did, subject: 'TownPromise', subjectId: id, facts });
    return ok({ promiseId: id });
  });
}

async function overlapping(tx: Tx, input: PromiseTownInput): Promise<ShopRefusal | null> {
  const { town, state, fromOn, untilOn } = input;
  const found = await tx.townPromise.findFirst({
    where: {
      town: { equals: town, mode: 'insensitive' },
      state: { equals: state, mode: 'insensitive' },
      ...(untilOn === null ? {} : { fromOn: { lt: dateFromDay(untilOn) } }),
      OR: [{ untilOn: null }, { untilOn: { gt: dateFromDay(fromOn) } }],
    },
    select: { town: true, untilOn: true, collector: { select: { name: true } } },
  });
  if (!found) return null;
  const until = found.untilOn && dayFromDate(found.untilOn);
  const { name } = found.collector;
  return { code: 'town_is_promised', town: found.town, shop: name, untilOn: until };
}

/**
 * Ends a promise from today on; one that begins today or later is taken back whole.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, a promise nobody
 *   knows or that has ended
 */
export async function endTownPromise(
  doer: Doer,
  input: EndPromiseInput,
): Promise<ShopAnswer<{ promiseId: string }>> {
  const allowed = allow(doer.actor, 'outside.keep');
  if (!allowed.ok) return allowed;
  const { requestKey: key, promiseId: id } = input;
  const name = 'endTownPromise';
  const command = { key, name, staffId: doer.actor.id, input: { id }, at: doer.at };
  return onceOnly<{ promiseId: string }, ShopRefusal>(command, async (tx) => {
    const { timeZone } = await getGallery(tx);
    const today = dayOf(doer.at, timeZone);
    const promise = await tx.townPromise.findUnique({
      where: { id },
      include: { collector: { select: { name: true } } },
    });
    const isOver = promise?.untilOn && dayFromDate(promise.untilOn) <= today;
    if (!promise || isOver) return refuse({ code: 'unknown_promise' });
    const { town, collector } = promise;
    if (dayFromDate(promise.fromOn) >= today) await tx.townPromise.delete({ where: { id } });
    else await tx.townPromise.update({ where: { id }, data: { untilOn: dateFromDay(today) } });
    const facts = { shop: collector.name, town };
    const did = 'ended the promise of a town';
    await recordAudit(tx, doer, { did, subject: 'TownPromise', subjectId: id, facts });
    return ok({ promiseId: id });
  });
}
