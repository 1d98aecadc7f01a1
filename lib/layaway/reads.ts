import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { addDays, dateFromDay, type Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { readLayaways, type LayawayFacts } from './reads/facts';
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

/**
 * A layaway inside a transaction, with its money on that day.
 *
 * @returns refuses `unknown_layaway`
 */
export async function readLayaway(
  from: Prisma.TransactionClient,
  id: string,
  todayOn: Day,
): Promise<Result<LayawayFacts, LayawayRefusal>> {
  const [layaway] = await readLayaways(from, { where: { id }, orderBy: [], most: 1 }, todayOn);
  return layaway ? ok(layaway) : refuse({ code: 'unknown_layaway' });
}

/** Money that is to be taken for a layaway on a day, in cents. */
export type PaymentAsked = { layawayId: string; amountCents: Cents; on: Day };

/**
 * Whether an amount may be taken for a layaway: for the slip that takes it, at the moment it is
 * sold, and in the same transaction.
 *
 * @returns the layaway; refuses, in this order: unknown, ended, more than is still to be paid
 * @example two people pay off the last 100.00 at once: the second is told it is paid off
 */
export async function checkLayawayPayment(
  from: Prisma.TransactionClient,
  { layawayId, amountCents, on }: PaymentAsked,
): Promise<Result<LayawayFacts, LayawayRefusal>> {
  const found = await readLayaway(from, layawayId, on);
  if (!found.ok) return found;
  const ended = endedRefusal(found.value);
  if (ended) return refuse(ended);
  const { remainingCents } = found.value.money;
  if (amountCents > remainingCents) {
    return refuse({ code: 'more_than_remains', remainingCents, amountCents });
  }
  return found;
}

/** The same as {@link checkLayawayPayment}, for a page that is about to put it on a slip. */
export async function checkPaymentNow(
  actor: Actor,
  asked: PaymentAsked,
): Promise<Result<LayawayFacts, LayawayRefusal>> {
  assertAllowed(actor, 'counter.sell');
  return checkLayawayPayment(db(), asked);
}

/** Why nothing more happens to a layaway that has ended; null while it runs on. */
export function endedRefusal({
  number,
  endedAt,
  handedOverBy,
}: Pick<LayawayFacts, 'number' | 'endedAt' | 'handedOverBy'>): LayawayRefusal | null {
  if (endedAt === null) return null;
  const how = handedOverBy === null ? 'cancelled' : 'handed_over';
  return { code: 'layaway_has_ended', number, how };
}
