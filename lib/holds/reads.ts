import 'server-only';
import { z } from 'zod';
import type { Prisma } from '@/generated/prisma/client';
import type { ShelfToHold } from './rules';
import type { Holder } from './rules/refusals';

const heldRow = z.object({
  id: z.string(),
  number: z.number(),
  skuId: z.string(),
  quantity: z.number(),
  editionNumber: z.number().nullable(),
  forWhom: z.string(),
  phone: z.string(),
  collectorId: z.string().nullable(),
  untilAt: z.date().nullable(),
  staffName: z.string(),
  layawayId: z.string().nullable(),
});

/** Pieces that are kept back for somebody, with by whom; an open hold, under the entry that is kept. */
export type HoldShown = z.infer<typeof heldRow>;

const heldMost = 500;

/**
 * What is kept back of these SKUs at a place: the open holds, those that end first before the
 * others. Asks nobody for leave: for commands and for pages that have asked already.
 *
 * @returns at most five hundred
 */
export async function readHolds(
  from: Prisma.TransactionClient,
  { skuIds, placeId }: { skuIds: readonly string[]; placeId: string },
): Promise<HoldShown[]> {
  const rows = await from.$queryRaw`
    SELECT hold.id, hold.number, hold."skuId", hold.quantity, hold."editionNumber", hold."forWhom",
      hold.phone, coalesce(collector."mergedIntoId", collector.id) AS "collectorId", hold."untilAt", coalesce(staff.name, '') AS "staffName",
      hold."layawayId"
    FROM "Hold" hold LEFT JOIN "Staff" staff ON staff.id = hold."staffId"
    LEFT JOIN "Collector" collector ON collector.id = hold."collectorId"
    WHERE hold."skuId" = ANY(${[...skuIds]}::uuid[]) AND hold."placeId" = ${placeId}::uuid
      AND hold."endedAt" IS NULL
    ORDER BY hold."untilAt" NULLS LAST, hold.number LIMIT ${heldMost}`;
  return z.array(heldRow).parse(rows);
}

/**
 * What stands at a place of one SKU, as a hold needs to know it.
 *
 * @returns null when no SKU has that id
 */
export async function readShelfToHold(
  from: Prisma.TransactionClient,
  { skuId, placeId }: { skuId: string; placeId: string },
): Promise<ShelfToHold | null> {
  const sku = await from.sku.findUnique({
    where: { id: skuId },
    select: {
      ...{ making: true, design: { select: { title: true } } },
      levels: { where: { placeId }, select: { onHand: true, held: true }, take: 1 },
      editionPieces: { where: { placeId }, select: { number: true }, orderBy: { number: 'asc' } },
      edition: { select: { skuId: true } },
    },
  });
  if (!sku) return null;
  const holds = await readHolds(from, { skuIds: [skuId], placeId });
  return {
    title: sku.design.title,
    onHand: sku.levels[0]?.onHand ?? 0,
    held: sku.levels[0]?.held ?? 0,
    numbersHere: sku.editionPieces.map((piece) => piece.number),
    isEdition: sku.edition !== null,
    holders: holds.map(holderOf),
  };
}

function holderOf({ forWhom, untilAt, staffName, editionNumber }: HoldShown): Holder {
  return { forWhom, untilAt, staffName, editionNumber };
}
