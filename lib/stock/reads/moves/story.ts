import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import type { StoryMovement } from '../../rules/moves/story';

/** How many sentences stand on one page of a story. */
export const storyAPage = 60;

/** One sentence of a story, and how many there are at all places after it. */
export type StoryTold = StoryMovement & { id: bigint; at: Date; standing: number };

/** A page of the story of a SKU, the newest first. */
export type Story = { told: StoryTold[]; page: number; pages: number; inAll: number };

const row = z.object({
  id: z.bigint(),
  at: z.date(),
  standing: z.number(),
  quantity: z.number(),
  reason: z.enum([
    ...(['opening', 'made', 'sold', 'returned', 'moved'] as const),
    ...(['second', 'counted', 'broken', 'missing'] as const),
  ]),
  place: z.string(),
  isHere: z.boolean(),
  editionNumber: z.number().nullable(),
  staff: z.string().nullable(),
  note: z.string(),
  saleNumber: z.number().nullable(),
  channel: z
    .enum(['counter', 'fair', 'shipped', 'commission', 'consigned', 'wholesale'])
    .nullable(),
  soldTo: z.string().nullable(),
  returnNumber: z.number().nullable(),
  returnedSale: z.number().nullable(),
  returnedBy: z.string().nullable(),
  moveNumber: z.number().nullable(),
  moveTo: z.string().nullable(),
  count: z.number().nullable(),
  stockListId: z.string().nullable(),
  grade: z.enum(['first', 'second', 'irregular']),
});

/**
 * What happened to the pieces of a SKU, the newest first, with how many there were after each. A
 * move from place to place is told once.
 *
 * @param wish `page` from 1; one past the end is the last. `limit` for the few on another page
 */
export async function readStory(
  actor: Actor,
  skuId: string,
  wish: { page: number; limit?: number },
): Promise<Story> {
  assertAllowed(actor, 'stock.see');
  const limit = wish.limit ?? storyAPage;
  const inAll = await countTold(skuId);
  const pages = Math.max(1, Math.ceil(inAll / limit));
  const page = Math.min(wish.page, pages);
  const rows = await db().$queryRaw`
    WITH chosen AS (
      SELECT * FROM (
        SELECT movement.*,
          (sum(movement.quantity) OVER (ORDER BY movement.at, movement.id))::int AS total
        FROM "StockMovement" movement WHERE movement."skuId" = ${skuId}::uuid
      ) history
      WHERE history."transferId" IS NULL OR history.quantity < 0
      ORDER BY history.at DESC, history.id DESC LIMIT ${limit} OFFSET ${(page - 1) * limit}
    )
    SELECT movement.id, movement.at, movement.quantity, movement.reason::text, place.name AS place,
      (movement.total
        - CASE WHEN movement."transferId" IS NULL THEN 0 ELSE movement.quantity END)::int
        AS standing,
      place.id = gallery."counterId" AS "isHere", movement."editionNumber", staff.name AS staff,
      movement.note, sale.number AS "saleNumber", sale.channel::text AS channel,
      buyer.name AS "soldTo", back.number AS "returnNumber",
      returned_sale.number AS "returnedSale", returner.name AS "returnedBy",
      transfer.number AS "moveNumber", target.name AS "moveTo", counted.number AS count,
      movement."stockListId", sku.grade::text AS grade
    FROM chosen movement
    CROSS JOIN "Gallery" gallery
    JOIN "Sku" sku ON sku.id = movement."skuId"
    JOIN "Place" place ON place.id = movement."placeId"
    LEFT JOIN "Staff" staff ON staff.id = movement."staffId"
    LEFT JOIN "SaleLine" line ON line.id = movement."saleLineId"
    LEFT JOIN "Sale" sale ON sale.id = line."saleId"
    LEFT JOIN "Collector" buyer ON buyer.id = sale."collectorId"
    LEFT JOIN "GoodsReturnLine" back_line ON back_line.id = movement."returnLineId"
    LEFT JOIN "GoodsReturn" back ON back.id = back_line."returnId"
    LEFT JOIN "Sale" returned_sale ON returned_sale.id = back."saleId"
    LEFT JOIN "Collector" returner ON returner.id = returned_sale."collectorId"
    LEFT JOIN "StockTransfer" transfer ON transfer.id = movement."transferId"
    LEFT JOIN "Place" target ON target.id = transfer."toId"
    LEFT JOIN "StockCount" counted ON counted.id = movement."countId"
    ORDER BY movement.at DESC, movement.id DESC`;
  return { told: z.array(row).parse(rows).map(toldFrom), page, pages, inAll };
}

async function countTold(skuId: string): Promise<number> {
  return db().stockMovement.count({
    where: { skuId, OR: [{ transferId: null }, { quantity: { lt: 0 } }] },
  });
}

function toldFrom(each: z.infer<typeof row>): StoryTold {
  const { saleNumber, channel, soldTo, returnNumber, returnedSale, returnedBy } = each;
  const { moveNumber, moveTo, ...told } = each;
  return {
    ...told,
    sale:
      saleNumber === null || channel === null ? null : { number: saleNumber, channel, to: soldTo },
    returned:
      returnNumber === null || returnedSale === null
        ? null
        : { number: returnNumber, saleNumber: returnedSale, from: returnedBy },
    move: moveNumber === null || moveTo === null ? null : { number: moveNumber, to: moveTo },
  };
}
