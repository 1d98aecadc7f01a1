import { beforeEach, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { constraintOf } from '@/lib/platform/db/errors';
import { findJob } from '@/lib/studio/reads/job';
import { beginMore, loseJobPieces, moveJobOn, openStudioJob, undoMove } from '@/lib/studio/writes';
import { routes } from '../../helpers/usual-routes';
import { startAfresh } from '../../helpers/database';
import { aCommission, aJob, aKey, aStudio, thrown, type TestStudio } from './a-studio';

let studio: TestStudio;

beforeEach(async () => {
  await startAfresh();
  studio = await aStudio();
});

const last = routes.press_moulded.length;

/** Moves all pieces on, one step after the other, until they stand at a position. */
async function moveTo(jobId: string, position: number, pieces = 24) {
  for (let fromPosition = 0; fromPosition < position; fromPosition += 1) {
    const touch = { requestKey: aKey(), jobId, fromPosition, pieces };
    expect(await moveJobOn(studio.maker, touch)).toMatchObject({ ok: true });
  }
}

function losing(jobId: string, fromPosition: number, pieces: number) {
  return {
    ...{ requestKey: aKey(), jobId, fromPosition, pieces },
    cause: 'steam',
    note: '',
  } as const;
}

async function standing(number: number) {
  const job = await findJob(studio.maker.actor, number, '2026-05-04');
  return {
    at: job?.standings.map((here) => [here.position, here.pieces]),
    ...{ lost: job?.lost, begunAnew: job?.begunAnew },
  };
}

/** A piece of the stock list that nothing is there of. */
async function aSku(over: { making?: 'open_stock' | 'edition'; costCents?: bigint } = {}) {
  const design = await db().design.create({
    data: { code: 'TERN', title: 'Tern', createdAt: new Date() },
  });
  const colourway = await db().colourway.create({ data: { name: 'Fog' } });
  return db().sku.create({
    data: {
      ...{ code: 'TERN-10', designId: design.id, colourwayId: colourway.id, kind: 'relief_tile' },
      ...{ widthUm: 254_000, heightUm: 254_000, depthUm: 25_400, priceCents: 9_000n },
      ...{ costCents: 2_333n, createdAt: new Date(), ...over },
    },
  });
}

async function onHand() {
  return (await db().stockLevel.findMany({ select: { onHand: true } })).map((each) => each.onHand);
}

test('a loss within the spare ones begins nothing; the next one is made good at once', async () => {
  const job = await aJob(studio.maker, { wanted: 22 });
  await moveTo(job.id, 3);
  const first = await loseJobPieces(studio.maker, losing(job.id, 3, 2));
  expect(first).toMatchObject({ ok: true, value: { begunAnew: 0, toName: 'lost' } });
  const second = await loseJobPieces(studio.maker, losing(job.id, 3, 3));
  expect(second).toMatchObject({ ok: true, value: { begunAnew: 3 } });
  expect(await standing(job.number)).toEqual({
    at: [
      [0, 3],
      [3, 19],
    ],
    lost: 5,
    begunAnew: 3,
  });
});

test('a loss sent twice is one loss, and of two at once the second is told', async () => {
  const job = await aJob(studio.maker, { pieces: 2 });
  await moveTo(job.id, 2, 2);
  const same = losing(job.id, 2, 1);
  const twice = await Promise.all([1, 2].map(() => loseJobPieces(studio.maker, same)));
  expect(twice[0]).toEqual(twice[1]);
  const both = await Promise.all(
    [1, 2].map(() => loseJobPieces(studio.maker, losing(job.id, 2, 1))),
  );
  expect(both.map((each) => each.ok).toSorted()).toEqual([false, true]);
  expect(await standing(job.number)).toMatchObject({ lost: 2, begunAnew: 2 });
});

test('a loss that is taken back takes what was begun for it back, unless it has gone on', async () => {
  const job = await aJob(studio.maker);
  await moveTo(job.id, 3);
  const loss = await loseJobPieces(studio.maker, losing(job.id, 3, 3));
  if (!loss.ok) throw new Error('The loss was refused.');
  await undoMove(studio.maker, { requestKey: aKey(), moveId: loss.value.undoId });
  expect(await standing(job.number)).toEqual({ at: [[3, 24]], lost: 0, begunAnew: 0 });

  const again = await loseJobPieces(studio.maker, losing(job.id, 3, 1));
  if (!again.ok) throw new Error('The loss was refused.');
  await moveJobOn(studio.maker, { requestKey: aKey(), jobId: job.id, fromPosition: 0, pieces: 1 });
  await undoMove(studio.maker, { requestKey: aKey(), moveId: again.value.undoId });
  expect(await standing(job.number)).toEqual({
    at: [
      [1, 1],
      [3, 24],
    ],
    lost: 0,
    begunAnew: 1,
  });
});

test('who may not move tells no loss; something else wants a word', async () => {
  const job = await aJob(studio.maker);
  await moveTo(job.id, 1);
  const refused = { ok: false, refusal: { code: 'not_allowed', permission: 'studio.move' } };
  expect(await loseJobPieces(studio.gallery, losing(job.id, 1, 1))).toEqual(refused);
  const other = { ...losing(job.id, 1, 1), cause: 'other' } as const;
  expect(await loseJobPieces(studio.maker, other)).toEqual({
    ok: false,
    refusal: { code: 'say_what' },
  });
  expect((await loseJobPieces(studio.maker, { ...other, note: 'a gull' })).ok).toBe(true);
});

test('nothing is begun anew for a commission that has ended', async () => {
  const { id: commissionId } = await aCommission(studio.owner);
  await db().startOverride.create({
    data: {
      commissionId,
      why: 'She wants it so',
      staffId: studio.owner.actor.id,
      at: studio.owner.at,
    },
  });
  const job = await aJob(studio.maker, { commissionId });
  await moveTo(job.id, 2);
  await db().commissionEnding.create({
    data: {
      ...{ commissionId, endedOn: new Date('2026-05-04'), why: 'The house was sold' },
      ...{ staffId: studio.owner.actor.id, at: studio.owner.at },
    },
  });
  const loss = await loseJobPieces(studio.maker, losing(job.id, 2, 2));
  expect(loss).toMatchObject({ ok: true, value: { begunAnew: 0 } });
});

test('spare pieces are begun besides, and taken back while they are not begun', async () => {
  const job = await aJob(studio.maker);
  const more = await beginMore(studio.maker, { requestKey: aKey(), jobId: job.id, pieces: 3 });
  expect(await standing(job.number)).toMatchObject({ at: [[0, 27]], begunAnew: 3 });
  if (!more.ok) throw new Error('They were refused.');
  await undoMove(studio.maker, { requestKey: aKey(), moveId: more.value.undoId });
  expect(await standing(job.number)).toMatchObject({ at: [[0, 24]], begunAnew: 0 });
});

test('finished pieces come into stock at what one costs, and go out when that is taken back', async () => {
  const sku = await aSku();
  const job = await aJob(studio.maker, { skuId: sku.id });
  await moveTo(job.id, last);
  const touch = { requestKey: aKey(), jobId: job.id, fromPosition: last, pieces: 20 };
  const moved = await moveJobOn(studio.maker, touch);
  expect(await onHand()).toEqual([20]);
  const [movement] = await db().stockMovement.findMany();
  expect(movement).toMatchObject({ quantity: 20, reason: 'made', unitCostCents: 2_333n });
  if (!moved.ok) throw new Error('The move was refused.');
  expect(
    (await undoMove(studio.maker, { requestKey: aKey(), moveId: moved.value.undoId })).ok,
  ).toBe(true);
  expect(await onHand()).toEqual([0]);
  expect(await standing(job.number)).toMatchObject({ at: [[last, 24]] });
});

test('what was sold meanwhile is not taken back into the studio', async () => {
  const sku = await aSku();
  const job = await aJob(studio.maker, { skuId: sku.id, pieces: 2 });
  await moveTo(job.id, last, 2);
  const touch = { requestKey: aKey(), jobId: job.id, fromPosition: last, pieces: 2 };
  const moved = await moveJobOn(studio.maker, touch);
  if (!moved.ok) throw new Error('The move was refused.');
  const { counterId: placeId } = await db().gallery.findFirstOrThrow();
  await db().stockMovement.create({
    data: {
      ...{ skuId: sku.id, placeId, quantity: -1, reason: 'broken' },
      ...{ staffId: studio.owner.actor.id, at: studio.owner.at },
    },
  });
  const back = await undoMove(studio.maker, { requestKey: aKey(), moveId: moved.value.undoId });
  expect(back).toEqual({ ok: false, refusal: { code: 'sold_meanwhile', title: 'Tern' } });
  expect(await onHand()).toEqual([1]);
  expect(await standing(job.number)).toMatchObject({ at: [[last + 1, 2]] });
});

test('an edition takes no more than it has numbers for', async () => {
  const sku = await aSku({ making: 'edition' });
  await db().edition.create({ data: { skuId: sku.id, size: 2, statedOn: new Date('2026-01-01') } });
  const job = await aJob(studio.maker, { skuId: sku.id, pieces: 3 });
  await moveTo(job.id, last, 3);
  const touch = { requestKey: aKey(), jobId: job.id, fromPosition: last, pieces: 3 };
  expect(await moveJobOn(studio.maker, touch)).toMatchObject({
    ok: false,
    refusal: { code: 'edition_is_full' },
  });
  const two = await moveJobOn(studio.maker, { ...touch, requestKey: aKey(), pieces: 2 });
  if (!two.ok) throw new Error('The move was refused.');
  const back = await undoMove(studio.maker, { requestKey: aKey(), moveId: two.value.undoId });
  expect(back).toEqual({ ok: false, refusal: { code: 'numbered_already', title: 'Tern' } });
});

test('a job that wants more good ones than it begins wants as many as it begins', async () => {
  const asked = { requestKey: aKey(), title: 'Bowls', routeId: await thrown() };
  const more = { ...asked, pieces: 6, wanted: 9, skuId: null, neededOn: null };
  const opened = await openStudioJob(studio.maker, more);
  if (!opened.ok) throw new Error('The job was refused.');
  expect(await db().job.findFirstOrThrow()).toMatchObject({ pieces: 6, wanted: 6 });
});

type Row = { fromPosition: number; toPosition: number; pieces: number; cause?: 'steam' };

/** What the database says to a move that no program decided. */
async function byHand(jobId: string, row: Row): Promise<string | null> {
  const { id: staffId } = studio.maker.actor;
  const on = { staffId, movedOn: new Date('2026-05-04'), at: studio.maker.at };
  return db()
    .jobMove.create({ data: { jobId, ...row, ...on } })
    .then(
      () => 'let through',
      (error: unknown) => constraintOf(error),
    );
}

test('the database lets nobody lose what does not stand there, or without a cause', async () => {
  const job = await aJob(studio.maker);
  await moveTo(job.id, 1);
  const lost = { fromPosition: 1, toPosition: -1, pieces: 1 };
  expect(await byHand(job.id, lost)).toBe('loss_has_a_cause');
  expect(await byHand(job.id, { ...lost, pieces: 25, cause: 'steam' })).toBe(
    'pieces_leave_where_they_stand',
  );
  expect(await byHand(job.id, { fromPosition: -1, toPosition: 3, pieces: 1 })).toBe(
    'begun_anew_is_not_begun',
  );
  expect(await byHand(job.id, { fromPosition: 1, toPosition: 2, pieces: 1, cause: 'steam' })).toBe(
    'loss_has_a_cause',
  );
  expect(await byHand(job.id, { ...lost, cause: 'steam' })).toBe('let through');
});

test('the database lets no more into stock than a job has finished, and keeps its count', async () => {
  const sku = await aSku();
  const job = await aJob(studio.maker, { skuId: sku.id, pieces: 2 });
  await moveTo(job.id, 1, 2);
  const { counterId: placeId } = await db().gallery.findFirstOrThrow();
  const move = await db().jobMove.findFirstOrThrow();
  const came = db().jobIntoStock.create({
    data: {
      ...{ jobId: job.id, moveId: move.id, skuId: sku.id, placeId },
      pieces: 1,
      at: new Date(),
    },
  });
  await expect(came).rejects.toSatisfy(
    (error) => constraintOf(error) === 'stock_from_finished_pieces',
  );
  const counted = db().job.update({ where: { id: job.id }, data: { pieces: 3 } });
  await expect(counted).rejects.toSatisfy((error) => constraintOf(error) === 'job_keeps_its_count');
});
