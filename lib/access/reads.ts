import 'server-only';
import { forbidden, redirect } from 'next/navigation';
import { cache } from 'react';
import { now } from '@/lib/platform/clock';
import { db } from '@/lib/platform/db/client';
import { allow, type Actor, type Permission } from './rules';
import { idleLimitMs, readSessionCookie, sessionAgeMostS } from './session';

/** How often a session's last sight is written down, in milliseconds. */
const sightEveryMs = 5 * 60 * 1000;

/** Whoever is signed in, with the session they came by. */
export type SignedIn = { actor: Actor; sessionId: string };

/**
 * Whoever sent this request, read from the database each time: a session that was ended, a role
 * that was taken away and an access that was stopped count from the next request on.
 *
 * @returns null when nobody is signed in
 */
export const findSignedIn = cache(async (): Promise<SignedIn | null> => {
  const token = await readSessionCookie();
  return token ? openSession(token.sessionId, now()) : null;
});

/** Whoever sent this request; null when nobody is signed in. */
export async function findActor(): Promise<Actor | null> {
  return (await findSignedIn())?.actor ?? null;
}

/**
 * Whoever sent this request, where a page cannot be shown to a stranger.
 *
 * Sends the signed-out to the door; shows "not your room" to whoever lacks the permission.
 */
export async function requireActor(permission?: Permission): Promise<Actor> {
  const actor = await findActor();
  if (!actor) redirect('/sign-in');
  if (permission) assertAllowed(actor, permission);
  return actor;
}

/** Stops a page for whoever lacks the permission; the last word for every read. */
export function assertAllowed(actor: Actor, permission: Permission): void {
  if (!allow(actor, permission).ok) notAllowed();
}

/** Shows "not your room" instead of the page. */
export function notAllowed(): never {
  forbidden();
}

/**
 * The person of a session, if it is still open at this instant.
 *
 * A session ends by being ended, after 12 hours without a request, or after 30 days.
 *
 * @returns null for an ended session, a stranger's id, or someone whose access was stopped
 */
export async function openSession(sessionId: string, at: Date): Promise<SignedIn | null> {
  const session = await db().staffSession.findUnique({
    where: { id: sessionId },
    select: {
      openedAt: true,
      seenAt: true,
      endedAt: true,
      staff: { select: { id: true, name: true, roles: true, active: true } },
    },
  });
  if (!session || session.endedAt || !session.staff.active) return null;
  const idleMs = at.getTime() - session.seenAt.getTime();
  const ageMs = at.getTime() - session.openedAt.getTime();
  if (idleMs > idleLimitMs || ageMs > sessionAgeMostS * 1000) return null;
  if (idleMs > sightEveryMs) await noteSight(sessionId, at);
  const { id, name, roles } = session.staff;
  return { actor: { id, name, roles }, sessionId };
}

async function noteSight(sessionId: string, at: Date): Promise<void> {
  await db().staffSession.updateMany({
    where: { id: sessionId, seenAt: { lt: at }, endedAt: null },
    data: { seenAt: at },
  });
}

/** Whether anybody works here yet; false only before the first run is finished. */
export async function hasStaff(): Promise<boolean> {
  return (await db().staff.count({ take: 1 })) > 0;
}
