import { db } from '@/lib/platform/db/client';

/** Opens a transaction that no other one knows of. */
export async function countTwice(): Promise<number> {
  return db().$transaction(async (tx) => (await tx.sale.count()) + (await tx.sale.count()));
}
