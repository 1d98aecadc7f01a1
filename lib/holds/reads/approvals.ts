import 'server-only';
import { assertAllowed } from '@/lib/access/reads';
import type { Actor } from '@/lib/access/rules';
import { addDays, dateFromDay, type Day } from '@/lib/dates/rules';
import { db } from '@/lib/platform/db/client';
import { readApprovals, type ApprovalShown } from './approval-slips';

/** The most slips that the list shows of each sort. */
export const approvalsListed = 100;
const endedShownDays = 60;

/** What is out, what is due first before the rest, and what came back of late. */
export async function listApprovals(
  actor: Actor,
  todayOn: Day,
): Promise<{ out: ApprovalShown[]; ended: ApprovalShown[] }> {
  assertAllowed(actor, 'stock.hold');
  const most = approvalsListed;
  const since = dateFromDay(addDays(todayOn, -endedShownDays));
  const [out, ended] = await Promise.all([
    readApprovals(db(), { where: { endedAt: null }, newestFirst: false, most }),
    readApprovals(db(), { where: { endedAt: { gte: since } }, newestFirst: true, most }),
  ]);
  return { out, ended };
}

/** One slip by its number; null when there is none. */
export async function findApproval(actor: Actor, number: number): Promise<ApprovalShown | null> {
  assertAllowed(actor, 'stock.hold');
  const wanted = { where: { number }, newestFirst: false, most: 1 };
  const [approval] = await readApprovals(db(), wanted);
  return approval ?? null;
}
