import { constraintOf } from '@/lib/platform/db/errors';
import { inTransaction, type Tx } from '@/lib/platform/db/transaction';
import { ok } from '@/lib/platform/result';

/** The name of the rule that the database answers with, past all of our own checks. */
export async function ruleMetBy(work: (tx: Tx) => Promise<unknown>): Promise<string | null> {
  try {
    await inTransaction(async (tx) => {
      await work(tx);
      return ok(null);
    });
  } catch (error) {
    return constraintOf(error);
  }
  return 'nothing stood in the way';
}
