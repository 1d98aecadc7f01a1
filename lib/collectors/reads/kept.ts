import 'server-only';
import type { Prisma } from '@/generated/prisma/client';
import { readCardKept } from './kept/card';
import { readCommissionsKept } from './kept/commissions';
import { readPapersKept } from './kept/papers';
import { readSalesKept } from './kept/sales';

/**
 * Everything that is kept of one person, of every entry that is theirs. Asks nobody for leave: for
 * the command that hands it out.
 */
export async function readEverythingKept(from: Prisma.TransactionClient, ids: readonly string[]) {
  return {
    ...(await readCardKept(from, ids)),
    ...(await readSalesKept(from, ids)),
    ...(await readCommissionsKept(from, ids)),
    ...(await readPapersKept(from, ids)),
  };
}

/** What {@link readEverythingKept} gives. */
export type EverythingKept = Awaited<ReturnType<typeof readEverythingKept>>;
