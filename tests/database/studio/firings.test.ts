import { beforeEach, describe, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { keepScheduleInput } from '@/lib/studio/input/firings';
import { findFiring } from '@/lib/studio/reads/firings/find';
import { readAtKilns } from '@/lib/studio/reads/firings/waiting';
import { lightKiln } from '@/lib/studio/writes/firings/light';
import { layLine, takeLineOut } from '@/lib/studio/writes/firings/lines';
import { callOffFiring, keepSchedule, planFiring } from '@/lib/studio/writes/firings/plan';
import { moveJobOn } from '@/lib/studio/writes';
import { startAfresh } from '../../helpers/database';
import { aKiln, aLitFiring, aPlannedFiring, at, firingDay, lighting, waitingTiles } from './a-kiln';
import { aKey, aStudio, type TestStudio } from './a-studio';

let studio: TestStudio;
let kilnId: string;

beforeEach(async () => {
  await startAfresh();
  studio = await aStudio();
  kilnId = (await aKiln(studio)).id;
});

const load = (number: number) => findFiring(studio.maker.actor, number);

describe('planning', () => {
  test('what is needed sooner lies in it first, and all of it lies on shelves', async () => {
    await waitingTiles(studio, { pieces: 80 });
    const sooner = await waitingTiles(studio, { title: 'Herons', pieces: 10 });
    await db().job.update({
      where: { id: sooner.id },
      data: { neededOn: new Date('2026-06-10') },
    });
    const firing = await load((await aPlannedFiring(studio, kilnId)).number);
    // 9 tiles of 6 in lie on a shelf of 20 in with a quarter inch around each, on 8 shelves.
    expect(firing?.lines.map(({ title, pieces }) => [title, pieces])).toEqual([
      ['Tern over Shoals', 62],
      ['Herons', 10],
    ]);
    expect(firing?.layout.left).toEqual([]);
    expect(firing?.layout.shelves).toHaveLength(8);
    expect(firing?.fill.areaPercent).toBe(95);
  });

  test('goes to the temperature of its cone', async () => {
    await waitingTiles(studio);
    const firing = await load((await aPlannedFiring(studio, kilnId)).number);
    expect(firing?.schedule.segments.at(-1)?.toC).toBe(1_063);
  });

  test('refuses a cone that the kiln has not, and one that nothing waits for', async () => {
    const plan = { kilnId, kind: 'glaze' as const, plannedOn: firingDay } as const;
    const other = { ...plan, requestKey: aKey(), cone: '10' };
    expect(await planFiring(studio.maker, other)).toMatchObject({
      refusal: { code: 'cone_not_fired_here' },
    });
    const none = { ...plan, requestKey: aKey(), cone: '6' };
    expect(await planFiring(studio.maker, none)).toMatchObject({
      refusal: { code: 'nothing_waits' },
    });
    expect(await planFiring(studio.gallery, none)).toMatchObject({
      refusal: { code: 'not_allowed' },
    });
  });

  test('the same form twice plans one', async () => {
    await waitingTiles(studio);
    const plan = { requestKey: aKey(), kilnId, kind: 'bisque' as const, cone: '04' };
    const form = { ...plan, plannedOn: firingDay } as const;
    const both = await Promise.all([
      planFiring(studio.maker, form),
      planFiring(studio.maker, form),
    ]);
    expect(both[0]).toEqual(both[1]);
    expect(await db().firing.count()).toBe(1);
  });
});

describe('a load', () => {
  const none = { widthUm: null, depthUm: null, heightUm: null, partIds: [] };

  test('is changed, emptied and called off; its pieces are free again', async () => {
    const job = await waitingTiles(studio);
    const firing = await aPlannedFiring(studio, kilnId);
    const line = { firingId: firing.id, jobId: job.id, position: 4, ...none };
    const four = await layLine(studio.maker, { requestKey: aKey(), ...line, pieces: 4 });
    expect(four).toMatchObject({ ok: true, value: { pieces: 4 } });
    expect(await layLine(studio.maker, { requestKey: aKey(), ...line, pieces: 7 })).toMatchObject({
      refusal: { code: 'too_many', free: 6 },
    });
    const elsewhere = { ...line, position: 6, requestKey: aKey(), pieces: 1 };
    expect(await layLine(studio.maker, elsewhere)).toMatchObject({
      refusal: { code: 'waits_for_something_else' },
    });
    expect((await readAtKilns(db()))[0]).toMatchObject({ pieces: 2, planned: 4 });
    const lineId = (await load(firing.number))?.lines[0]?.id ?? '';
    expect((await takeLineOut(studio.maker, { requestKey: aKey(), lineId })).ok).toBe(true);
    expect((await readAtKilns(db()))[0]).toMatchObject({ pieces: 6, planned: 0 });
    const off = { requestKey: aKey(), firingId: firing.id };
    expect((await callOffFiring(studio.maker, off)).ok).toBe(true);
    expect(await lightKiln(studio.maker, lighting(firing.id))).toMatchObject({
      refusal: { code: 'called_off_already' },
    });
  });

  test('asks for a size that nobody knows, and keeps it with the job', async () => {
    await waitingTiles(studio, { title: 'Others' });
    const job = await waitingTiles(studio);
    await db().job.update({
      where: { id: job.id },
      data: { widthUm: null, heightUm: null, depthUm: null },
    });
    const firing = await aPlannedFiring(studio, kilnId);
    const line = { firingId: firing.id, jobId: job.id, position: 4, pieces: 6, partIds: [] };
    expect(await layLine(studio.maker, { requestKey: aKey(), ...line, ...none })).toMatchObject({
      refusal: { code: 'size_not_known' },
    });
    const size = { widthUm: 100_000, depthUm: 200_000, heightUm: 30_000 };
    expect((await layLine(studio.maker, { requestKey: aKey(), ...line, ...size })).ok).toBe(true);
    expect(await db().job.findUnique({ where: { id: job.id } })).toMatchObject({
      ...{ widthUm: 100_000, heightUm: 200_000, depthUm: 30_000 },
    });
  });

  test('keeps a schedule that was typed in °F, until it is lit', async () => {
    await waitingTiles(studio);
    const firing = await aLitFiring(studio, kilnId);
    const typed = { requestKey: aKey(), firingId: firing.id, degrees: 'F', from: '68' };
    const row = { to1: '1945', rate1: '108', soak1: '10', plannedOn: firingDay };
    const read = keepScheduleInput.parse({ ...typed, ...row });
    expect(read.schedule).toEqual({
      fromC: 20,
      segments: [{ toC: 1_063, rateCPerHour: 60, soakMinutes: 10 }],
    });
    expect(await keepSchedule(studio.maker, read)).toMatchObject({
      refusal: { code: 'lit_already', by: 'Osip Lund' },
    });
  });
});

describe('lighting', () => {
  test('asks before what dried too short, and keeps the answer', async () => {
    await waitingTiles(studio, { driedDays: 3 });
    const firing = await aPlannedFiring(studio, kilnId);
    expect(await lightKiln(at(studio, 16), lighting(firing.id))).toMatchObject({
      refusal: {
        code: 'are_they_dry',
        tooFresh: [{ pieces: 6, driedDays: 3, needsDays: 5, title: 'Tern over Shoals' }],
      },
    });
    const said = lighting(firing.id, 'by the stove since Sunday, warm to the cheek');
    expect((await lightKiln(at(studio, 16), said)).ok).toBe(true);
    expect((await load(firing.number))?.lit?.saidOfDry).toContain('by the stove');
  });

  test('one load burns in a kiln: of two at once one is lit, the other is told', async () => {
    const [one, other] = [await waitingTiles(studio), await waitingTiles(studio)];
    const first = await aPlannedFiring(studio, kilnId);
    const lineId = (await load(first.number))?.lines.find(({ jobId }) => jobId === other.id)?.id;
    await takeLineOut(studio.maker, { requestKey: aKey(), lineId: lineId ?? '' });
    const second = await aPlannedFiring(studio, kilnId);
    const both = await Promise.all([
      lightKiln(at(studio, 16), lighting(first.id)),
      lightKiln(at(studio, 16), lighting(second.id)),
    ]);
    expect(both.filter(({ ok }) => ok)).toHaveLength(1);
    const told = both.find(({ ok }) => !ok);
    expect(told).toMatchObject({ refusal: { code: 'kiln_burns', by: 'Osip Lund' } });
    expect(one.id).not.toBe(other.id);
  });

  test('of two who light the same load, one does', async () => {
    await waitingTiles(studio);
    const { id } = await aPlannedFiring(studio, kilnId);
    const both = await Promise.all([
      lightKiln(at(studio, 16), lighting(id)),
      lightKiln({ ...at(studio, 16), actor: studio.owner.actor }, lighting(id)),
    ]);
    expect(both.filter(({ ok }) => ok)).toHaveLength(1);
    expect(both.find(({ ok }) => !ok)).toMatchObject({ refusal: { code: 'lit_already' } });
  });

  test('pieces that went elsewhere since are named', async () => {
    const job = await waitingTiles(studio);
    const firing = await aPlannedFiring(studio, kilnId);
    const move = { requestKey: aKey(), jobId: job.id, fromPosition: 4, pieces: 2 };
    expect((await moveJobOn(studio.maker, move)).ok).toBe(true);
    expect(await lightKiln(at(studio, 16), lighting(firing.id))).toMatchObject({
      refusal: { code: 'pieces_gone', pieces: 6, free: 4 },
    });
  });

  test('what burns stays in the kiln', async () => {
    const job = await waitingTiles(studio);
    await aLitFiring(studio, kilnId);
    const move = { requestKey: aKey(), jobId: job.id, fromPosition: 4, pieces: 1 };
    expect(await moveJobOn(studio.maker, move)).toMatchObject({
      refusal: { code: 'in_a_lit_kiln' },
    });
  });
});
