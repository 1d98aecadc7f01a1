import 'server-only';
import { z } from 'zod';
import { Prisma } from '@/generated/prisma/client';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import { waitingStanding, type WaitingStanding } from '../rules';

const waitingRow = z.object({
  id: z.string(),
  skuId: z.string(),
  code: z.string(),
  title: z.string(),
  what: z.enum(['second_in_line', 'back_again']),
  forWhom: z.string(),
  phone: z.string(),
  collectorId: z.string().nullable(),
  note: z.string(),
  at: z.date(),
  toldAt: z.date().nullable(),
  endedAt: z.date().nullable(),
  onHand: z.number(),
  held: z.number(),
});

/** Somebody who waits for a piece, with what stands at the counter's place of it. */
export type WaitingTold = z.infer<typeof waitingRow> & { standing: WaitingStanding };

/** The most people who wait that a list shows. */
export const waitingListed = 200;

/** All who wait: those who can be told now first, in the order in which they came. */
export async function listWaiting(actor: Actor): Promise<WaitingTold[]> {
  assertAllowed(actor, 'stock.hold');
  return readWaiting(Prisma.sql`waiting."endedAt" IS NULL`);
}

/** Who waits for one SKU, for the piece's own page. */
export async function listWaitingFor(actor: Actor, skuId: string): Promise<WaitingTold[]> {
  assertAllowed(actor, 'stock.see');
  return readWaiting(Prisma.sql`waiting."endedAt" IS NULL AND waiting."skuId" = ${skuId}::uuid`);
}

async function readWaiting(where: Prisma.Sql): Promise<WaitingTold[]> {
  const rows = await db().$queryRaw`
    SELECT waiting.id, waiting."skuId", sku.code, design.title, waiting.what::text AS what,
      waiting."forWhom", waiting.phone, waiting."collectorId", waiting.note, waiting.at,
      waiting."toldAt", waiting."endedAt",
      coalesce(level."onHand", 0)::int AS "onHand", coalesce(level.held, 0)::int AS held
    FROM "Waiting" waiting
    JOIN "Sku" sku ON sku.id = waiting."skuId"
    JOIN "Design" design ON design.id = sku."designId"
    CROSS JOIN "Gallery" gallery
    LEFT JOIN "StockLevel" level
      ON level."skuId" = waiting."skuId" AND level."placeId" = gallery."counterId"
    WHERE ${where}
    ORDER BY (coalesce(level."onHand" - level.held, 0) > 0) DESC, waiting."toldAt" NULLS FIRST,
      waiting.what, waiting.at, waiting.id
    LIMIT ${waitingListed}`;
  return z
    .array(waitingRow)
    .parse(rows)
    .map((waiting) => ({ ...waiting, standing: waitingStanding(waiting, waiting) }));
}
