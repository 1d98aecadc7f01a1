import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';

/** A place where something stands, with how many pieces in words. */
export type PlaceWithPieces = { id: string; words: string };

const placesMost = 100;

/** The open places where something stands, by name; at most a hundred. */
export async function listPlacesWithPieces(actor: Actor): Promise<PlaceWithPieces[]> {
  assertAllowed(actor, 'stock.see');
  const rows = await db().place.findMany({
    where: { closedAt: null, levels: { some: { onHand: { gt: 0 } } } },
    select: { id: true, name: true },
    orderBy: { name: 'asc' },
    take: placesMost,
  });
  const sums = await db().stockLevel.groupBy({
    by: ['placeId'],
    where: { placeId: { in: rows.map((row) => row.id) } },
    _sum: { onHand: true },
  });
  const countOf = new Map(sums.map((sum) => [sum.placeId, sum._sum.onHand ?? 0]));
  return rows.map(({ id, name }) => {
    const count = countOf.get(id) ?? 0;
    return { id, words: `${name} (${count} ${count === 1 ? 'piece' : 'pieces'})` };
  });
}
