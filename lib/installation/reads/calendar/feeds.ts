import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import { isAllowed, type Actor } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';

/** An address of somebody's calendar, without its secret. */
export type FeedShown = {
  id: string;
  staffId: string;
  staffName: string;
  forWhat: string;
  madeAt: Date;
  lastUsedAt: Date | null;
  withdrawnAt: Date | null;
};

/** The addresses of calendars that somebody keeps: their own, and for the owner everyone's. */
export async function listFeeds(actor: Actor): Promise<FeedShown[]> {
  assertAllowed(actor, 'diary.see');
  const rows = await db().calendarFeed.findMany({
    where: whose(actor),
    select: {
      ...{ id: true, staffId: true, forWhat: true, madeAt: true },
      ...{ lastUsedAt: true, withdrawnAt: true, staff: { select: { name: true } } },
    },
    orderBy: [{ withdrawnAt: { sort: 'asc', nulls: 'first' } }, { madeAt: 'desc' }, { id: 'desc' }],
    take: 200,
  });
  return rows.map(({ staff, ...feed }) => ({ ...feed, staffName: staff.name }));
}

/** Whose calendars somebody may make an address of, themselves first. */
export async function listFeedOwners(actor: Actor): Promise<{ id: string; name: string }[]> {
  assertAllowed(actor, 'diary.see');
  if (!isAllowed(actor.roles, 'staff.keep')) return [{ id: actor.id, name: actor.name }];
  const rows = await db().staff.findMany({
    where: { active: true },
    select: { id: true, name: true, roles: true },
    orderBy: [{ name: 'asc' }, { id: 'asc' }],
    take: 100,
  });
  return rows
    .filter(({ roles }) => isAllowed(roles, 'diary.see'))
    .map(({ id, name }) => ({ id, name }))
    .toSorted((one, other) => Number(other.id === actor.id) - Number(one.id === actor.id));
}

function whose(actor: Actor): { staffId?: string } {
  return isAllowed(actor.roles, 'staff.keep') ? {} : { staffId: actor.id };
}
