import { beforeEach, expect, test } from 'vitest';
import { listOthers } from '@/lib/installation/reads/diary/others';
import { lightKiln } from '@/lib/studio/writes/firings/light';
import { db } from '@/lib/platform/db/client';
import { aCommission, agreed, aStudio, monday, type TestStudio } from '../studio/a-studio';
import { aKiln, aPlannedFiring, at, firingDay, lighting, waitingTiles } from '../studio/a-kiln';
import { aPieceHere, openGallery } from '../sales/open-gallery';
import { startAfresh } from '../../helpers/database';

const stretch = {
  fromOn: '2026-05-04',
  untilOn: '2026-08-31',
  zone: 'America/Los_Angeles',
} as const;
let studio: TestStudio;

beforeEach(async () => {
  await startAfresh();
  studio = await aStudio();
});

async function seen(actor = studio.owner.actor) {
  const lines = await listOthers(actor, stretch);
  return lines.map(({ kind, fromOn, untilOn, words, href }) => ({
    ...{ kind, days: [fromOn, untilOn], words, href },
  }));
}

test('a kiln is to be lit on its day, and to be opened two days after it was', async () => {
  await waitingTiles(studio);
  const { id: kilnId } = await aKiln(studio);
  const { id } = await aPlannedFiring(studio, kilnId);
  const [planned] = await seen();
  expect(planned).toMatchObject({ kind: 'kiln', days: [firingDay, firingDay] });
  expect(planned?.words).toContain('to be lit, cone 04');
  expect((await lightKiln(at(studio, 16), lighting(id))).ok).toBe(true);
  const [lit] = await seen();
  expect(lit).toMatchObject({ kind: 'kiln', days: ['2026-05-22', '2026-05-22'] });
  expect(lit?.words).toContain('to be opened');
});

test('holds that end and fairs, for those alone who may look at them', async () => {
  await startAfresh();
  const gallery = await openGallery();
  const tile = { sku: 'TERN-10', title: 'Tern over Shoals', priceCents: 9_000n, here: 1 };
  const { skuId } = await aPieceHere(gallery, tile);
  const { counterId: placeId, backRoomId, taxPlaceId } = gallery;
  await db().hold.create({
    data: {
      ...{ skuId, placeId, quantity: 1, forWhom: 'Wenna', staffId: gallery.owner.id, at: monday },
      untilAt: new Date('2026-05-09T03:00:00Z'),
    },
  });
  await db().fair.create({
    data: {
      ...{ name: 'Harbour fair', placeId: backRoomId, taxPlaceId },
      ...{ fromOn: new Date('2026-04-30'), untilOn: new Date('2026-05-04') },
    },
  });
  expect(await seen(gallery.owner)).toMatchObject([
    { kind: 'fair', days: ['2026-04-30', '2026-05-04'], words: 'Harbour fair' },
    {
      kind: 'hold',
      days: ['2026-05-08', '2026-05-08'],
      words: 'Tern over Shoals, for Wenna, ends',
    },
  ]);
  expect((await seen(gallery.maker)).map(({ kind }) => kind)).not.toContain('hold');
  await expect(listOthers(gallery.books, stretch)).rejects.toThrow();
});

test('looks that are due, and days that were promised, until they are done', async () => {
  const { id: commissionId, number } = await aCommission(studio.owner);
  await agreed(studio, commissionId, 50_000n);
  const look = await db().afterCare.create({
    data: { commissionId, kind: 'thirty_days', dueOn: new Date('2026-06-01'), at: monday },
  });
  expect(await seen()).toEqual([
    {
      ...{ kind: 'after_care', days: ['2026-06-01', '2026-06-01'] },
      words: 'A look after thirty days: Herons at low water',
      href: `/commissions/${number}`,
    },
    {
      ...{ kind: 'promised', days: ['2026-08-08', '2026-08-08'] },
      words: 'Herons at low water',
      href: `/commissions/${number}`,
    },
  ]);
  const done = { afterCareId: look.id, words: 'All is well.', on: monday };
  await db().afterCareDone.create({
    data: { ...done, staffId: studio.owner.actor.id, at: monday },
  });
  expect((await seen()).map(({ kind }) => kind)).toEqual(['promised']);
});
