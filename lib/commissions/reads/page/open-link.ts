import 'server-only';
import { createHash } from 'node:crypto';
import type { PageDoer } from '@/lib/access/rules';
import { isToken, linkIsOpen } from '@/lib/commissions/rules/page/link';
import { db } from '@/lib/platform/db/client';

/** A page that an address opened: which commission is on it, and for whom it was made. */
export type OpenLink = {
  linkId: string;
  commissionId: string;
  commissionNumber: number;
  title: string;
  forName: string;
  runsOutAt: Date;
  lastUsedAt: Date | null;
};

/** What is kept of a page's secret. */
export function tokenSha256(token: string): string {
  return createHash('sha256').update(token).digest('hex');
}

/**
 * Opens the page behind an address.
 *
 * @returns null, without saying why, for an address that was never made, was withdrawn or ran out
 */
export async function openLink(token: string, at: Date): Promise<OpenLink | null> {
  if (!isToken(token)) return null;
  const row = await db().collectorLink.findUnique({
    where: { tokenSha256: tokenSha256(token) },
    select: {
      ...{ id: true, commissionId: true, forName: true, lastUsedAt: true },
      ...{ runsOutAt: true, withdrawnAt: true },
      commission: { select: { number: true, title: true } },
    },
  });
  if (!row || !linkIsOpen(row, at)) return null;
  const { id: linkId, commissionId, forName, runsOutAt, lastUsedAt, commission } = row;
  const { number: commissionNumber, title } = commission;
  return { linkId, commissionId, commissionNumber, title, forName, runsOutAt, lastUsedAt };
}

/** Whoever opened the page, as the one who does something on it. */
export function doerOf(link: OpenLink, at: Date): PageDoer {
  const { linkId, commissionId, forName: name } = link;
  return { page: { linkId, commissionId, name }, at };
}

const seldomMs = 5 * 60_000;

/** Notes that a page was looked at, at most once in five minutes. */
export async function noteUse(link: OpenLink, at: Date): Promise<void> {
  const { linkId: id, lastUsedAt } = link;
  if (lastUsedAt && at.getTime() - lastUsedAt.getTime() < seldomMs) return;
  await db().collectorLink.updateMany({ where: { id }, data: { lastUsedAt: at } });
}
