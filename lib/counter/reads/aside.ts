import 'server-only';
import { z } from 'zod';
import { assertAllowed } from '@/lib/access/reads';
import type { Doer } from '@/lib/access/rules';
import type { Cents } from '@/lib/money/rules';
import { db } from '@/lib/platform/db/client';
import { getGallery } from '@/lib/platform/settings';
import { reckon } from '../rules/reckon';
import { slipContent } from '../rules/slip';
import { readSlipFacts } from './facts';

/** How long a slip that nobody touches is listed, in days. */
const listedDays = 30;
/** The most slips that are listed. */
export const asideListed = 24;

/** A slip that waits: what is on it, for whom, and what it comes to now. */
export type SlipAside = {
  id: string;
  version: number;
  /** The words it was set aside under; null for one that was only left. */
  asideAs: string | null;
  collector: string | null;
  staffName: string;
  changedAt: Date;
  titles: string[];
  /** Null when its fair is over. */
  totalCents: Cents | null;
};

/**
 * Slips that were set aside, and those that were begun and left with something on them, the newest
 * first; what nobody touched for thirty days is left out.
 *
 * @returns at most twenty-four
 */
export async function listSlipsAside(doer: Doer): Promise<SlipAside[]> {
  assertAllowed(doer.actor, 'counter.sell');
  const since = new Date(doer.at.getTime() - listedDays * 86_400_000);
  const rows = await db().slip.findMany({
    where: {
      ...{ saleId: null, thrownAwayAt: null, changedAt: { gte: since } },
      NOT: { content: { path: ['lines'], equals: [] } },
    },
    orderBy: [{ changedAt: 'desc' }, { id: 'desc' }],
    take: asideListed,
    select: {
      ...{ id: true, version: true, asideAs: true, changedAt: true, staffId: true },
      ...{ content: true, placeId: true, collectorId: true },
      collector: { select: { name: true } },
    },
  });
  const staff = await db().staff.findMany({
    where: { id: { in: rows.map((row) => row.staffId) } },
    select: { id: true, name: true },
  });
  const names = new Map(staff.map(({ id, name }) => [id, name]));
  const gallery = await getGallery();
  return Promise.all(
    rows.map(async ({ content, staffId, placeId, collectorId, collector, ...slip }) => {
      const kept = slipContent.parse(content);
      const read = await readSlipFacts(db(), doer, gallery, {
        content: kept,
        placeId,
        collectorId,
      });
      const priced = read && reckon(kept, read.facts).priced;
      return {
        ...slip,
        collector: collector?.name ?? null,
        staffName: names.get(z.string().parse(staffId)) ?? '',
        titles: priced?.lines.map((line) => line.title) ?? [],
        totalCents: priced?.totalCents ?? null,
      };
    }),
  );
}
