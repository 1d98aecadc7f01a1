import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { slipContent, type SlipContent } from '../rules/slip';

/** A slip as it is kept. */
export type KeptSlip = {
  id: string;
  /** Goes up with every change. */
  version: number;
  content: SlipContent;
  placeId: string;
  /** The entry that is kept, when theirs was found to be the same as another. */
  collectorId: string | null;
  /** The words under which it was set aside; null while it is being written. */
  asideAs: string | null;
  openedAt: Date;
  changedAt: Date;
  /** The receipt's number, once it was sold. */
  soldNumber: number | null;
  isThrownAway: boolean;
};

/** The slip of that id; null when there is none. Asks nobody for leave. */
export async function readSlipRow(
  from: Prisma.TransactionClient,
  id: string,
): Promise<KeptSlip | null> {
  const row = await from.slip.findUnique({
    where: { id },
    select: {
      ...{ id: true, version: true, content: true, placeId: true, collectorId: true },
      ...{ asideAs: true, openedAt: true, changedAt: true, thrownAwayAt: true },
      sale: { select: { number: true } },
      collector: { select: { mergedIntoId: true } },
    },
  });
  if (!row) return null;
  const { content, sale, collector, thrownAwayAt, ...kept } = row;
  return {
    ...kept,
    collectorId: collector?.mergedIntoId ?? kept.collectorId,
    content: slipContent.parse(content),
    soldNumber: sale?.number ?? null,
    isThrownAway: thrownAwayAt !== null,
  };
}
