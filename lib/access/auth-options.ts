import 'server-only';
import type { AuthOptions } from 'next-auth';
import CredentialsProvider from 'next-auth/providers/credentials';
import { z } from 'zod';
import { now } from '@/lib/platform/clock';
import { signInInput } from './input';
import { openSession } from './reads';
import { addressOf, deviceWords } from './rules/device';
import { sessionAgeMostS, sessionSecret } from './session';
import { signIn, type AtTheDoor } from './writes/sign-in';
import { signOut } from './writes/sessions';

const sealedIds = z.object({ sub: z.string(), sessionId: z.string() });
const letIn = z.object({ id: z.string(), sessionId: z.string() });

/**
 * How next-auth keeps the door: names and passwords by {@link signIn}, and a sealed cookie that
 * names the session, so that it can be ended. The sign-in page writes the same cookie.
 */
export function authOptions(): AuthOptions {
  return {
    secret: sessionSecret(),
    session: { strategy: 'jwt', maxAge: sessionAgeMostS },
    pages: { signIn: '/sign-in', signOut: '/sign-out', error: '/sign-in' },
    providers: [
      CredentialsProvider({
        name: 'Name and password',
        credentials: { name: { label: 'Name' }, password: { label: 'Password', type: 'password' } },
        authorize: async (typed, request) => letSomebodyIn(typed, request.headers ?? {}),
      }),
    ],
    callbacks: {
      jwt: ({ token, user }) => {
        const arrived = letIn.safeParse(user);
        if (arrived.success) return { sub: arrived.data.id, sessionId: arrived.data.sessionId };
        return token;
      },
      session: async ({ session, token }) => {
        const read = sealedIds.safeParse(token);
        const open = read.success ? await openSession(read.data.sessionId, now()) : null;
        if (!open) return { expires: new Date(0).toISOString() };
        return { expires: session.expires, user: { name: open.actor.name } };
      },
    },
    events: {
      signOut: async ({ token }) => {
        const read = sealedIds.safeParse(token);
        if (read.success) await signOut(read.data.sessionId, now());
      },
    },
  };
}

async function letSomebodyIn(typed: unknown, headers: Readonly<Record<string, unknown>>) {
  const read = signInInput.pick({ name: true, password: true }).safeParse(pickTyped(typed));
  if (!read.success) return null;
  const header = (name: string) => (typeof headers[name] === 'string' ? headers[name] : '');
  const door: AtTheDoor = {
    ...read.data,
    address: addressOf(header('x-forwarded-for')),
    device: deviceWords(header('user-agent')),
  };
  const answer = await signIn(door, now());
  if (!answer.ok && answer.refusal.code === 'wait_a_little') throw new Error('WaitALittle');
  return answer.ok ? { id: answer.value.staffId, sessionId: answer.value.sessionId } : null;
}

function pickTyped(typed: unknown): unknown {
  const { name, password } = z.looseObject({}).catch({}).parse(typed);
  return { name, password };
}
