import 'server-only';
import type { Prisma } from '@/generated/prisma/client';

/** The most seconds of one piece that are looked through. */
const secondsMost = 500;

const firstColumns = {
  ...{ id: true, code: true, designId: true, colourwayId: true, kind: true, making: true },
  ...{ widthUm: true, heightUm: true, depthUm: true, weightG: true, priceCents: true },
  ...{ costCents: true, grade: true, foodUse: true, madeInYear: true, medium: true },
  ...{ pictureId: true, edition: { select: { size: true, artistProofs: true } } },
  seconds: {
    select: { id: true, code: true, grade: true, flaw: true },
    orderBy: { code: 'asc' },
    take: secondsMost,
  },
} as const satisfies Prisma.SkuSelect;

/** A piece as somebody sees who finds a flaw in it. Money in cents, the price of that day. */
export type FirstPiece = Prisma.SkuGetPayload<{ select: typeof firstColumns }> & {
  onHand: number;
  /** Of those, how many are kept back for somebody. */
  held: number;
  /** Which numbers of its edition stand at that place. */
  numbersHere: readonly number[];
  /** Codes that begin as its own does. */
  takenCodes: readonly string[];
};

/**
 * A piece with its seconds, and what of it stands at a place.
 *
 * @returns null when there is no such piece
 */
export async function readFirst(
  from: Prisma.TransactionClient,
  { skuId, placeId, on }: { skuId: string; placeId: string; on: Date },
): Promise<FirstPiece | null> {
  const row = await from.sku.findUnique({
    where: { id: skuId },
    select: {
      ...firstColumns,
      levels: { where: { placeId }, select: { onHand: true, held: true }, take: 1 },
      editionPieces: { where: { placeId }, select: { number: true }, orderBy: { number: 'asc' } },
      priceChanges: {
        where: { fromOn: { lte: on } },
        select: { priceCents: true },
        orderBy: { fromOn: 'desc' },
        take: 1,
      },
    },
  });
  if (!row) return null;
  const { levels, editionPieces, priceChanges, ...piece } = row;
  const alike = await from.sku.findMany({
    where: { code: { startsWith: piece.code.slice(0, codeStart) } },
    select: { code: true },
    orderBy: { code: 'asc' },
    take: secondsMost,
  });
  return {
    ...piece,
    priceCents: priceChanges[0]?.priceCents ?? piece.priceCents,
    onHand: levels[0]?.onHand ?? 0,
    held: levels[0]?.held ?? 0,
    numbersHere: editionPieces.map((each) => each.number),
    takenCodes: alike.map((each) => each.code),
  };
}

/** How much of a code is left when the mark of a second takes the place of its end. */
const codeStart = 19;
