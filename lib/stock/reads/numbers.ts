import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import type { KnownEdition } from '../rules/marks/numbers';

/** The most numbers that are read at once; no edition and no place has more. */
const numbersMost = 5_000;

/**
 * Which numbers of their editions stand at a place; one statement.
 *
 * @returns ascending, by SKU id; a SKU without numbers there is left out. Numbers beyond the
 *   edition's size are its artist's proofs
 */
export async function readNumbersAt(
  from: Prisma.TransactionClient,
  { skuIds, placeId }: { skuIds: readonly string[]; placeId: string },
): Promise<Map<string, number[]>> {
  const rows = await from.editionPiece.findMany({
    where: { skuId: { in: [...skuIds] }, placeId },
    select: { skuId: true, number: true },
    orderBy: [{ skuId: 'asc' }, { number: 'asc' }],
    take: numbersMost,
  });
  const numbers = new Map<string, number[]>();
  for (const { skuId, number } of rows) {
    numbers.set(skuId, [...(numbers.get(skuId) ?? []), number]);
  }
  return numbers;
}

const editionRow = z.object({
  skuId: z.string(),
  code: z.string(),
  size: z.number(),
  artistProofs: z.number(),
  lastNumber: z.number(),
});

/** The editions among these SKUs, with the highest number that was ever given; one statement. */
export async function readEditions(
  from: Prisma.TransactionClient,
  skuIds: readonly string[],
): Promise<KnownEdition[]> {
  // One text, which costs a tenth of the memory that a long array of texts does.
  const ids = JSON.stringify([...new Set(skuIds)]);
  const rows = await from.$queryRaw`
    SELECT edition."skuId", sku.code, edition.size, edition."artistProofs",
      coalesce((SELECT max(number) FROM "EditionPiece" piece
        WHERE piece."skuId" = edition."skuId" AND piece.number <= edition.size), 0)::int
        AS "lastNumber"
    FROM "Edition" edition JOIN "Sku" sku ON sku.id = edition."skuId"
    WHERE edition."skuId" IN (SELECT json_array_elements_text(${ids}::json)::uuid)
    ORDER BY sku.code`;
  return z.array(editionRow).parse(rows);
}
