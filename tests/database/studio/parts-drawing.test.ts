import { beforeEach, describe, expect, test } from 'vitest';
import { constraintOf } from '@/lib/platform/db/errors';
import { db } from '@/lib/platform/db/client';
import { findJobToDraw } from '@/lib/studio/reads/parts/drawing';
import { gridOf } from '@/lib/studio/rules/parts/laying';
import { drawParts } from '@/lib/studio/writes/parts/draw';
import { movePartsOn } from '@/lib/studio/writes/parts/move';
import { sql, startAfresh } from '../../helpers/database';
import { aDrawnJob, chosen, drawing, sixParts, withSpareOfTwo } from './a-drawn-job';
import { aCommission, aJob, aKey, aStudio, later, saidYes } from './a-studio';
import type { TestStudio } from './a-studio';

let studio: TestStudio;

beforeEach(async () => {
  await startAfresh();
  studio = await aStudio();
});

describe('drawing', () => {
  test('gives the job one part for each number, two where a spare is made, and its count', async () => {
    const job = await aDrawnJob(studio);
    const kept = await db().job.findUniqueOrThrow({ where: { id: job.id } });
    expect([kept.pieces, kept.wanted]).toEqual([7, 6]);
    const read = await findJobToDraw(studio.maker.actor, job.number);
    expect(read?.drawing).toMatchObject({ version: 1, widthUm: 900_000, by: 'Osip Lund' });
    expect(read?.drawing?.shapes).toEqual(withSpareOfTwo);
    const lines = await db().auditLine.findMany({
      where: { subjectId: job.id },
      orderBy: { id: 'asc' },
    });
    expect(lines.at(-1)).toMatchObject({ did: 'drew the numbered parts of a job' });
  });

  test('is drawn again while no clay was begun, and never after', async () => {
    const job = await aDrawnJob(studio);
    const fewer = gridOf({ rows: 1, columns: 2, isOffset: false });
    const again = await drawParts(studio.owner, drawing(job.id, { version: 1, shapes: fewer }));
    expect(again).toEqual({
      ok: true,
      value: { jobNumber: job.number, version: 2, parts: 2, spares: 0 },
    });
    const parts = await db().part.findMany({ where: { jobId: job.id } });
    expect(parts).toHaveLength(2);
    await movePartsOn(
      studio.maker,
      chosen(
        job.id,
        parts.map(({ id }) => id),
      ),
    );
    const late = await drawParts(studio.owner, drawing(job.id, { version: 2 }));
    expect(late).toEqual({ ok: false, refusal: { code: 'clay_begun' } });
  });

  test('of two who draw, the second is told, and may save in place of the first knowingly', async () => {
    const job = await aDrawnJob(studio);
    const second = drawing(job.id, { version: 0 });
    const told = await drawParts(studio.owner, second);
    expect(told).toEqual({
      ok: false,
      refusal: { code: 'drawn_meanwhile', by: 'Osip Lund', version: 1 },
    });
    const over = await drawParts(studio.owner, { ...second, requestKey: aKey(), over: 1 });
    expect(over).toMatchObject({ ok: true, value: { version: 2, parts: 6 } });
    const [line] = await db().auditLine.findMany({
      where: { subjectId: job.id },
      orderBy: { id: 'desc' },
      take: 1,
    });
    expect((line?.facts as { drawnOver?: string[] }).drawnOver).toHaveLength(6);
    const stale = await drawParts(studio.owner, { ...second, requestKey: aKey(), over: 1 });
    expect(stale).toMatchObject({ refusal: { code: 'drawn_meanwhile', version: 2 } });
  });

  test('of two at the same instant one is kept', async () => {
    const job = await aJob(studio.maker, { technique: 'slab_relief', pieces: 1 });
    const both = await Promise.all([
      drawParts(studio.maker, drawing(job.id)),
      drawParts(studio.owner, drawing(job.id)),
    ]);
    expect(both.filter(({ ok }) => ok)).toHaveLength(1);
    expect(await db().part.count({ where: { jobId: job.id } })).toBe(6);
  });

  test('the same form twice is one drawing', async () => {
    const job = await aJob(studio.maker, { technique: 'slab_relief', pieces: 1 });
    const form = drawing(job.id);
    expect(await drawParts(studio.maker, form)).toEqual(await drawParts(studio.maker, form));
    expect(await db().partMap.findMany({ select: { version: true } })).toEqual([{ version: 1 }]);
  });

  test('is refused to whoever may not, of no job, and when parts lie over one another', async () => {
    const job = await aJob(studio.maker, { technique: 'slab_relief', pieces: 1 });
    expect(await drawParts(studio.gallery, drawing(job.id))).toEqual({
      ok: false,
      refusal: { code: 'not_allowed', permission: 'studio.keep' },
    });
    expect(await drawParts(studio.maker, drawing(aKey()))).toEqual({
      ok: false,
      refusal: { code: 'no_such_job' },
    });
    const [first] = sixParts;
    if (!first) throw new Error('A grid has a first part.');
    const twice = [first, { ...first, number: 2 }];
    expect(await drawParts(studio.maker, drawing(job.id, { shapes: twice }))).toEqual({
      ok: false,
      refusal: { code: 'parts_overlap', number: 1, other: 2 },
    });
    expect(await db().part.count()).toBe(0);
  });

  test('lies over the approved sketch of its commission, with its colour areas', async () => {
    const commission = await aCommission(studio.owner);
    await saidYes(studio, commission.id, 'sketch');
    const sketch = await db().sketch.findFirstOrThrow();
    await db().sketchArea.create({
      data: { sketchId: sketch.id, position: 1, name: 'the water', xPermille: 500, yPermille: 800 },
    });
    const job = await aJob(studio.maker, {
      ...{ technique: 'slab_relief', pieces: 1, commissionId: commission.id },
    });
    const read = await findJobToDraw(studio.maker.actor, job.number);
    expect(read?.over).toMatchObject({
      words: 'the approved sketch A',
      areas: [{ name: 'the water', at: [500, 800] }],
    });
    const { fileId } = sketch;
    await drawParts(studio.maker, drawing(job.id, { fileId }));
    expect((await db().partMap.findFirstOrThrow()).fileId).toBe(fileId);
    const elsewhere = await aJob(studio.maker, { technique: 'slab_relief', pieces: 1 });
    await drawParts(studio.maker, drawing(elsewhere.id, { fileId }));
    const map = await db().partMap.findUniqueOrThrow({ where: { jobId: elsewhere.id } });
    expect(map.fileId).toBeNull();
  });
});

describe('held by the database', () => {
  test('a move of such a job names its parts, and a part leaves only where it stands', async () => {
    const job = await aDrawnJob(studio);
    const move = sql(
      `insert into "JobMove" ("jobId", "fromPosition", "toPosition", pieces, "staffId", "movedOn", at)
       values ('${job.id}', 0, 1, 1, '${studio.maker.actor.id}', '2026-05-04', now())`,
    );
    expect(constraintOf(await move.catch((error: unknown) => error))).toBe('move_names_its_parts');
    await movePartsOn(later(studio.maker, '2026-05-05T17:00:00Z'), chosen(job.id, [job.idOf(1)]));
    const wrong = sql(
      `with moved as (insert into "JobMove" ("jobId", "fromPosition", "toPosition", pieces, "staffId", "movedOn", at)
         values ('${job.id}', 0, 1, 1, '${studio.maker.actor.id}', '2026-05-04', now()) returning id)
       insert into "PartMove" ("moveId", "partId") select id, '${job.idOf(1)}' from moved`,
    );
    await expect(wrong).rejects.toThrow();
    const gone = sql(`delete from "Part" where "jobId" = '${job.id}'`);
    expect(constraintOf(await gone.catch((error: unknown) => error))).toBe(
      'parts_come_before_the_clay',
    );
  });

  test('a job has as many parts as pieces', async () => {
    const job = await aDrawnJob(studio);
    const more = sql(`update "Job" set pieces = 9 where id = '${job.id}'`);
    expect(constraintOf(await more.catch((error: unknown) => error))).toBe(
      'as_many_parts_as_pieces',
    );
  });
});
