import { beforeEach, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { findKeptDay } from '@/lib/studio/reads/forecast/asked';
import { findReadyBy } from '@/lib/studio/reads/forecast/foretold';
import { listPastJobs } from '@/lib/studio/reads/forecast/past';
import { keepAskedDay } from '@/lib/studio/writes/forecast/keep-asked';
import { startAfresh } from '../../../helpers/database';
import { aCommission, aJob, aKey, aStudio, thrown, type TestStudio } from '../a-studio';
import { aKiln, lose, moveOn, today } from './a-load';

let studio: TestStudio;
beforeEach(async () => {
  await startAfresh();
  studio = await aStudio();
});

test('what is foretold is kept when a job is opened and when pieces are begun anew', async () => {
  await aKiln();
  const job = await aJob(studio.maker, { pieces: 6 });
  await moveOn(studio.maker, job.id, 0, 6);
  await lose(studio.maker, job.id, 1, 1);
  const kept = await db().foretold.findMany({ where: { jobId: job.id }, orderBy: { id: 'asc' } });
  expect(kept.map((one) => one.why)).toEqual(['opened', 'begun', 'remade']);
  expect(kept.every((one) => one.in80On !== null && one.futures === 2_000)).toBe(true);
  const told = await findReadyBy(studio.maker.actor, job.id, today);
  expect(told.before).toHaveLength(3);
  expect(told.anew).toEqual({ pieces: 1, sinceOn: today });
});

test('nothing is kept where nothing can be told, and the job is opened all the same', async () => {
  const job = await aJob(studio.maker);
  expect(await db().foretold.count({ where: { jobId: job.id } })).toBe(0);
});

test('a finished job stands among the past with the first day that was foretold', async () => {
  await aKiln();
  const job = await aJob(studio.maker, { pieces: 2, wanted: 1 });
  const steps = await db().jobStep.count({ where: { jobId: job.id } });
  for (let at = 0; at <= steps; at += 1) await moveOn(studio.maker, job.id, at, 1);
  const [past] = await listPastJobs(studio.owner.actor);
  expect(past).toMatchObject({ number: job.number, toldOn: today, finishedOn: today });
});

test('a day is kept with a proposal once, by the owner alone', async () => {
  await aKiln();
  const { id: commissionId, number } = await aCommission(studio.gallery);
  const input = {
    ...{ requestKey: aKey(), commissionId, routeId: await thrown(), pieces: 6, answersFirst: true },
    ...{ widthUm: 100_000, heightUm: 100_000, depthUm: 20_000 },
  };
  const refused = await keepAskedDay(studio.maker, input);
  expect(refused).toMatchObject({ ok: false, refusal: { code: 'not_allowed' } });
  const kept = { ok: true, value: { commissionNumber: number } };
  expect(await keepAskedDay(studio.owner, input)).toEqual(kept);
  expect(await keepAskedDay(studio.owner, input)).toEqual(kept);
  expect(await db().foretold.count({ where: { commissionId } })).toBe(1);
  const day = await findKeptDay(studio.owner.actor, commissionId);
  expect(day?.toldOn).toBe(today);
  expect(String(day?.in50On) <= String(day?.in80On)).toBe(true);
});

test('a day that cannot be told is refused with what to do', async () => {
  const { id: commissionId } = await aCommission(studio.gallery);
  const asked = {
    ...{ commissionId, pieces: 1, answersFirst: false, routeId: await thrown() },
    ...{ widthUm: null, heightUm: null, depthUm: null },
  };
  const keep = (more: object) =>
    keepAskedDay(studio.owner, { ...asked, requestKey: aKey(), ...more });
  expect(await keep({})).toMatchObject({ refusal: { code: 'no_kiln_for_cone' } });
  expect(await keep({ routeId: aKey() })).toMatchObject({ refusal: { code: 'no_such_route' } });
  expect(await keep({ commissionId: aKey() })).toMatchObject({
    refusal: { code: 'no_such_commission' },
  });
});
