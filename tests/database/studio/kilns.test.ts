import { beforeEach, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { keepKilnInput } from '@/lib/studio/input/kilns';
import { findKiln, listKilns } from '@/lib/studio/reads/kilns/kiln';
import {
  closeKiln,
  keepKiln,
  noteCare,
  reopenKiln,
  retireKiln,
} from '@/lib/studio/writes/kilns/keep';
import { startAfresh } from '../../helpers/database';
import { aKiln, aLitFiring, kilnTyped, opened, waitingTiles } from './a-kiln';
import { aKey, aStudio, type TestStudio } from './a-studio';

let studio: TestStudio;

beforeEach(async () => {
  await startAfresh();
  studio = await aStudio();
});

const today = '2026-05-22';

test('a kiln is kept as it was typed, in whole micrometres and °C', async () => {
  const { id } = await aKiln(studio);
  const kiln = await findKiln(studio.gallery.actor, id, today);
  expect(kiln).toMatchObject({
    ...{ name: 'The large one', insideHeightUm: 685_800, shelfThickUm: 15_875, openBelowC: 93 },
    ...{ cones: ['04', '05', '6'], centsPerKwh: '15.25', wearCents: 500n, turnsAWeek: 2 },
    week: { taken: 0, left: 2 },
  });
});

test('what does not read is told at its field', () => {
  const typed = kilnTyped({ shelfWidth: 'wide', cones: '04, 66', openBelow: '1000' });
  const read = keepKilnInput.safeParse(typed);
  const paths = read.error?.issues.map(({ path }) => path.join('.'));
  expect(paths).toContain('cones');
  const lengths = keepKilnInput.safeParse(kilnTyped({ shelfWidth: 'wide', openBelow: '599' }));
  expect(lengths.error?.issues.map(({ path }) => path.join('.'))).toEqual([
    ...['shelfWidth', 'openBelow'],
  ]);
});

test('two kilns have two names, and one shelf goes in', async () => {
  await aKiln(studio);
  const again = await keepKiln(studio.maker, keepKilnInput.parse(kilnTyped()));
  expect(again).toMatchObject({ refusal: { code: 'name_taken' } });
  const flat = kilnTyped({ name: 'The flat one', insideHeight: '1/2' });
  expect(await keepKiln(studio.maker, keepKilnInput.parse(flat))).toMatchObject({
    refusal: { code: 'not_one_shelf_fits' },
  });
});

test('the gallery looks at kilns and does not change them', async () => {
  const typed = keepKilnInput.parse(kilnTyped());
  expect(await keepKiln(studio.gallery, typed)).toMatchObject({ refusal: { code: 'not_allowed' } });
  expect(await listKilns(studio.gallery.actor, today)).toEqual([]);
});

test('what was changed is kept, and elements begin anew with it', async () => {
  const { id: kilnId } = await aKiln(studio);
  await waitingTiles(studio);
  const firing = await aLitFiring(studio, kilnId);
  await opened(studio, firing.id);
  expect((await findKiln(studio.maker.actor, kilnId, today))?.age.firings).toBe(1);
  const care = { requestKey: aKey(), kilnId, part: 'elements' as const, note: '' };
  const doer = { ...studio.maker, at: new Date('2026-05-22T20:00:00Z') };
  expect(await noteCare(doer, { ...care, on: '2026-05-23' })).toMatchObject({
    refusal: { code: 'in_the_future' },
  });
  const noted = { ...care, requestKey: aKey(), on: today } as const;
  expect((await noteCare(doer, noted)).ok).toBe(true);
  expect((await noteCare(doer, noted)).ok).toBe(true);
  const kiln = await findKiln(studio.maker.actor, kilnId, today);
  expect(kiln?.age).toMatchObject({ firings: 0, left: 150, sinceOn: today });
  expect(kiln?.care).toHaveLength(1);
  const other = { ...care, requestKey: aKey(), part: 'other' as const, on: today } as const;
  expect(await noteCare(doer, other)).toMatchObject({ refusal: { code: 'say_what_was_done' } });
});

test('days on which it stands still are kept, and taken back', async () => {
  const { id: kilnId } = await aKiln(studio);
  const days = { requestKey: aKey(), kilnId, fromOn: '2026-06-01', toOn: '2026-06-03' } as const;
  const backwards = { ...days, toOn: '2026-05-30', why: '' } as const;
  expect(await closeKiln(studio.maker, backwards)).toMatchObject({
    refusal: { code: 'days_backwards' },
  });
  await closeKiln(studio.maker, { ...days, why: 'new floor' });
  const kiln = await findKiln(studio.maker.actor, kilnId, today);
  expect(kiln?.closed).toMatchObject([{ fromOn: '2026-06-01', why: 'new floor' }]);
  const closedId = kiln?.closed[0]?.id ?? '';
  expect((await reopenKiln(studio.maker, { requestKey: aKey(), closedId })).ok).toBe(true);
  expect(await reopenKiln(studio.maker, { requestKey: aKey(), closedId })).toMatchObject({
    refusal: { code: 'no_such_days' },
  });
  expect(await db().studioClosed.count()).toBe(0);
});

test('a kiln that burns stays in use', async () => {
  const { id: kilnId } = await aKiln(studio);
  await waitingTiles(studio);
  const firing = await aLitFiring(studio, kilnId);
  const retire = { kilnId, isRetired: true };
  expect(await retireKiln(studio.maker, { requestKey: aKey(), ...retire })).toMatchObject({
    refusal: { code: 'still_burning', number: firing.number },
  });
  await opened(studio, firing.id);
  expect((await retireKiln(studio.maker, { requestKey: aKey(), ...retire })).ok).toBe(true);
  expect((await findKiln(studio.maker.actor, kilnId, today))?.retiredOn).not.toBeNull();
});
