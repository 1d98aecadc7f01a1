import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import { loadFiring, type FiringTold } from './firing';

/** One firing by its number; null when the log has none. */
export async function findFiring(actor: Actor, number: number): Promise<FiringTold | null> {
  assertAllowed(actor, 'studio.see');
  return loadFiring(db(), { number });
}
