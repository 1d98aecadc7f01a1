import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import { addressLine } from '../rules';
import { idsOf } from './group';

/** An entry that was found to be the same, with what stands on it. */
export type MergedShown = {
  mergeId: string;
  name: string;
  firm: string | null;
  email: string | null;
  phone: string | null;
  address: string | null;
  note: string;
  /** Under whose name it was laid: the kept one's, or that of another laid into it later. */
  into: string;
  by: string;
  at: Date;
};

/** Everything that was laid into somebody and not set apart again, the latest first. */
export async function listMerged(actor: Actor, collectorId: string): Promise<MergedShown[]> {
  assertAllowed(actor, 'collectors.see');
  const ids = [...(await idsOf(db(), collectorId))];
  const merges = await db().collectorMerge.findMany({
    where: { goneId: { in: ids }, undoneAt: null },
    include: { kept: { select: { name: true } } },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
  });
  const [gone, staff] = await Promise.all([
    db().collector.findMany({ where: { id: { in: merges.map(({ goneId }) => goneId) } } }),
    db().staff.findMany({
      where: { id: { in: merges.map(({ staffId }) => staffId) } },
      select: { id: true, name: true },
    }),
  ]);
  const entries = new Map(gone.map((entry) => [entry.id, entry]));
  const names = new Map(staff.map(({ id, name }) => [id, name]));
  return merges.flatMap(({ id: mergeId, goneId, kept, staffId, at }) => {
    const entry = entries.get(goneId);
    if (!entry) return [];
    const { name, firm, email, phone, note } = entry;
    return {
      ...{ mergeId, name, firm, email, phone, note, address: addressLine(entry), at },
      ...{ into: kept.name, by: names.get(staffId) ?? '' },
    };
  });
}
