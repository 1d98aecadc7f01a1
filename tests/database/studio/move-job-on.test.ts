import { beforeEach, expect, test } from 'vitest';
import { constraintOf } from '@/lib/platform/db/errors';
import { db } from '@/lib/platform/db/client';
import { piecesAt, type Move } from '@/lib/studio/rules';
import { moveJobOn, openStudioJob, undoMove } from '@/lib/studio/writes';
import { sql, startAfresh } from '../../helpers/database';
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

/** Where the pieces of a job stand, from the rows themselves. */
async function standing(jobId: string) {
  const job = await db().job.findUniqueOrThrow({
    where: { id: jobId },
    select: { pieces: true, steps: { select: { name: true } }, moves: { orderBy: { id: 'asc' } } },
  });
  const moves = job.moves.map((move): Omit<Move, 'movedOn'> => {
    const { fromPosition, toPosition, pieces } = move;
    return { id: String(move.id), fromPosition, toPosition, pieces, undoesId: null };
  });
  return piecesAt(job, moves);
}

function move(jobId: string, fromPosition: number, pieces: number, requestKey = aKey()) {
  return { requestKey, jobId, fromPosition, pieces };
}

test('all pieces move on at one touch, and the day is the gallery’s own', async () => {
  const job = await aJob(studio.maker);
  const evening = later(studio.maker, '2026-05-06T03:30:00Z');
  const moved = await moveJobOn(evening, move(job.id, 0, 24));
  expect(moved).toMatchObject({
    ok: true,
    value: { jobNumber: job.number, pieces: 24, toName: 'pressing' },
  });
  expect(await standing(job.id)).toEqual([0, 24, 0, 0, 0, 0, 0, 0, 0]);
  const rows = await sql<{ on: string; who: string }>(
    `select "movedOn"::text as on, "staffId" as who from "JobMove"`,
  );
  expect(rows).toEqual([{ on: '2026-05-05', who: studio.maker.actor.id }]);
});

test('some pieces move on and the others stay', async () => {
  const job = await aJob(studio.maker);
  await moveJobOn(studio.maker, move(job.id, 0, 24));
  await moveJobOn(studio.maker, move(job.id, 1, 10));
  expect(await standing(job.id)).toEqual([0, 14, 10, 0, 0, 0, 0, 0, 0]);
});

test('a move leaves one audit line in words', async () => {
  const job = await aJob(studio.maker);
  await moveJobOn(studio.maker, move(job.id, 0, 24));
  const lines = await db().auditLine.findMany({ orderBy: { id: 'asc' } });
  expect(lines.map((line) => line.did)).toEqual(['opened a job in the studio', 'moved pieces on']);
  expect(lines[1]?.facts).toEqual({
    number: job.number,
    pieces: 24,
    from: 'not begun',
    to: 'pressing',
  });
});

test('of two people who move the same pieces at once, one moves them and the other is told', async () => {
  const job = await aJob(studio.maker);
  const both = await Promise.all([
    moveJobOn(studio.maker, move(job.id, 0, 24)),
    moveJobOn(studio.owner, move(job.id, 0, 24)),
  ]);
  expect(both.filter((one) => one.ok)).toHaveLength(1);
  const refusal = both.flatMap((one) => (one.ok ? [] : [one.refusal]));
  expect(refusal).toEqual([
    { code: 'pieces_have_moved', from: 'not begun', standing: 0, wanted: 24 },
  ]);
  expect(await standing(job.id)).toEqual([0, 24, 0, 0, 0, 0, 0, 0, 0]);
});

test('the same touch sent twice moves once and answers the same', async () => {
  const job = await aJob(studio.maker);
  const touch = move(job.id, 0, 10);
  const answers = await Promise.all([
    moveJobOn(studio.maker, touch),
    moveJobOn(studio.maker, touch),
  ]);
  const third = await moveJobOn(studio.maker, touch);
  expect(answers[0]).toEqual(answers[1]);
  expect(third).toEqual(answers[0]);
  expect(await standing(job.id)).toEqual([14, 10, 0, 0, 0, 0, 0, 0, 0]);
});

test('a key that was used for something else is refused and nothing moves', async () => {
  const job = await aJob(studio.maker);
  const touch = move(job.id, 0, 10);
  await moveJobOn(studio.maker, touch);
  const again = await moveJobOn(studio.maker, { ...touch, pieces: 11 });
  expect(again).toEqual({ ok: false, refusal: { code: 'key_used_for_something_else' } });
  expect(await standing(job.id)).toEqual([14, 10, 0, 0, 0, 0, 0, 0, 0]);
});

test('who may not move pieces moves none', async () => {
  const job = await aJob(studio.maker);
  for (const doer of [studio.gallery, studio.books]) {
    const refused = { ok: false, refusal: { code: 'not_allowed', permission: 'studio.move' } };
    expect(await moveJobOn(doer, move(job.id, 0, 24))).toEqual(refused);
    expect(await undoMove(doer, { requestKey: aKey(), moveId: '1' })).toEqual(refused);
    const opening = { title: 'Bowls', pieces: 6, wanted: 6, routeId: await thrown() };
    const open = { ...opening, requestKey: aKey(), skuId: null, neededOn: null };
    expect(await openStudioJob(doer, open)).toEqual(refused);
  }
  expect(await db().jobMove.count()).toBe(0);
});

test('a move is taken back by a counter-move, once, and nothing is deleted', async () => {
  const job = await aJob(studio.maker);
  const moved = await moveJobOn(studio.maker, move(job.id, 0, 24));
  if (!moved.ok) throw new Error('The move was refused.');
  const moveId = moved.value.undoId;
  const both = await Promise.all([
    undoMove(studio.maker, { requestKey: aKey(), moveId }),
    undoMove(studio.owner, { requestKey: aKey(), moveId }),
  ]);
  expect(both.filter((one) => one.ok)).toHaveLength(1);
  expect(both.flatMap((one) => (one.ok ? [] : [one.refusal.code]))).toEqual(['undone_already']);
  expect(await standing(job.id)).toEqual([24, 0, 0, 0, 0, 0, 0, 0, 0]);
  expect(await db().jobMove.count()).toBe(2);
});

test('a move whose pieces went on is not taken back', async () => {
  const job = await aJob(studio.maker);
  const moved = await moveJobOn(studio.maker, move(job.id, 0, 24));
  await moveJobOn(studio.maker, move(job.id, 1, 20));
  const moveId = moved.ok ? moved.value.undoId : '';
  expect(await undoMove(studio.maker, { requestKey: aKey(), moveId })).toEqual({
    ok: false,
    refusal: { code: 'pieces_went_on', from: 'pressing', standing: 4, wanted: 24 },
  });
  expect(await undoMove(studio.maker, { requestKey: aKey(), moveId: '999' })).toEqual({
    ok: false,
    refusal: { code: 'no_such_move' },
  });
});

test('the clay of a commission waits for everything that is missing, and says what', async () => {
  const commission = await aCommission(studio.owner);
  const job = await aJob(studio.maker, { commissionId: commission.id });
  const begin = () => moveJobOn(studio.owner, move(job.id, 0, 24));
  const missing = async () => {
    const begun = await begin();
    return begun.ok || begun.refusal.code !== 'making_not_yet' ? begun : begun.refusal.missing;
  };
  expect(await missing()).toEqual(['agreement', 'sketch', 'colours']);
  await agreed(studio, commission.id, 90_000n);
  expect(await missing()).toEqual(['sketch', 'colours', 'deposit']);
  await saidYes(studio, commission.id, 'sketch');
  await saidYes(studio, commission.id, 'colours');
  expect(await begin()).toEqual({
    ok: false,
    refusal: {
      code: 'making_not_yet',
      commissionNumber: commission.number,
      missing: ['deposit'],
      depositLeftCents: 90_000n,
    },
  });
  await agreed(studio, commission.id, 0n);
  expect((await begin()).ok).toBe(true);
});

test('a maker is told that the deposit is missing, but not how much it is', async () => {
  const commission = await aCommission(studio.owner);
  const job = await aJob(studio.maker, { commissionId: commission.id });
  await agreed(studio, commission.id, 90_000n);
  const begun = await moveJobOn(studio.maker, move(job.id, 0, 24));
  expect(begun).toMatchObject({ ok: false, refusal: { depositLeftCents: null } });
});

test('the owner’s word lets it begin; an ended commission is not begun', async () => {
  const commission = await aCommission(studio.owner);
  const job = await aJob(studio.maker, { commissionId: commission.id });
  const staffId = studio.owner.actor.id;
  const why = 'The collector’s mother is ninety in June';
  await db().startOverride.create({
    data: { commissionId: commission.id, why, staffId, at: monday },
  });
  expect((await moveJobOn(studio.maker, move(job.id, 0, 10))).ok).toBe(true);
  await db().commissionEnding.create({
    data: { commissionId: commission.id, why, endedOn: monday, staffId, at: monday },
  });
  expect(await moveJobOn(studio.maker, move(job.id, 0, 14))).toEqual({
    ok: false,
    refusal: { code: 'commission_ended', commissionNumber: commission.number },
  });
  expect((await moveJobOn(studio.maker, move(job.id, 1, 10))).ok).toBe(true);
});

async function brokenBy(statement: string, values: unknown[]): Promise<string | null> {
  return sql(statement, values).then(
    () => null,
    (error: unknown) => constraintOf(error),
  );
}

test('the database itself refuses what no program may do', async () => {
  const commission = await aCommission(studio.owner);
  const own = await aJob(studio.maker);
  const theirs = await aJob(studio.maker, { commissionId: commission.id });
  const put = (jobId: string, from: number, to: number, pieces: number) =>
    brokenBy(
      `insert into "JobMove" ("jobId", "fromPosition", "toPosition", pieces, "staffId", "movedOn", at)
       values ($1, $2, $3, $4, $5, '2026-05-04', now())`,
      [jobId, from, to, pieces, studio.maker.actor.id],
    );
  expect(await put(own.id, 0, 1, 25)).toBe('pieces_leave_where_they_stand');
  expect(await put(own.id, 3, 4, 1)).toBe('pieces_leave_where_they_stand');
  expect(await put(own.id, 0, 9, 1)).toBe('pieces_leave_where_they_stand');
  expect(await put(own.id, 0, 1, 0)).toBe('move_has_pieces');
  expect(await put(own.id, 1, 1, 1)).toBe('pieces_leave_where_they_stand');
  expect(await put(theirs.id, 0, 1, 24)).toBe('making_begins_after_the_yes');
  expect(await put(own.id, 0, 1, 24)).toBeNull();
  expect(await brokenBy('delete from "JobMove"', [])).toBe('never_changed');
  expect(await brokenBy('update "JobMove" set pieces = 1', [])).toBe('never_changed');
  expect(await brokenBy('update "JobStep" set "likelyDays" = 1', [])).toBe('never_changed');
});
