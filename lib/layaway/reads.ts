import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { addDays, dateFromDay, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import type { Result } from '@/lib/platform/result';
import { readLayaways, type LayawayFacts } from './reads/facts';
import { checkLayawayPayment, type PaymentAsked } from './reads/running';
import type { LayawayRefusal } from './rules/refusals';

/** The most layaways that the list shows of each sort. */
export const layawaysListed = 100;
/** Ended ones stay on the list for so many days. */
const endedShownDays = 60;

/** The layaways as the list shows them. */
export type LayawayList = { open: LayawayFacts[]; ended: LayawayFacts[] };

const urgency = { late: 0, paid_off: 1, running: 2, handed_over: 3, cancelled: 3 } as const;

/** All that run on, those that are late first, and those that ended of late, the newest first. */
export async function listLayaways(actor: Actor, todayOn: Day): Promise<LayawayList> {
  assertAllowed(actor, 'stock.hold');
  const most = layawaysListed;
  const since = dateFromDay(addDays(todayOn, -endedShownDays));
  const [open, ended] = await Promise.all([
    readLayaways(
      db(),
      { where: { endedAt: null }, orderBy: [{ finalOn: 'asc' }, { number: 'asc' }], most },
      todayOn,
    ),
    readLayaways(
      db(),
      { where: { endedAt: { gte: since } }, orderBy: [{ endedAt: 'desc' }, { id: 'asc' }], most },
      todayOn,
    ),
  ]);
  return { open: open.toSorted((a, b) => urgency[a.standing] - urgency[b.standing]), ended };
}

/** One layaway by its number; null when there is none. */
export async function findLayaway(
  actor: Actor,
  number: number,
  todayOn: Day,
): Promise<LayawayFacts | null> {
  assertAllowed(actor, 'stock.hold');
  const wanted = { where: { number }, orderBy: [], most: 1 };
  const [layaway] = await readLayaways(db(), wanted, todayOn);
  return layaway ?? null;
}

/** The same as {@link checkLayawayPayment}, for a page that is about to put it on a slip. */
export async function checkPaymentNow(
  actor: Actor,
  asked: PaymentAsked,
): Promise<Result<LayawayFacts, LayawayRefusal>> {
  assertAllowed(actor, 'counter.sell');
  return checkLayawayPayment(db(), asked);
}
