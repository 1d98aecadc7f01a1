import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';

/** A place of our own: no fair, no other gallery, nobody's wall. */
export type HomePlace = { id: string; name: string };

const placesMost = 100;
const ours = {
  closedAt: null,
  kind: { in: ['gallery', 'storeroom', 'studio'] },
} satisfies Prisma.PlaceWhereInput;

/** Our own open places: the counter's first, then by name; at most a hundred. */
export async function listHomePlaces(): Promise<HomePlace[]> {
  const { counterId } = await getGallery();
  const rows = await db().place.findMany({
    where: ours,
    select: { id: true, name: true },
    orderBy: { name: 'asc' },
    take: placesMost,
  });
  const rank = (place: HomePlace) => (place.id === counterId ? 0 : 1);
  return rows.toSorted((one, other) => rank(one) - rank(other));
}

/** Whether this is an open place of our own. */
export async function isHomePlace(
  from: Prisma.TransactionClient,
  placeId: string,
): Promise<boolean> {
  const place = await from.place.findFirst({
    where: { id: placeId, ...ours },
    select: { id: true },
  });
  return place !== null;
}
