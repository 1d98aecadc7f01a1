import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import type { Doer } from '@/lib/access/rules';
import { dateFromDay, type Day } from '@/lib/dates/rules';
import { invariant } from '@/lib/platform/invariant';
import { ok, type Result } from '@/lib/platform/result';
import type { Tx } from '@/lib/platform/db/transaction';
import { readEditions } from './reads/numbers';
import { editionRefusalMessage, numberArrivals, type EditionRefusal } from './rules/marks/numbers';
import { decideTakings, type Shelf, type StockRefusal, type Taking } from './rules';

/** How many movements go into one statement. */
const movementsAtOnce = 2_000;

/** Pieces that arrive at a place, or a count that put right what was thought to be there. */
export type Arrival = {
  skuId: string;
  placeId: string;
  /** Whole pieces; below zero only for what was counted, broken or missing. Never nought. */
  quantity: number;
  reason: 'opening' | 'made' | 'returned' | 'second' | 'counted' | 'broken' | 'missing';
  unitCostCents: bigint | null;
  /** Which number of its edition; then the quantity is one, or minus one. */
  editionNumber?: number;
  stockListId?: string;
  returnLineId?: string;
  countId?: string;
  note?: string;
  at?: Date;
  staffId?: string;
};

/**
 * Takes pieces for the lines of one sale, or of many sales at once. Joins the caller's
 * transaction; a handful of statements however many takings there are.
 *
 * @returns refuses what {@link decideTakings} refuses, and writes nothing then
 */
export async function takeFromStock(
  tx: Tx,
  doer: Doer,
  takings: readonly Taking[],
): Promise<Result<true, StockRefusal>> {
  const decided = decideTakings(await shelvesOf(tx, takings), takings);
  if (!decided.ok) return decided;
  const movements = takings.flatMap(({ quantity, numbers = [], ...taking }) => {
    const leaves = { ...taking, reason: 'sold' as const };
    if (numbers.length === 0) return [{ ...leaves, quantity: -quantity }];
    return numbers.map((editionNumber) => ({ ...leaves, editionNumber, quantity: -1 }));
  });
  await recordMovements(tx, doer, movements);
  return ok(true);
}

/** Pieces on their way from one place to another. */
export type PieceToMove = { skuId: string; quantity: number; editionNumber?: number };

/** A paper that says what goes where. */
export type TransferToRecord = {
  fromId: string;
  toId: string;
  pieces: readonly PieceToMove[];
  /** The day in the gallery's own zone. */
  movedOn: Day;
  note?: string;
};

/**
 * Moves pieces from one place to another as one paper; joins the caller's transaction. What is
 * kept back for somebody does not move.
 *
 * @returns the paper; refuses `not_enough` for the first that is not there, and writes nothing then
 */
export async function moveStock(
  tx: Tx,
  doer: Doer,
  transfer: TransferToRecord,
): Promise<Result<{ transferId: string; number: number }, StockRefusal>> {
  const { fromId, toId, pieces, movedOn, note = '' } = transfer;
  const takings = pieces.map(({ skuId, quantity }) => ({
    ...{ skuId, placeId: fromId, quantity, saleLineId: '', unitCostCents: null },
  }));
  const decided = decideTakings(await shelvesOf(tx, takings), takings);
  if (!decided.ok) return decided;
  const { id: transferId, number } = await tx.stockTransfer.create({
    data: {
      ...{ fromId, toId, note, staffId: doer.actor.id },
      ...{ movedOn: dateFromDay(movedOn), at: doer.at },
    },
    select: { id: true, number: true },
  });
  const movements = pieces.flatMap(({ quantity, ...piece }) => {
    const moved = { ...piece, reason: 'moved' as const, unitCostCents: null, transferId, note };
    return [
      { ...moved, placeId: fromId, quantity: -quantity },
      { ...moved, placeId: toId, quantity },
    ];
  });
  await recordMovements(tx, doer, movements);
  return ok({ transferId, number });
}

/**
 * Brings pieces into stock: the opening count, what the studio made, a new count. Joins the
 * caller's transaction. Pieces of an edition that come without a number get the next ones.
 *
 * @throws Error when an edition has no number left, or a piece of one leaves without its number;
 *   a caller that can be told no asks {@link decideArrivals} first
 *
 * The database refuses, as `stock_never_below_zero`, what would leave fewer than none.
 */
export async function bringIntoStock(
  tx: Tx,
  doer: Doer,
  arrivals: readonly Arrival[],
): Promise<void> {
  const numbered = await decideArrivals(tx, arrivals);
  invariant(numbered.ok, numbered.ok ? '' : editionRefusalMessage(numbered.refusal));
  await recordMovements(tx, doer, numbered.value);
}

/**
 * Gives arrivals of editions their numbers, for a caller that can be told no; what has a number or
 * is no edition passes as it is.
 *
 * @returns refuses what {@link numberArrivals} refuses
 */
export async function decideArrivals(
  tx: Tx,
  arrivals: readonly Arrival[],
): Promise<Result<Arrival[], EditionRefusal>> {
  const open = arrivals.filter((arrival) => arrival.editionNumber === undefined);
  const ids = open.map((arrival) => arrival.skuId);
  return numberArrivals(arrivals, ids.length === 0 ? [] : await readEditions(tx, ids));
}

async function shelvesOf(tx: Tx, takings: readonly Taking[]): Promise<Shelf[]> {
  const skuIds = [...new Set(takings.map((taking) => taking.skuId))];
  const placeIds = [...new Set(takings.map((taking) => taking.placeId))];
  return tx.$queryRaw<Shelf[]>`
    SELECT "skuId", "placeId", "onHand", held FROM "StockLevel"
    WHERE "skuId" = ANY(${skuIds}::uuid[]) AND "placeId" = ANY(${placeIds}::uuid[])
    ORDER BY "skuId", "placeId"`;
}

type Movement = Omit<Arrival, 'reason'> & {
  reason: Arrival['reason'] | 'sold' | 'moved';
  saleLineId?: string;
  transferId?: string;
};

async function recordMovements(tx: Tx, doer: Doer, movements: readonly Movement[]): Promise<void> {
  for (let from = 0; from < movements.length; from += movementsAtOnce) {
    await tx.$executeRaw(insertion(doer, movements.slice(from, from + movementsAtOnce)));
  }
}

/** The movements go as one text: a long array for each column costs many times its memory. */
function insertion(doer: Doer, movements: readonly Movement[]): Prisma.Sql {
  const rows = movements.map((each) => ({
    ...each,
    unitCostCents: each.unitCostCents?.toString() ?? null,
    note: each.note ?? '',
    staffId: each.staffId ?? doer.actor.id,
    at: each.at ?? doer.at,
  }));
  return Prisma.sql`
    INSERT INTO "StockMovement"
      ("skuId", "placeId", quantity, reason, "unitCostCents", "saleLineId", "stockListId",
       "returnLineId", "countId", "transferId", "editionNumber", note, "staffId", at)
    SELECT * FROM json_to_recordset(${JSON.stringify(rows)}::json) AS moved (
      "skuId" uuid, "placeId" uuid, quantity int, reason "MovementReason", "unitCostCents" bigint,
      "saleLineId" uuid, "stockListId" uuid, "returnLineId" uuid, "countId" uuid,
      "transferId" uuid, "editionNumber" int, note text, "staffId" uuid, at timestamptz)`;
}
