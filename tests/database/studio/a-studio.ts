import { randomUUID } from 'node:crypto';
import type { Doer, Role } from '@/lib/access/rules';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { openJob, type JobToOpen } from '@/lib/studio/writes';

/** The instant at which people act unless a test says otherwise: a Monday morning. */
export const monday = new Date('2026-05-04T17:00:00Z');

/** A gallery on the coast with one person for each role, in an empty migrated database. */
export async function aStudio() {
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
  return {
    taxPlaceId: taxPlace.id,
    owner: await aPerson('owner', 'Ines Varga'),
    gallery: await aPerson('gallery', 'Ruth Callow'),
    maker: await aPerson('maker', 'Osip Lund'),
    books: await aPerson('books', 'Hana Birk'),
  };
}

/** The people and the place of a test. */
export type TestStudio = Awaited<ReturnType<typeof aStudio>>;

/** Somebody who works here, ready to act on {@link monday}. */
export async function aPerson(role: Role, name: string): Promise<Doer> {
  const { id } = await db().staff.create({
    data: {
      name,
      signInName: name.toLowerCase().replace(/\W/g, ''),
      passwordHash: '$argon2id$v=19$m=19456,t=2,p=1$none',
      roles: [role],
      createdAt: monday,
    },
  });
  return { actor: { id, name, roles: [role] }, at: monday };
}

/** The same person at another time. */
export function later(doer: Doer, at: string): Doer {
  return { ...doer, at: new Date(at) };
}

/** A commission that nothing was agreed on yet. */
export async function aCommission(doer: Doer, title = 'Herons at low water') {
  const collector = await db().collector.create({
    data: { name: 'Marit Oland', createdAt: monday },
  });
  return db().commission.create({
    data: {
      title,
      collectorId: collector.id,
      askedAt: monday,
      askedOn: new Date('2026-04-01'),
      takenById: doer.actor.id,
    },
    select: { id: true, number: true },
  });
}

/** What was agreed on, with a deposit that is due before the clay. */
export async function agreed(studio: TestStudio, commissionId: string, depositCents: bigint) {
  await db().agreement.create({
    data: {
      commissionId,
      version: (await db().agreement.count({ where: { commissionId } })) + 1,
      priceCents: 180_000n,
      depositCents,
      taxPlaceId: studio.taxPlaceId,
      promisedOn: new Date('2026-08-08'),
      agreedOn: new Date('2026-04-10'),
      agreedBy: 'Marit Oland',
      recordedById: studio.owner.actor.id,
      at: monday,
    },
  });
}

/** A sketch or a colour tile that was shown and got its yes. */
export async function saidYes(studio: TestStudio, commissionId: string, to: 'sketch' | 'colours') {
  const bytes = new TextEncoder().encode(`${to} of ${commissionId}`);
  const digest = await crypto.subtle.digest('SHA-256', bytes);
  const file = await db().storedFile.create({
    data: {
      sha256: Buffer.from(digest).toString('hex'),
      mediaType: 'image/webp',
      byteLength: bytes.length,
      bytes,
      createdAt: monday,
    },
  });
  const shown = {
    commissionId,
    fileId: file.id,
    fileSha256: file.sha256,
    contentSha256: file.sha256,
    shownOn: new Date('2026-04-12'),
    at: monday,
  };
  const ids =
    to === 'sketch'
      ? { sketchId: (await db().sketch.create({ data: { ...shown, letter: 'A' } })).id }
      : {
          colourTileId: (
            await db().colourTile.create({ data: { ...shown, number: 1, glazes: 'celadon' } })
          ).id,
        };
  await db().approval.create({
    data: {
      commissionId,
      ...ids,
      fileSha256: file.sha256,
      contentSha256: file.sha256,
      approvedBy: 'Marit Oland',
      how: 'in_person',
      approvedOn: new Date('2026-04-14'),
      recordedById: studio.owner.actor.id,
      at: monday,
    },
  });
}

/** A job opened through the studio's own step. */
export async function aJob(doer: Doer, job: Partial<JobToOpen> = {}) {
  const opened = await inTransaction((tx) =>
    openJob(tx, doer, {
      title: 'Tern over Shoals, 10 × 10',
      technique: 'press_moulded',
      pieces: 24,
      ...job,
    }),
  );
  if (!opened.ok) throw new Error(`The job was not opened: ${opened.refusal.code}`);
  return opened.value;
}

/** A key as a form carries one. */
export function aKey(): string {
  return randomUUID();
}

/** The id of the usual route for thrown pieces. */
export async function thrown(): Promise<string> {
  const route = await db().route.findFirstOrThrow({
    where: { technique: 'thrown', isUsual: true },
    select: { id: true },
  });
  return route.id;
}
