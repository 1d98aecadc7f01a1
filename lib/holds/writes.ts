import 'server-only';
import type { Doer } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { livingId } from '@/lib/collectors/reads/group';
import type { Tx } from '@/lib/platform/db/transaction';
import { newId } from '@/lib/platform/new-id';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { readShelfToHold } from './reads';
import { decideHold } from './rules';
import type { HoldEnd, HoldRefusal } from './rules/refusals';

/** Pieces of one SKU that are to be kept back. */
export type HoldToMake = {
  skuId: string;
  placeId: string;
  /** At least one; one only when a number is named. */
  quantity: number;
  editionNumber: number | null;
  /** The name as it stands on the slip. */
  forWhom: string;
  phone: string;
  collectorId: string | null;
  /** Until when; null only for pieces of a layaway or an order. */
  untilAt: Date | null;
  note: string;
  layawayId?: string;
  orderId?: string;
};

/** A hold that was written, by its number. */
export type HoldMade = { holdId: string; number: number };

/**
 * Keeps pieces back for somebody: they cannot be sold to another until it ends. Joins the caller's
 * transaction.
 *
 * @returns the hold; refuses, in this order: an unknown piece, an unknown collector, and then what
 *   {@link decideHold} refuses
 * @example two people hold the last one at the same moment: the second is told for whom it is held
 */
export async function holdPieces(
  tx: Tx,
  doer: Doer,
  hold: HoldToMake,
): Promise<Result<HoldMade, HoldRefusal>> {
  const shelf = await readShelfToHold(tx, hold);
  if (!shelf) return refuse({ code: 'unknown_piece' });
  const collectorId = hold.collectorId && (await livingId(tx, hold.collectorId));
  if (collectorId === null && hold.collectorId !== null) {
    return refuse({ code: 'unknown_collector' });
  }
  const decided = decideHold(hold, shelf, doer.at);
  if (!decided.ok) return decided;

  const holdId = newId();
  const { number } = await tx.hold.create({
    data: { ...hold, collectorId, id: holdId, staffId: doer.actor.id, at: doer.at },
    select: { number: true },
  });
  const { forWhom, quantity, editionNumber, untilAt } = hold;
  await recordAudit(tx, doer, {
    did: 'held a piece',
    subject: 'Hold',
    subjectId: holdId,
    facts: {
      ...{ number, title: shelf.title, forWhom, quantity, editionNumber },
      untilAt: untilAt?.toISOString() ?? null,
    },
  });
  return ok({ holdId, number });
}

/** A hold that is to end, and how. */
export type HoldToEnd = { holdId: string; how: HoldEnd };

/** Who is to be called now that a piece is free: the second in line, by name. */
export type NextInLine = { waitingId: string; forWhom: string; phone: string };

/**
 * Ends a hold; its pieces are free from then on. Joins the caller's transaction.
 *
 * @returns who is second in line for it, if anybody; refuses, in this order: unknown, ended before
 * @example ended by two people at once: the second is told how it ended
 */
export async function endHold(
  tx: Tx,
  doer: Doer,
  { holdId, how }: HoldToEnd,
): Promise<Result<{ next: NextInLine | null }, HoldRefusal>> {
  const hold = await tx.hold.findUnique({
    where: { id: holdId },
    select: { number: true, skuId: true, forWhom: true, endedAt: true, endedHow: true },
  });
  if (!hold) return refuse({ code: 'unknown_hold' });
  if (hold.endedAt !== null && hold.endedHow !== null) {
    return refuse({ code: 'hold_has_ended', how: hold.endedHow, endedAt: hold.endedAt });
  }
  await tx.hold.update({
    where: { id: holdId },
    data: { endedAt: doer.at, endedHow: how, endedById: doer.actor.id },
    select: { id: true },
  });
  const { number, forWhom } = hold;
  const facts = { number, forWhom, how };
  await recordAudit(tx, doer, { did: 'ended a hold', subject: 'Hold', subjectId: holdId, facts });
  return ok({ next: await nextInLine(tx, hold.skuId) });
}

async function nextInLine(tx: Tx, skuId: string): Promise<NextInLine | null> {
  const next = await tx.waiting.findFirst({
    where: { skuId, what: 'second_in_line', endedAt: null },
    orderBy: [{ at: 'asc' }, { id: 'asc' }],
    select: { id: true, forWhom: true, phone: true },
  });
  return next && { waitingId: next.id, forWhom: next.forWhom, phone: next.phone };
}
