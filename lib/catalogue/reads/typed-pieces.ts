import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { TypedPiece } from '../rules/typed-pieces';

/** A typed piece that is in the catalogue. */
export type KnownPiece = {
  skuId: string;
  code: string;
  title: string;
  isEdition: boolean;
  number: number | null;
  quantity: number;
};

/** A line names something that is not in the catalogue. */
export type UnknownTyped = { code: 'unknown_code'; typed: string };

/**
 * Finds typed pieces in the catalogue by SKU or barcode; one statement.
 *
 * @returns in the order given, the same SKU once for each line; refuses the first that nobody knows
 */
export async function findTypedPieces(
  from: Prisma.TransactionClient,
  typed: readonly TypedPiece[],
): Promise<Result<KnownPiece[], UnknownTyped>> {
  const codes = typed.map((piece) => piece.code);
  const rows = await from.sku.findMany({
    where: { OR: [{ code: { in: codes } }, { gtin: { in: codes } }] },
    select: {
      ...{ id: true, code: true, gtin: true, making: true },
      design: { select: { title: true } },
    },
    take: codes.length * 2,
  });
  const byCode = new Map(rows.map((row) => [row.code, row]));
  const byGtin = new Map(rows.flatMap((row) => (row.gtin === null ? [] : [[row.gtin, row]])));
  const known: KnownPiece[] = [];
  for (const { code, number, quantity } of typed) {
    const row = byCode.get(code) ?? byGtin.get(code);
    if (!row) return refuse({ code: 'unknown_code', typed: code });
    const { id: skuId, making, design } = row;
    const isEdition = making === 'edition';
    known.push({ skuId, code: row.code, title: design.title, isEdition, number, quantity });
  }
  return ok(known);
}

/** Says in a full sentence which piece nobody knows. */
export function unknownTypedMessage({ typed }: UnknownTyped): string {
  return `${typed} is not in the catalogue. Look at the tag once more.`;
}
