import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import type { PieceAtPlace } from '../../rules/moves/move';

/** The most SKUs that are looked at together. */
const skusMost = 5_000;

const row = z.object({
  skuId: z.string(),
  sku: z.string(),
  title: z.string(),
  isNumbered: z.boolean(),
  grade: z.enum(['first', 'second', 'irregular']),
  onHand: z.number(),
  held: z.number(),
  numbers: z.array(z.number()),
  heldNumbers: z.array(z.number()),
  heldFor: z.array(z.string()),
});

/**
 * How these SKUs stand at a place at this moment: how many, held for whom, which numbers. For a
 * write that decides, and for pages that show the same.
 *
 * @param codes SKUs in capitals; one that is not in the catalogue is left out
 * @returns by SKU, at most 5,000 of them
 */
export async function readPiecesAt(
  from: Prisma.TransactionClient,
  { codes, placeId }: { codes: readonly string[]; placeId: string },
): Promise<Map<string, PieceAtPlace>> {
  const found = await from.$queryRaw`
    SELECT sku.id AS "skuId", sku.code AS sku, design.title,
      edition."skuId" IS NOT NULL AS "isNumbered", sku.grade::text AS grade,
      coalesce(level."onHand", 0)::int AS "onHand", coalesce(level.held, 0)::int AS held,
      coalesce((SELECT array_agg(piece.number ORDER BY piece.number) FROM "EditionPiece" piece
        WHERE piece."skuId" = sku.id AND piece."placeId" = ${placeId}::uuid), '{}') AS numbers,
      coalesce((SELECT array_agg(hold."editionNumber") FROM "Hold" hold
        WHERE hold."skuId" = sku.id AND hold."placeId" = ${placeId}::uuid
          AND hold."endedAt" IS NULL AND hold."editionNumber" IS NOT NULL), '{}') AS "heldNumbers",
      coalesce((SELECT array_agg(DISTINCT hold."forWhom") FROM "Hold" hold
        WHERE hold."skuId" = sku.id AND hold."placeId" = ${placeId}::uuid
          AND hold."endedAt" IS NULL), '{}') AS "heldFor"
    FROM "Sku" sku
    JOIN "Design" design ON design.id = sku."designId"
    LEFT JOIN "Edition" edition ON edition."skuId" = sku.id
    LEFT JOIN "StockLevel" level
      ON level."skuId" = sku.id AND level."placeId" = ${placeId}::uuid
    WHERE sku.code = ANY(${codes.slice(0, skusMost)}::text[])
    ORDER BY sku.id`;
  return new Map(
    z
      .array(row)
      .parse(found)
      .map((piece) => [piece.sku, piece]),
  );
}
