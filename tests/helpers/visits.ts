import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { inject } from 'vitest';
import { z } from 'zod';
import { root } from './server';
import { sources } from './source';

/** What a stranger may ask for; below /c and /calendar the secret in the address is the door. */
const openToAll = /^\/(sign-in|first-run|api\/auth|c|calendar)(\/|$)/;

/** One address for every page and route of the product, with something in place of its blanks. */
export function closedAddresses(): string[] {
  return sources(['app'], /\/(page\.tsx|route\.ts)$/)
    .map(({ path }) => addressOf(path))
    .filter((path) => !openToAll.test(path));
}

/** One address for every page and file below a secret that was never given out. */
export function madeUpPages(): string[] {
  return sources(['app/c', 'app/calendar'], /\/(page\.tsx|route\.ts)$/)
    .map(({ path }) => addressOf(path))
    .map((path) => path.replace(/^\/(c|calendar)\/1/, `/$1/${'A'.repeat(43)}`));
}

function addressOf(path: string): string {
  const parts = path.split('/').slice(1, -1);
  const seen = parts.filter((part) => !/^\(.*\)$/.test(part));
  return `/${seen.map((part) => (part.startsWith('[') ? '1' : part)).join('/')}`;
}

/** Asks for an address without following where it leads. */
export async function visit(path: string, how: RequestInit = {}): Promise<Response> {
  return fetch(`${inject('baseUrl')}${path}`, { redirect: 'manual', ...how });
}

const token = z.object({ csrfToken: z.string() });
const people = z.array(
  z.object({ signInName: z.string(), role: z.string(), password: z.string() }),
);

/** The cookie of someone of the demo who has come in through the sign-in's own address. */
export async function cookieOf(role: string): Promise<string> {
  const all = people.parse(JSON.parse(readFileSync(join(root, 'seed/people.json'), 'utf8')));
  const person = all.find((one) => one.role === role);
  if (!person) throw new Error(`Nobody in the demo gallery is “${role}”.`);
  const asked = await visit('/api/auth/csrf');
  const { csrfToken } = token.parse(await asked.json());
  const answer = await visit('/api/auth/callback/credentials', {
    method: 'POST',
    headers: { cookie: pairs(asked), 'content-type': 'application/x-www-form-urlencoded' },
    body: new URLSearchParams({
      ...{ csrfToken, json: 'true' },
      ...{ name: person.signInName, password: person.password },
    }),
  });
  const cookie = pairs(answer);
  if (!cookie.includes('session-token=')) throw new Error(`The door let ${role} not in.`);
  return cookie;
}

function pairs(answer: Response): string {
  return answer.headers
    .getSetCookie()
    .map((one) => one.split(';')[0] ?? '')
    .join('; ');
}

const manifest = z.object({
  node: z.record(z.string(), z.object({ workers: z.record(z.string(), z.unknown()) })),
});

/** Every action that the built pages offer: its id and a page that offers it. */
export function builtActions(): { id: string; page: string }[] {
  const file = join(root, '.next/server/server-reference-manifest.json');
  const { node } = manifest.parse(JSON.parse(readFileSync(file, 'utf8')));
  return Object.entries(node).map(([id, { workers }]) => {
    const worker = Object.keys(workers)[0] ?? 'app/page';
    return { id, page: addressOf(`${worker.replace(/\/page$/, '')}/page.tsx`) };
  });
}

/** True when an answer shows how the program is built: a trace, a path of a file. */
export function showsInsides(text: string): boolean {
  return /^\s+at .+:\d+:\d+|node_modules\/|webpack-internal|\.tsx?:\d+|PrismaClient/m.test(text);
}
