import 'server-only';
import { cookies } from 'next/headers';
import { decode, encode } from 'next-auth/jwt';
import { z } from 'zod';
import { invariant } from '@/lib/platform/invariant';
import { readEnvironment } from '@/lib/platform/env';

/** How long a signed-in browser may be away before it has to sign in again, in milliseconds. */
export const idleLimitMs = 12 * 60 * 60 * 1000;
/** How long a browser stays signed in at the very most, in seconds. */
export const sessionAgeMostS = 30 * 24 * 60 * 60;

/** What the sealed cookie says: whose it is, and which session at the door it belongs to. */
export type SessionToken = { staffId: string; sessionId: string };

const sealed = z.object({ sub: z.uuid(), sessionId: z.uuid() });

/** True when the gallery is reached over https, so that cookies may travel nowhere else. */
export function isSecureAddress(): boolean {
  return readEnvironment().NEXTAUTH_URL?.startsWith('https://') ?? false;
}

/** The name of the session's cookie, the one that next-auth itself reads and writes. */
export function sessionCookieName(): string {
  return isSecureAddress() ? '__Secure-next-auth.session-token' : 'next-auth.session-token';
}

/** The secret that seals the cookie; the start command makes it once. */
export function sessionSecret(): string {
  const secret = readEnvironment().NEXTAUTH_SECRET;
  invariant(secret, 'The start command sets NEXTAUTH_SECRET.');
  return secret;
}

/**
 * Reads the session's cookie of the request.
 *
 * @returns null when there is none, or it was not sealed here, or its time is over
 */
export async function readSessionCookie(): Promise<SessionToken | null> {
  const token = (await cookies()).get(sessionCookieName())?.value;
  return token ? openToken(token) : null;
}

/** Opens a sealed cookie; null when it was not sealed here, or its time is over. */
export async function openToken(token: string): Promise<SessionToken | null> {
  const opened = await decode({ token, secret: sessionSecret() }).catch(() => null);
  const read = sealed.safeParse(opened);
  return read.success ? { staffId: read.data.sub, sessionId: read.data.sessionId } : null;
}

/** Gives the browser its session's cookie; only from an action or a route. */
export async function writeSessionCookie(session: SessionToken, at: Date): Promise<void> {
  const { staffId: sub, sessionId } = session;
  const maxAge = sessionAgeMostS;
  const token = await encode({ token: { sub, sessionId }, secret: sessionSecret(), maxAge });
  (await cookies()).set(sessionCookieName(), token, {
    httpOnly: true,
    sameSite: 'lax',
    secure: isSecureAddress(),
    path: '/',
    expires: new Date(at.getTime() + maxAge * 1000),
  });
}

/** Takes the cookie from the browser; only from an action or a route. */
export async function clearSessionCookie(): Promise<void> {
  (await cookies()).delete(sessionCookieName());
}
