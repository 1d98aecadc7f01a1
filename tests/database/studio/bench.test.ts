import { beforeEach, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { inTransaction } from '@/lib/platform/db/transaction';
import { getBench, listJobsOfCommission, listStandingTooLong } from '@/lib/studio/reads';
import { findJob, findMove } from '@/lib/studio/reads/job';
import { moveJobOn, openJob, openStudioJob, undoMove } from '@/lib/studio/writes';
import { startAfresh } from '../../helpers/database';
import {
  aCommission,
  agreed,
  aJob,
  aKey,
  aStudio,
  later,
  monday,
  saidYes,
  thrown,
} from './a-studio';
import type { TestStudio } from './a-studio';

let studio: TestStudio;

beforeEach(async () => {
  await startAfresh();
  studio = await aStudio();
});

async function moveAt(at: string, jobId: string, fromPosition: number, pieces: number) {
  const touch = { requestKey: aKey(), jobId, fromPosition, pieces };
  const moved = await moveJobOn(later(studio.maker, at), touch);
  if (!moved.ok) throw new Error(`Refused: ${moved.refusal.code}`);
  return moved.value.undoId;
}

test('the bench goes from clay to finished, and within a step the longest waiting comes first', async () => {
  const late = await aJob(studio.maker, { title: 'Sword fern plaques', pieces: 6 });
  const early = await aJob(studio.maker, { pieces: 24 });
  const relief = await aJob(studio.maker, {
    title: 'Fog & firs',
    technique: 'slab_relief',
    pieces: 12,
  });
  await aJob(studio.maker, { title: 'Platters', technique: 'thrown', pieces: 3 });
  await moveAt('2026-05-04T18:00:00Z', early.id, 0, 24);
  await moveAt('2026-05-05T18:00:00Z', early.id, 1, 20);
  await moveAt('2026-05-06T18:00:00Z', late.id, 0, 6);
  await moveAt('2026-05-06T18:00:00Z', relief.id, 0, 12);
  const bench = await getBench(studio.maker.actor, '2026-05-08');
  expect(bench.notBegun.map((one) => one.job.title)).toEqual(['Platters']);
  expect(bench.finished).toEqual([]);
  expect(
    bench.rows.map((row) => [row.name, row.pieces, row.standing.map((one) => one.job.number)]),
  ).toEqual([
    ['transferring the sketch', 12, [relief.number]],
    ['pressing', 10, [early.number, late.number]],
    ['fettling', 20, [early.number]],
  ]);
});

test('finished pieces stay in sight for two weeks and then leave the bench', async () => {
  const job = await aJob(studio.maker, { pieces: 2 });
  for (let position = 0; position <= 7; position += 1) {
    await moveAt('2026-05-10T18:00:00Z', job.id, position, 2);
  }
  const numbers = async (today: '2026-05-24' | '2026-05-25') =>
    (await getBench(studio.maker.actor, today)).finished.map((one) => one.job.number);
  expect(await numbers('2026-05-24')).toEqual([job.number]);
  expect(await numbers('2026-05-25')).toEqual([]);
});

test('pieces that stand longer than the longest days are told, the longest first', async () => {
  const tiles = await aJob(studio.maker);
  const relief = await aJob(studio.maker, { technique: 'slab_relief', title: 'Fog & firs' });
  await moveAt('2026-05-04T18:00:00Z', tiles.id, 0, 24);
  await moveAt('2026-05-04T18:00:00Z', relief.id, 0, 24);
  const told = async (today: '2026-05-08' | '2026-05-09' | '2026-05-10') =>
    (await listStandingTooLong(studio.maker.actor, today)).map((one) => [
      one.job.number,
      one.here.tooLongDays,
    ]);
  expect(await told('2026-05-08')).toEqual([]);
  expect(await told('2026-05-09')).toEqual([[relief.number, 1]]);
  expect(await told('2026-05-10')).toEqual([
    [relief.number, 2],
    [tiles.number, 1],
  ]);
});

test('a job keeps the route it began with, and carries whose it is and by when', async () => {
  const commission = await aCommission(studio.owner);
  await agreed(studio, commission.id, 0n);
  const job = await aJob(studio.maker, { commissionId: commission.id, technique: 'slab_relief' });
  const [told] = await listJobsOfCommission(studio.books.actor, commission.id, '2026-05-04');
  expect(told).toMatchObject({
    number: job.number,
    commission: { number: commission.number, collector: 'Marit Oland', hasEnded: false },
    neededOn: '2026-08-08',
    missing: ['sketch', 'colours'],
  });
  expect(told?.steps.map((step) => step.name)).toContain('assembly on the board');
  await saidYes(studio, commission.id, 'sketch');
  await saidYes(studio, commission.id, 'colours');
  const bench = await getBench(studio.maker.actor, '2026-05-04');
  expect(bench.notBegun.map((one) => one.job.missing)).toEqual([[]]);
});

test('a job that is not begun leaves the bench when its commission ends', async () => {
  const commission = await aCommission(studio.owner);
  await aJob(studio.maker, { commissionId: commission.id });
  const staffId = studio.owner.actor.id;
  await db().commissionEnding.create({
    data: {
      commissionId: commission.id,
      why: 'They moved away',
      endedOn: monday,
      staffId,
      at: monday,
    },
  });
  expect((await getBench(studio.maker.actor, '2026-05-04')).notBegun).toEqual([]);
  const opened = await inTransaction((tx) =>
    openJob(tx, studio.maker, {
      title: 'Late',
      technique: 'thrown',
      pieces: 1,
      commissionId: commission.id,
    }),
  );
  expect(opened).toEqual({
    ok: false,
    refusal: { code: 'commission_ended', commissionNumber: commission.number },
  });
});

test('a job tells who moved what when, and what was taken back', async () => {
  const job = await aJob(studio.maker);
  const moveId = await moveAt('2026-05-05T18:00:00Z', job.id, 0, 24);
  const back = await undoMove(later(studio.owner, '2026-05-06T18:00:00Z'), {
    requestKey: aKey(),
    moveId,
  });
  const told = await findJob(studio.gallery.actor, job.number, '2026-05-07');
  expect(told?.openedBy).toBe('Osip Lund');
  expect(told?.told.map((one) => [one.by, one.isUndoing, one.isUndone, one.movedOn])).toEqual([
    ['Ines Varga', true, false, '2026-05-06'],
    ['Osip Lund', false, true, '2026-05-05'],
  ]);
  expect(await findMove(studio.maker.actor, back.ok ? back.value.undoId : '')).toMatchObject({
    toName: 'not begun',
    isUndoing: true,
  });
  expect(await findMove(studio.maker.actor, '999')).toBeNull();
  expect(await findJob(studio.maker.actor, 999, '2026-05-07')).toBeNull();
});

test('a job for a piece that is not in the stock list is not opened, and leaves nothing', async () => {
  const input = { title: 'Bowls', pieces: 6, wanted: 6, neededOn: null, routeId: await thrown() };
  const opened = await openStudioJob(studio.maker, { ...input, requestKey: aKey(), skuId: aKey() });
  expect(opened).toEqual({ ok: false, refusal: { code: 'no_such_piece' } });
  const counts = [db().job.count(), db().jobStep.count(), db().auditLine.count()];
  expect(await Promise.all(counts)).toEqual([0, 0, 0]);
  expect(await db().commandKey.count()).toBe(0);
});

test('a job of the studio’s own is opened once, however often it is sent', async () => {
  const requestKey = aKey();
  const input = { title: 'Bowls', pieces: 6, wanted: 5, skuId: null, routeId: await thrown() };
  const send = () => openStudioJob(studio.maker, { ...input, requestKey, neededOn: '2026-06-01' });
  const [one, other] = await Promise.all([send(), send()]);
  expect(one).toEqual(other);
  expect(await db().job.count()).toBe(1);
  expect(await db().jobStep.count()).toBe(7);
});

test('who may not see the studio is shown no bench', async () => {
  await expect(getBench(studio.books.actor, '2026-05-04')).rejects.toThrow();
  await expect(findJob(studio.books.actor, 1, '2026-05-04')).rejects.toThrow();
});
