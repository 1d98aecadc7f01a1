import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { db } from '@/lib/platform/db/client';

/** Pieces that were set on their board. */
export type AssemblyTold = {
  id: string;
  board: string;
  adhesive: string;
  lot: string;
  finishedAt: Date;
  roomC: number | null;
  curesAt: Date;
  scrapKept: boolean;
  note: string;
  staffId: string;
};

/** The settings of a commission, the newest first: that one holds, as the database has it too. */
export async function assembliesOf(
  commissionId: string,
  from: Prisma.TransactionClient = db(),
): Promise<AssemblyTold[]> {
  return from.assembly.findMany({
    where: { commissionId },
    omit: { commissionId: true, at: true },
    orderBy: [{ finishedAt: 'desc' }, { at: 'desc' }],
    take: 50,
  });
}
