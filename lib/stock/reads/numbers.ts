import 'server-only';
import type { Prisma } from '@/generated/prisma/client';

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
