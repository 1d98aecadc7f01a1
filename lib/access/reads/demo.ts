import 'server-only';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { z } from 'zod';
import { db } from '@/lib/platform/db/client';
import { findGallery } from '@/lib/platform/settings';
import { roles, type Role } from '../rules';

/** Someone of the demo gallery, with the password that anyone may know. */
export type DemoPerson = { signInName: string; name: string; role: Role; password: string };

const people = z.array(
  z.object({
    signInName: z.string(),
    name: z.string(),
    role: z.enum(roles),
    password: z.string(),
  }),
);

/**
 * The people of the demo gallery who can sign in, for its door to say so.
 *
 * @returns none as soon as the gallery is a real one
 */
export async function listDemoPeople(): Promise<DemoPerson[]> {
  const gallery = await findGallery();
  if (!gallery?.isDemo) return [];
  const file = join(process.cwd(), 'seed', 'people.json');
  const listed = people.parse(JSON.parse(await readFile(file, 'utf8')));
  const here = await db().staff.findMany({
    where: { active: true, signInName: { in: listed.map((person) => person.signInName) } },
    select: { signInName: true },
    take: listed.length,
  });
  const names = new Set(here.map(({ signInName }) => signInName));
  return listed.filter((person) => names.has(person.signInName));
}
