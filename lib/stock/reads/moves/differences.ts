import 'server-only';
import { createHash } from 'node:crypto';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import { differencesOf, type CountDifference } from '../../rules/moves/count';

/** The most differences that one count books. */
export const differencesMost = 5_000;

const row = z.object({
  skuId: z.string(),
  sku: z.string(),
  title: z.string(),
  counted: z.number().nullable(),
  expected: z.number(),
  held: z.number(),
  heldFor: z.array(z.string()),
  unitCostCents: z.bigint().nullable(),
  isNumbered: z.boolean(),
  seen: z.array(z.number()),
  numbersThere: z.array(z.number()),
  heldNumbers: z.array(z.number()),
  elsewhere: z.array(z.object({ number: z.number(), place: z.string() })),
  /** What came and went there since the count began, in all. */
  sinceBegun: z.number(),
});

/** A difference, and what came (above zero) or went there while it was counted. */
export type DifferenceSeen = CountDifference & { sinceBegun: number };

/** A count as its differences need to know it. */
export type CountForDifferences = {
  id: string;
  placeId: string;
  partOnly: boolean;
  startedAt: Date;
};

/**
 * Where a count and the books differ at this moment, in the order of their SKUs; one statement.
 *
 * @returns at most 5,000; what agrees is left out by the database already
 */
export async function readDifferences(
  from: Prisma.TransactionClient,
  count: CountForDifferences,
): Promise<DifferenceSeen[]> {
  const { id, placeId, partOnly, startedAt } = count;
  const found = await from.$queryRaw`
    WITH looked AS (
      SELECT "skuId" FROM "StockCountLine" WHERE "countId" = ${id}::uuid
      UNION
      SELECT "skuId" FROM "StockLevel"
      WHERE "placeId" = ${placeId}::uuid AND "onHand" > 0 AND NOT ${partOnly}::boolean
    ),
    numbers AS (
      SELECT "skuId", array_agg(number ORDER BY number) AS there FROM "EditionPiece"
      WHERE "placeId" = ${placeId}::uuid GROUP BY "skuId"
    )
    SELECT sku.id AS "skuId", sku.code AS sku, design.title, line.counted,
      coalesce(level."onHand", 0)::int AS expected, coalesce(level.held, 0)::int AS held,
      coalesce((SELECT array_agg(DISTINCT hold."forWhom") FROM "Hold" hold
        WHERE hold."skuId" = sku.id AND hold."placeId" = ${placeId}::uuid
          AND hold."endedAt" IS NULL), '{}') AS "heldFor",
      sku."costCents" AS "unitCostCents", edition."skuId" IS NOT NULL AS "isNumbered",
      coalesce(line.numbers, '{}') AS seen, coalesce(numbers.there, '{}') AS "numbersThere",
      coalesce((SELECT array_agg(hold."editionNumber") FROM "Hold" hold
        WHERE hold."skuId" = sku.id AND hold."placeId" = ${placeId}::uuid
          AND hold."endedAt" IS NULL AND hold."editionNumber" IS NOT NULL), '{}') AS "heldNumbers",
      coalesce((SELECT json_agg(json_build_object('number', piece.number, 'place', place.name))
        FROM "EditionPiece" piece JOIN "Place" place ON place.id = piece."placeId"
        WHERE piece."skuId" = sku.id AND piece."placeId" <> ${placeId}::uuid
          AND piece.number = ANY(line.numbers)), '[]'::json) AS elsewhere,
      coalesce((SELECT sum(movement.quantity) FROM "StockMovement" movement
        WHERE movement."skuId" = sku.id AND movement."placeId" = ${placeId}::uuid
          AND movement.at > ${startedAt}), 0)::int AS "sinceBegun"
    FROM looked
    JOIN "Sku" sku ON sku.id = looked."skuId"
    JOIN "Design" design ON design.id = sku."designId"
    LEFT JOIN "Edition" edition ON edition."skuId" = sku.id
    LEFT JOIN "StockCountLine" line ON line."countId" = ${id}::uuid AND line."skuId" = sku.id
    LEFT JOIN "StockLevel" level
      ON level."skuId" = sku.id AND level."placeId" = ${placeId}::uuid
    LEFT JOIN numbers ON numbers."skuId" = sku.id
    WHERE coalesce(line.counted, 0) <> coalesce(level."onHand", 0)
      OR (edition."skuId" IS NOT NULL
        AND coalesce(line.numbers, '{}') IS DISTINCT FROM coalesce(numbers.there, '{}'))
    ORDER BY sku.code LIMIT ${differencesMost}`;
  const rows = z.array(row).parse(found);
  const since = new Map(rows.map((each) => [each.skuId, each.sinceBegun]));
  return differencesOf(rows.map(countedFrom), count).map((each) => ({
    ...each,
    sinceBegun: since.get(each.skuId) ?? 0,
  }));
}

function countedFrom(each: z.infer<typeof row>) {
  const { isNumbered, seen, numbersThere: expected, heldNumbers: held, elsewhere, ...sku } = each;
  return { ...sku, numbers: isNumbered ? { seen, expected, held, elsewhere } : null };
}

/**
 * The differences as one hash, so that exactly what was shown is booked.
 *
 * @example a piece sold meanwhile changes what the books say, and so the hash
 */
export function hashDifferences(differences: readonly CountDifference[]): string {
  const facts = differences.map(({ skuId, counted, expected, numbers }) => [
    ...[skuId, counted, expected],
    ...(numbers === null ? [] : [numbers.seen, numbers.expected]),
  ]);
  return createHash('sha256').update(JSON.stringify(facts)).digest('hex');
}
