import type { Doer, Role } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';

/** A gallery with one place and one person for each role, in a freshly migrated database. */
export async function aGallery() {
  const at = new Date('2026-11-25T18:00:00Z');
  const taxPlace = await db().taxPlace.create({
    data: { name: 'Harrow Inlet', state: 'Alderland' },
  });
  const floor = await db().place.create({ data: { name: 'Gallery floor' } });
  await db().gallery.create({
    data: {
      name: 'Saltwood Relief',
      timeZone: 'America/Los_Angeles',
      taxPlaceId: taxPlace.id,
      counterId: floor.id,
    },
  });
  const doerAs = async (role: Role): Promise<Doer> => {
    const { id, name } = await db().staff.create({
      data: {
        name: `The ${role}`,
        signInName: role,
        passwordHash: '$argon2id$v=19$m=19456,t=2,p=1$none',
        roles: [role],
        createdAt: at,
      },
    });
    return { actor: { id, name, roles: [role] }, at };
  };
  const people = {
    owner: await doerAs('owner'),
    gallery: await doerAs('gallery'),
    maker: await doerAs('maker'),
    books: await doerAs('books'),
  };
  return { floorId: floor.id, taxPlaceId: taxPlace.id, at, ...people };
}

export type TestGallery = Awaited<ReturnType<typeof aGallery>>;
