import { db } from '@/lib/platform/db/client';

/** Puts what was typed into the statement. */
export async function findByName(typed: string): Promise<unknown> {
  return db().$queryRawUnsafe(`select * from "Collector" where name = '${typed}'`);
}
