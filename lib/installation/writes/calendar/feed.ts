import 'server-only';
import { allow, type Doer, type NotAllowed } from '@/lib/access/rules';
import { recordAudit } from '@/lib/audit/writes';
import { tokenSha256 } from '@/lib/commissions/reads/page/open-link';
import { newToken } from '@/lib/commissions/writes/page/link';
import type { MakeFeedInput, WithdrawFeedInput } from '@/lib/installation/input/calendar/feed';
import {
  decideFeed,
  decideShutting,
  type FeedRefusal,
} from '@/lib/installation/rules/calendar/feed';
import { onceOnly, type KeyRefusal, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { newId } from '@/lib/platform/new-id';
import { ok, type Result } from '@/lib/platform/result';

/** An address that was made; its secret is known only here, and null when it was made before. */
export type MadeFeed = { feedId: string; secret: string | null };

/**
 * Makes an address under which a telephone fetches somebody's calendar. Whoever holds it sees where
 * they go and to whom, so each makes their own, and the owner anyone's.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, then as
 *   {@link decideFeed}. Sent twice it makes one, and the second answer has no secret in it: that is
 *   kept nowhere
 */
export async function makeFeed(
  doer: Doer,
  input: MakeFeedInput,
): Promise<Result<MadeFeed, NotAllowed | FeedRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'diary.see');
  if (!allowed.ok) return allowed;
  const { requestKey, ...wanted } = input;
  const [secret, feedId] = [newToken(), newId()];
  const command = commandOf(doer, 'makeFeed', requestKey, wanted);
  const made = await onceOnly(command, (tx) => addFeed(tx, doer, { ...wanted, secret, feedId }));
  if (!made.ok) return made;
  const { feedId: kept } = made.value;
  return ok({ feedId: kept, secret: kept === feedId ? secret : null });
}

async function addFeed(
  tx: Tx,
  doer: Doer,
  feed: Omit<MakeFeedInput, 'requestKey'> & { secret: string; feedId: string },
): Promise<Result<{ feedId: string }, FeedRefusal>> {
  const { staffId, forWhat, secret, feedId } = feed;
  const person = await tx.staff.findFirst({
    where: { id: staffId, active: true },
    select: { id: true, name: true },
  });
  const open = await tx.calendarFeed.count({ where: { staffId, withdrawnAt: null } });
  const decided = decideFeed(doer.actor, person, open);
  if (!decided.ok) return decided;
  await tx.calendarFeed.create({
    data: {
      ...{ id: feedId, staffId, forWhat, tokenSha256: tokenSha256(secret) },
      ...{ madeById: doer.actor.id, madeAt: doer.at },
    },
    select: { id: true },
  });
  await recordAudit(tx, doer, {
    did: 'made an address of a calendar',
    ...{ subject: 'Staff', subjectId: staffId, facts: { forWhat } },
  });
  return ok({ feedId });
}

/**
 * Withdraws an address of a calendar for good: from then on it opens nothing.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, then as
 *   {@link decideShutting}
 */
export async function withdrawFeed(
  doer: Doer,
  input: WithdrawFeedInput,
): Promise<Result<{ feedId: string }, NotAllowed | FeedRefusal | KeyRefusal>> {
  const allowed = allow(doer.actor, 'diary.see');
  if (!allowed.ok) return allowed;
  const { requestKey, feedId } = input;
  const command = commandOf(doer, 'withdrawFeed', requestKey, { feedId });
  return onceOnly(command, async (tx): Promise<Result<{ feedId: string }, FeedRefusal>> => {
    const feed = await tx.calendarFeed.findUnique({
      where: { id: feedId },
      select: { staffId: true, withdrawnAt: true, forWhat: true },
    });
    const decided = decideShutting(doer.actor, feed);
    if (!decided.ok) return decided;
    invariant(feed, 'Only an address that was found is withdrawn.');
    await tx.calendarFeed.update({
      where: { id: feedId },
      data: { withdrawnAt: doer.at },
      select: { id: true },
    });
    const { staffId, forWhat } = feed;
    await recordAudit(tx, doer, {
      did: 'withdrew an address of a calendar',
      ...{ subject: 'Staff', subjectId: staffId, facts: { forWhat } },
    });
    return ok({ feedId });
  });
}

function commandOf(doer: Doer, name: string, key: string, input: unknown) {
  return { key, name, staffId: doer.actor.id, input, at: doer.at };
}
