import 'server-only';
import { isAllowed } from '@/lib/access/rules';
import { tokenSha256 } from '@/lib/commissions/reads/page/open-link';
import { isToken } from '@/lib/commissions/rules/page/link';
import { secretOf } from '@/lib/installation/rules/calendar/feed';
import { db } from '@/lib/platform/db/client';

/** A calendar that an address opened: whose it is. */
export type OpenFeed = {
  feedId: string;
  staffId: string;
  staffName: string;
  lastUsedAt: Date | null;
};

/**
 * Opens the calendar behind an address.
 *
 * @param lastPart of the address: the secret, with or without `.ics`
 * @returns null, without saying why, for an address that was never made or was withdrawn, and for
 *   one of somebody who no longer works here or no longer sees the diary
 */
export async function openFeed(lastPart: string): Promise<OpenFeed | null> {
  const secret = secretOf(lastPart);
  if (!isToken(secret)) return null;
  const row = await db().calendarFeed.findUnique({
    where: { tokenSha256: tokenSha256(secret) },
    select: {
      ...{ id: true, withdrawnAt: true, lastUsedAt: true },
      staff: { select: { id: true, name: true, active: true, roles: true } },
    },
  });
  if (!row || row.withdrawnAt || !row.staff.active) return null;
  const { id: feedId, lastUsedAt, staff } = row;
  if (!isAllowed(staff.roles, 'diary.see')) return null;
  return { feedId, staffId: staff.id, staffName: staff.name, lastUsedAt };
}

const seldomMs = 5 * 60_000;

/** Notes that a calendar was fetched, at most once in five minutes. */
export async function noteFeedUse(feed: OpenFeed, at: Date): Promise<void> {
  const { feedId: id, lastUsedAt } = feed;
  if (lastUsedAt && at.getTime() - lastUsedAt.getTime() < seldomMs) return;
  await db().calendarFeed.updateMany({ where: { id }, data: { lastUsedAt: at } });
}
