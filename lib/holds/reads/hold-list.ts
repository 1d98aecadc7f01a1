import 'server-only';
import { z } from 'zod';
import { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import { holdStanding, type HoldStanding } from '../rules';

const holdRow = z.object({
  id: z.string(),
  number: z.number(),
  skuId: z.string(),
  code: z.string(),
  title: z.string(),
  place: z.string(),
  quantity: z.number(),
  editionNumber: z.number().nullable(),
  forWhom: z.string(),
  phone: z.string(),
  collectorId: z.string().nullable(),
  untilAt: z.date().nullable(),
  note: z.string(),
  layawayNumber: z.number().nullable(),
  orderNumber: z.number().nullable(),
  staffName: z.string(),
  at: z.date(),
  calledAt: z.date().nullable(),
  endedAt: z.date().nullable(),
  endedHow: z.enum(['sold', 'released', 'lapsed']).nullable(),
  nextInLine: z.string().nullable(),
});

/** A hold as a list and its own page show it; `nextInLine` is the name of who is second. */
export type HoldTold = z.infer<typeof holdRow> & { standing: HoldStanding };

/** The most holds that the list shows. */
export const holdsListed = 200;

/** The open holds: those to call about first, then all the others, in the order of their hours. */
export type HoldList = { toCall: HoldTold[]; others: HoldTold[] };

/**
 * What is kept back everywhere: first the call list (lapsed, or lapsing within a day), then the
 * rest; those of layaways and orders last.
 *
 * @returns at most two hundred
 */
export async function listHolds(actor: Actor, at: Date): Promise<HoldList> {
  assertAllowed(actor, 'stock.hold');
  const holds = await readHoldsTold(
    Prisma.sql`hold."endedAt" IS NULL`,
    Prisma.sql`hold."untilAt" NULLS LAST, hold.number`,
    at,
  );
  const isToCall = ({ standing }: HoldTold) => standing === 'lapsed' || standing === 'lapses_soon';
  return { toCall: holds.filter(isToCall), others: holds.filter((hold) => !isToCall(hold)) };
}

/** One hold by its number, however it stands; null when there is none. */
export async function findHold(actor: Actor, number: number, at: Date): Promise<HoldTold | null> {
  assertAllowed(actor, 'stock.hold');
  const [hold] = await readHoldsTold(
    Prisma.sql`hold.number = ${number}`,
    Prisma.sql`hold.number`,
    at,
  );
  return hold ?? null;
}

/** One hold by its id, however it stands; null when there is none. */
export async function findHoldById(actor: Actor, id: string, at: Date): Promise<HoldTold | null> {
  assertAllowed(actor, 'stock.hold');
  if (!z.uuid().safeParse(id).success) return null;
  const [hold] = await readHoldsTold(
    Prisma.sql`hold.id = ${id}::uuid`,
    Prisma.sql`hold.number`,
    at,
  );
  return hold ?? null;
}

/** The open holds of one SKU, at every place, for the piece's own page. */
export async function listHoldsOf(actor: Actor, skuId: string, at: Date): Promise<HoldTold[]> {
  assertAllowed(actor, 'stock.see');
  return readHoldsTold(
    Prisma.sql`hold."endedAt" IS NULL AND hold."skuId" = ${skuId}::uuid`,
    Prisma.sql`hold."untilAt" NULLS LAST, hold.number`,
    at,
  );
}

async function readHoldsTold(
  where: Prisma.Sql,
  orderBy: Prisma.Sql,
  at: Date,
): Promise<HoldTold[]> {
  const rows = await db().$queryRaw`
    SELECT hold.id, hold.number, hold."skuId", sku.code, design.title, place.name AS place,
      hold.quantity, hold."editionNumber", hold."forWhom", hold.phone, hold."collectorId",
      hold."untilAt", hold.note, layaway.number AS "layawayNumber", special.number AS "orderNumber",
      coalesce(staff.name, '') AS "staffName", hold.at, hold."calledAt", hold."endedAt",
      hold."endedHow"::text AS "endedHow",
      (SELECT waiting."forWhom" FROM "Waiting" waiting
        WHERE waiting."skuId" = hold."skuId" AND waiting.what = 'second_in_line'
          AND waiting."endedAt" IS NULL ORDER BY waiting.at, waiting.id LIMIT 1) AS "nextInLine"
    FROM "Hold" hold
    JOIN "Sku" sku ON sku.id = hold."skuId"
    JOIN "Design" design ON design.id = sku."designId"
    JOIN "Place" place ON place.id = hold."placeId"
    LEFT JOIN "Layaway" layaway ON layaway.id = hold."layawayId"
    LEFT JOIN "SpecialOrder" special ON special.id = hold."orderId"
    LEFT JOIN "Staff" staff ON staff.id = hold."staffId"
    WHERE ${where} ORDER BY ${orderBy} LIMIT ${holdsListed}`;
  return z
    .array(holdRow)
    .parse(rows)
    .map((hold) => ({ ...hold, standing: holdStanding(hold, at) }));
}
