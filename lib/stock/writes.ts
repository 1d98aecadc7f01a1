import 'server-only';
import { Prisma } from '@/generated/prisma/client';
import type { Doer } from '@/lib/access/rules';
import { ok, type Result } from '@/lib/platform/result';
import type { Tx } from '@/lib/platform/db/transaction';
import { decideTakings, type Shelf, type StockRefusal, type Taking } from './rules';

/** How many movements go into one statement. */
const movementsAtOnce = 2_000;

/** Pieces that arrive at a place, or a count that put right what was thought to be there. */
export type Arrival = {
  skuId: string;
  placeId: string;
  /** Whole pieces; below zero only for what was counted, broken or missing. Never nought. */
  quantity: number;
  reason: 'opening' | 'made' | 'counted' | 'broken' | 'missing';
  unitCostCents: bigint | null;
  stockListId?: string;
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
  const movements = takings.map(({ quantity, ...taking }) => ({
    ...taking,
    quantity: -quantity,
    reason: 'sold' as const,
  }));
  await recordMovements(tx, doer, movements);
  return ok(true);
}

/**
 * Brings pieces into stock: the opening count, what the studio made, a new count. Joins the
 * caller's transaction.
 *
 * The database refuses, as `stock_never_below_zero`, what would leave fewer than none.
 */
export async function bringIntoStock(
  tx: Tx,
  doer: Doer,
  arrivals: readonly Arrival[],
): Promise<void> {
  await recordMovements(tx, doer, arrivals);
}

async function shelvesOf(tx: Tx, takings: readonly Taking[]): Promise<Shelf[]> {
  const skuIds = [...new Set(takings.map((taking) => taking.skuId))];
  const placeIds = [...new Set(takings.map((taking) => taking.placeId))];
  return tx.$queryRaw<Shelf[]>`
    SELECT "skuId", "placeId", "onHand" FROM "StockLevel"
    WHERE "skuId" = ANY(${skuIds}::uuid[]) AND "placeId" = ANY(${placeIds}::uuid[])
    ORDER BY "skuId", "placeId"`;
}

type Movement = Omit<Arrival, 'reason'> & { reason: Arrival['reason'] | 'sold' } & {
  saleLineId?: string;
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
      ("skuId", "placeId", quantity, reason, "unitCostCents", "saleLineId", "stockListId", note,
       "staffId", at)
    SELECT * FROM json_to_recordset(${JSON.stringify(rows)}::json) AS moved (
      "skuId" uuid, "placeId" uuid, quantity int, reason "MovementReason", "unitCostCents" bigint,
      "saleLineId" uuid, "stockListId" uuid, note text, "staffId" uuid, at timestamptz)`;
}
