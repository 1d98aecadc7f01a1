import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { dateFromDay, dayFromDate, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';

/** Days on which the studio, or one kiln of it, stands still. */
export type ClosedDays = { id: string; fromOn: Day; toOn: Day; why: string; kiln: string | null };

/** The days to come on which the studio or one of its kilns stands still, the next first. */
export async function listClosedDays(actor: Actor, todayOn: Day): Promise<ClosedDays[]> {
  assertAllowed(actor, 'studio.see');
  const rows = await db().studioClosed.findMany({
    where: { toOn: { gte: dateFromDay(todayOn) } },
    select: { id: true, fromOn: true, toOn: true, why: true, kiln: { select: { name: true } } },
    orderBy: [{ fromOn: 'asc' }, { id: 'asc' }],
    take: 100,
  });
  return rows.map(({ id, fromOn, toOn, why, kiln }) => ({
    ...{ id, fromOn: dayFromDate(fromOn), toOn: dayFromDate(toOn), why },
    kiln: kiln?.name ?? null,
  }));
}
