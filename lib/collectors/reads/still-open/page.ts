import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';
import type { OpenThing } from '@/lib/collectors/rules/erase';
import { idsOf } from '@/lib/collectors/reads/group';
import { readOpen } from './open';

/** What is open in somebody's name, for the page on which it is said. */
export async function listOpen(actor: Actor, collectorId: string, at: Date): Promise<OpenThing[]> {
  assertAllowed(actor, 'collectors.erase');
  const { timeZone: zone } = await getGallery();
  return readOpen(db(), { ids: await idsOf(db(), collectorId), at, zone });
}
