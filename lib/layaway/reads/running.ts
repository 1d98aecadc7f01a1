import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import type { Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { LayawayRefusal } from '../rules/refusals';
import { readLayaways, type LayawayFacts } from './facts';

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
