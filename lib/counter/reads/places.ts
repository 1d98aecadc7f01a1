import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { addDays, dateFromDay, type Day } from '@/lib/dates/rules';
import type { Gallery } from '@/lib/platform/settings';

/** How many days before a fair begins and after it ends something may be sold there. */
const fairLeewayDays = 3;
const fairsMost = 20;

/** A place that pieces are sold from. */
export type SellingPlace = {
  placeId: string;
  name: string;
  taxPlaceId: string;
  /** Null at the gallery's own counter. */
  fairId: string | null;
};

/**
 * Where something may be sold from on a day: the gallery's counter first, then the fairs that are
 * not closed and are on, or nearly.
 */
export async function readSellingPlaces(
  from: Prisma.TransactionClient,
  gallery: Pick<Gallery, 'counterId' | 'taxPlaceId'>,
  on: Day,
): Promise<[SellingPlace, ...SellingPlace[]]> {
  const counter = await from.place.findUnique({
    where: { id: gallery.counterId },
    select: { name: true },
  });
  const fairs = await from.fair.findMany({
    where: {
      closedAt: null,
      fromOn: { lte: dateFromDay(addDays(on, fairLeewayDays)) },
      untilOn: { gte: dateFromDay(addDays(on, -fairLeewayDays)) },
    },
    orderBy: [{ fromOn: 'asc' }, { id: 'asc' }],
    take: fairsMost,
    select: { id: true, name: true, placeId: true, taxPlaceId: true },
  });
  const { counterId: placeId, taxPlaceId } = gallery;
  return [
    { placeId, name: counter?.name ?? '', taxPlaceId, fairId: null },
    ...fairs.map(({ id: fairId, ...fair }) => ({ ...fair, fairId })),
  ];
}
