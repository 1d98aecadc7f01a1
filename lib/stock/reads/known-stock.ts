import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import { pieceKinds } from '@/lib/catalogue/rules';
import { makings } from '@/lib/catalogue/rules/making';
import type { KnownPiece, KnownStock } from '../rules/list-plan';
import type { ReadRow } from '../rules/list-row';

const knownRow = z.object({
  id: z.string(),
  code: z.string(),
  title: z.string(),
  kind: z.enum(pieceKinds.map((each) => each.kind)),
  colourway: z.string(),
  widthUm: z.number(),
  heightUm: z.number(),
  depthUm: z.number().nullable(),
  weightG: z.number().nullable(),
  priceCents: z.bigint(),
  costCents: z.bigint().nullable(),
  gtin: z.string().nullable(),
  making: z.enum(makings.map((each) => each.making)),
  here: z.number(),
  held: z.number(),
  numbersLeft: z.number().nullable(),
  isSecond: z.boolean(),
});

/**
 * All that a stock list needs to know of what is there already, in one query however long the list
 * is: the pieces that it names, and those that have one of its barcodes. A price is that of today.
 *
 * @param placeId where the counts of the list are of
 */
export async function readKnownStock(
  from: Prisma.TransactionClient,
  rows: readonly ReadRow[],
  placeId: string,
): Promise<KnownStock> {
  // One text each, which costs a tenth of the memory that a long array of texts does.
  const codes = JSON.stringify(rows.map((row) => row.code));
  const gtins = JSON.stringify(rows.flatMap((row) => row.listed.gtin ?? []));
  const found = await from.$queryRaw`
    SELECT sku.id, sku.code, design.title, sku.kind::text, colourway.name AS colourway,
      sku."widthUm", sku."heightUm", sku."depthUm", sku."weightG",
      coalesce(dated."priceCents", sku."priceCents") AS "priceCents",
      sku."costCents", sku.gtin, sku.making::text, coalesce(level."onHand", 0) AS here,
      coalesce(level.held, 0) AS held,
      edition.size - coalesce(given.last, 0) AS "numbersLeft", sku.grade <> 'first' AS "isSecond"
    FROM "Sku" sku
    JOIN "Design" design ON design.id = sku."designId"
    JOIN "Colourway" colourway ON colourway.id = sku."colourwayId"
    LEFT JOIN "StockLevel" level ON level."skuId" = sku.id AND level."placeId" = ${placeId}::uuid
    LEFT JOIN "Edition" edition ON edition."skuId" = sku.id
    LEFT JOIN (
      SELECT piece."skuId", max(piece.number) AS last
      FROM "EditionPiece" piece JOIN "Edition" whole ON whole."skuId" = piece."skuId"
      WHERE piece.number <= whole.size GROUP BY piece."skuId"
    ) given ON given."skuId" = sku.id
    LEFT JOIN (
      SELECT DISTINCT ON ("skuId") "skuId", "priceCents" FROM "PriceChange"
      WHERE "fromOn" <= (SELECT (now() AT TIME ZONE "timeZone")::date FROM "Gallery")
      ORDER BY "skuId", "fromOn" DESC
    ) dated ON dated."skuId" = sku.id
    WHERE sku.code IN (SELECT json_array_elements_text(${codes}::json))
      OR sku.gtin IN (SELECT json_array_elements_text(${gtins}::json))
    ORDER BY sku.code`;
  return indexed(z.array(knownRow).parse(found));
}

function indexed(found: readonly KnownPiece[]): KnownStock {
  const pieces = new Map(found.map((piece) => [piece.code, piece]));
  const codeOfGtin = new Map<string, string>();
  for (const piece of found) if (piece.gtin !== null) codeOfGtin.set(piece.gtin, piece.code);
  return { pieces, codeOfGtin };
}
