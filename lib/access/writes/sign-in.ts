import 'server-only';
import { recordAudit } from '@/lib/audit/writes';
import { db } from '@/lib/platform/db/client';
import { inTransaction, type Tx } from '@/lib/platform/db/transaction';
import { invariant } from '@/lib/platform/invariant';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { isPasswordOf } from '../password-hash';
import type { Actor } from '../rules';
import { freeTries, tryMemoryMs, waitUntil, type SignInRefusal } from '../rules/wait';
import type { SessionToken } from '../session';

/** What somebody at the door says, and where they stand. */
export type AtTheDoor = {
  /** Lower case, without spaces around it. */
  name: string;
  password: string;
  /** The network address, as far as it is known. */
  address: string;
  /** The browser in words. */
  device: string;
};

const nameLengthMost = 120;
const triesReadMost = 200;
const triesKeptMs = 90 * 24 * 60 * 60_000;

/**
 * Lets somebody in, and opens a session for their browser.
 *
 * The try is written down before the password is looked at, one try at a time, so that many
 * guesses at the same moment count as many. An unknown name takes as long as a known one.
 *
 * @returns refuses, in this order: `wait_a_little`, then `name_and_password_differ` for an unknown
 *   name, a wrong password and someone whose access was stopped alike
 */
export async function signIn(
  door: AtTheDoor,
  at: Date,
): Promise<Result<SessionToken, SignInRefusal>> {
  const taken = await inTransaction((tx) => takeTry(tx, door, at));
  if (!taken.ok) return taken;
  const person = await db().staff.findUnique({
    where: { signInName: door.name },
    select: { id: true, name: true, roles: true, active: true, passwordHash: true },
  });
  const right = await isPasswordOf(door.password, person?.passwordHash ?? null);
  if (!person?.active || !right) return refuse({ code: 'name_and_password_differ' });
  const opened = await inTransaction(async (tx) => {
    await tx.signInTry.update({ where: { id: taken.value }, data: { succeeded: true } });
    await forgetOldTries(tx, door.name, at);
    return ok(await openSessionFor(tx, person, { at, device: door.device }));
  });
  invariant(opened.ok, 'Opening a session is never refused.');
  return opened;
}

/** Opens a session for someone who may come in; joins the caller's transaction. */
export async function openSessionFor(
  tx: Tx,
  actor: Actor,
  from: { at: Date; device: string },
): Promise<SessionToken> {
  const { id: sessionId } = await tx.staffSession.create({
    data: { staffId: actor.id, openedAt: from.at, seenAt: from.at, device: from.device },
    select: { id: true },
  });
  await recordAudit(
    tx,
    { actor, at: from.at },
    {
      did: 'signed in',
      subject: 'StaffSession',
      subjectId: sessionId,
      facts: { device: from.device },
    },
  );
  return { staffId: actor.id, sessionId };
}

async function takeTry(tx: Tx, door: AtTheDoor, at: Date): Promise<Result<bigint, SignInRefusal>> {
  // First in the transaction, so that it sees every try that was taken before it got the lock.
  await tx.$executeRaw`LOCK TABLE "SignInTry" IN SHARE ROW EXCLUSIVE MODE`;
  const signInName = door.name.slice(0, nameLengthMost);
  const byName = await triesOf(tx, { signInName }, at);
  const byAddress = await triesOf(tx, { address: door.address }, at);
  const waits = [
    waitUntil(byName, freeTries.byName),
    // Somebody who knows one password must not clear the way for guessing others.
    waitUntil(
      byAddress.filter((each) => !each.succeeded),
      freeTries.byAddress,
    ),
  ];
  const untilMs = Math.max(...waits.map((until) => until?.getTime() ?? 0));
  if (untilMs > at.getTime()) {
    return refuse({ code: 'wait_a_little', waitMs: untilMs - at.getTime() });
  }
  const kept = await tx.signInTry.create({
    data: { signInName, address: door.address, succeeded: false, at },
    select: { id: true },
  });
  return ok(kept.id);
}

async function triesOf(tx: Tx, whose: { signInName: string } | { address: string }, at: Date) {
  const tries = await tx.signInTry.findMany({
    where: { ...whose, at: { gt: new Date(at.getTime() - tryMemoryMs) } },
    orderBy: [{ at: 'desc' }, { id: 'desc' }],
    take: triesReadMost,
    select: { at: true, succeeded: true },
  });
  return tries.reverse();
}

async function forgetOldTries(tx: Tx, signInName: string, at: Date): Promise<void> {
  await tx.signInTry.deleteMany({
    where: { signInName, at: { lt: new Date(at.getTime() - triesKeptMs) } },
  });
}
