import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { readSetsOf } from '@/lib/catalogue/reads';
import type { KeptSet } from '@/lib/catalogue/rules/sets';

/** Sets by their ids; those that have ended are left out. */
export async function readSetsById(
  from: Prisma.TransactionClient,
  setIds: readonly string[],
): Promise<KeptSet[]> {
  const members = await from.pieceSetMember.findMany({
    where: { setId: { in: [...setIds] } },
    select: { skuId: true },
    take: 500,
  });
  const sets = await readSetsOf(
    from,
    members.map(({ skuId }) => skuId),
  );
  return sets.filter((set) => setIds.includes(set.setId));
}
