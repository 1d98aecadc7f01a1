import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import type { KeptSet } from './rules/sets';

/** The most sets that one look-up answers. */
const setsMost = 200;

const setColumns = {
  ...{ id: true, code: true, title: true, priceCents: true, maySplit: true, note: true },
  members: {
    select: {
      skuId: true,
      quantity: true,
      sku: { select: { code: true, design: { select: { title: true } } } },
    },
    orderBy: { sku: { code: 'asc' } },
  },
} as const satisfies Prisma.PieceSetSelect;

type SetRow = Prisma.PieceSetGetPayload<{ select: typeof setColumns }>;

/**
 * The set whose tag has exactly this code, in any case of letters.
 *
 * @returns null when there is none, or when it has ended
 */
export async function readSetByCode(
  from: Prisma.TransactionClient,
  code: string,
): Promise<KeptSet | null> {
  const row = await from.pieceSet.findUnique({
    where: { code: code.trim().toUpperCase(), endedAt: null },
    select: setColumns,
  });
  return row && setOf(row);
}

/** The sets that these pieces belong to, by code; those that have ended are left out. */
export async function readSetsOf(
  from: Prisma.TransactionClient,
  skuIds: readonly string[],
): Promise<KeptSet[]> {
  const rows = await from.pieceSet.findMany({
    where: { endedAt: null, members: { some: { skuId: { in: [...skuIds] } } } },
    select: setColumns,
    orderBy: { code: 'asc' },
    take: setsMost,
  });
  return rows.map(setOf);
}

function setOf({ id, members, ...row }: SetRow): KeptSet {
  return {
    ...row,
    setId: id,
    members: members.map(({ sku, ...member }) => ({
      ...member,
      code: sku.code,
      title: sku.design.title,
    })),
  };
}
