import { beforeEach, describe, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { listPartHistory } from '@/lib/studio/reads/parts/history';
import { findForetold, findPartMap, listBuckets } from '@/lib/studio/reads/parts/map';
import { glazeParts } from '@/lib/studio/writes/parts/glaze';
import { loseParts, movePartsOn } from '@/lib/studio/writes/parts/move';
import { startAfresh } from '../../helpers/database';
import { aDrawnJob, chosen, intoALitKiln } from './a-drawn-job';
import { aKey, aStudio, monday } from './a-studio';
import type { TestStudio } from './a-studio';

let studio: TestStudio;

beforeEach(async () => {
  await startAfresh();
  studio = await aStudio();
});

describe('parts on their way', () => {
  test('chosen parts go on, each from where it stands', async () => {
    const job = await aDrawnJob(studio);
    await movePartsOn(studio.maker, chosen(job.id, [job.idOf(1), job.idOf(2)]));
    const two = await movePartsOn(studio.maker, chosen(job.id, [job.idOf(2), job.idOf(3)]));
    expect(two.ok && two.value.moves.map(({ toPosition }) => toPosition)).toEqual([2, 1]);
    const map = await findPartMap(studio.maker.actor, job.number);
    expect(map?.numbers.map(({ best }) => best?.position)).toEqual([1, 2, 1, 0, 0, 0]);
    expect(map?.fires.map(({ safe, of }) => [safe, of])[0]).toEqual([0, 6]);
  });

  test('the same touch twice moves once', async () => {
    const job = await aDrawnJob(studio);
    const touch = chosen(job.id, [job.idOf(1)]);
    const both = await Promise.all([
      movePartsOn(studio.maker, touch),
      movePartsOn(studio.maker, touch),
    ]);
    expect(both[0]).toEqual(both[1]);
    expect(await db().jobMove.count()).toBe(1);
  });

  test('a lost part is begun anew; where its spare lives, it is not', async () => {
    const job = await aDrawnJob(studio);
    await movePartsOn(studio.maker, chosen(job.id, job.all));
    const loss = { cause: 'joint', note: 'along the wing' } as const;
    const spare = await loseParts(studio.maker, { ...chosen(job.id, [job.idOf(2)]), ...loss });
    expect(spare).toMatchObject({ ok: true, value: { begunAnew: 0 } });
    const alone = await loseParts(studio.maker, { ...chosen(job.id, [job.idOf(4)]), ...loss });
    expect(alone).toMatchObject({ ok: true, value: { begunAnew: 1 } });
    const map = await findPartMap(studio.maker.actor, job.number);
    expect(map?.numbers[1]).toMatchObject({
      best: { make: 2 },
      isAnew: false,
      lost: [{ cause: 'joint' }],
    });
    expect(map?.numbers[3]).toMatchObject({ best: { make: 2, position: 0 }, isAnew: true });
    const [told] = await listPartHistory(studio.maker.actor, { jobId: job.id, number: 4 });
    expect(told?.moves.at(-1)).toMatchObject({
      cause: 'joint',
      note: 'along the wing',
      by: 'Osip Lund',
    });
  });

  test('the days that were foretold last are told, not those that were only asked for', async () => {
    const job = await aDrawnJob(studio);
    const days = { jobId: job.id, drives: [], futures: 400, at: monday };
    for (const [why, toldOn] of [
      ['remade', '2026-05-04'],
      ['asked', '2026-05-05'],
    ] as const) {
      await db().foretold.create({
        data: { ...days, why, toldOn: new Date(toldOn), in80On: new Date('2026-08-01') },
      });
    }
    expect(await findForetold(studio.maker.actor, job.id)).toEqual({
      ...{ toldOn: '2026-05-04', in50On: null, in80On: '2026-08-01', in95On: null },
    });
  });

  test('is refused with what to do', async () => {
    const job = await aDrawnJob(studio);
    const other = await aDrawnJob(studio);
    await movePartsOn(studio.maker, chosen(job.id, [job.idOf(1)]));
    const loss = { cause: 'handling', note: '' } as const;
    await loseParts(studio.maker, { ...chosen(job.id, [job.idOf(1)]), ...loss });
    const refusals = [
      await movePartsOn(studio.gallery, chosen(job.id, [job.idOf(1)])),
      await movePartsOn(studio.maker, chosen(aKey(), [job.idOf(1)])),
      await movePartsOn(studio.maker, chosen(job.id, [])),
      await movePartsOn(studio.maker, chosen(job.id, [other.idOf(1)])),
      await movePartsOn(studio.maker, chosen(job.id, [job.idOf(1)])),
      await loseParts(studio.maker, { ...chosen(job.id, [job.idOf(3)]), cause: 'other', note: '' }),
      await loseParts(studio.maker, { ...chosen(job.id, [job.idOf(3)]), ...loss }),
    ];
    expect(refusals.map((one) => (one.ok ? 'moved' : one.refusal.code))).toEqual([
      'not_allowed',
      'no_such_job',
      'nothing_chosen',
      'no_such_part',
      'part_lost',
      'say_what',
      'not_begun',
    ]);
  });

  test('a part in a kiln that was lit stays there', async () => {
    const job = await aDrawnJob(studio);
    for (let step = 1; step <= 5; step += 1) {
      await movePartsOn(studio.maker, chosen(job.id, [job.idOf(1), job.idOf(3)]));
    }
    await intoALitKiln(studio, job.id, job.idOf(1));
    const refused = await movePartsOn(studio.maker, chosen(job.id, [job.idOf(3), job.idOf(1)]));
    expect(refused).toEqual({ ok: false, refusal: { code: 'part_in_kiln', number: 1 } });
    const map = await findPartMap(studio.maker.actor, job.number);
    expect(map?.numbers.map(({ best }) => best?.isInKiln)).toEqual([
      true,
      ...Array<boolean>(5).fill(false),
    ]);
    const [told] = await listPartHistory(studio.maker.actor, { jobId: job.id, number: 1 });
    expect(told?.firings).toMatchObject([{ kiln: 'the tall kiln', cone: '04', openedOn: null }]);
  });
});

describe('glaze', () => {
  async function aBucket() {
    const mixedOn = new Date('2026-05-01');
    return db().glazeBatch.create({
      data: { number: 'B-12', glaze: 'Tidewater celadon', mixedOn },
    });
  }

  test('is written down for one or many parts, and told of each', async () => {
    const job = await aDrawnJob(studio);
    await movePartsOn(studio.maker, chosen(job.id, job.all));
    const bucket = await aBucket();
    const laid = { batchId: bucket.id, coats: 3, on: '2026-05-04' } as const;
    const both = chosen(job.id, [job.idOf(1), job.idOf(2)]);
    expect(await glazeParts(studio.maker, { ...both, ...laid })).toEqual({
      ok: true,
      value: { parts: 2, coats: 3, bucket: 'B-12' },
    });
    const [told] = await listPartHistory(studio.maker.actor, { jobId: job.id, number: 2 });
    expect(told?.glazes).toMatchObject([
      { bucket: 'B-12', coats: 3, on: '2026-05-04', by: 'Osip Lund' },
    ]);
    expect(await listBuckets(studio.maker.actor, null)).toMatchObject([
      { number: 'B-12', isForThis: false },
    ]);
  });

  test('is not written down for what is not begun, from no bucket, or for a day to come', async () => {
    const job = await aDrawnJob(studio);
    const bucket = await aBucket();
    const laid = { batchId: bucket.id, coats: 1, on: '2026-05-04' } as const;
    const one = () => ({ ...chosen(job.id, [job.idOf(1)]), ...laid });
    const early = await glazeParts(studio.maker, one());
    await movePartsOn(studio.maker, chosen(job.id, [job.idOf(1)]));
    const none = await glazeParts(studio.maker, { ...one(), batchId: aKey() });
    const ahead = await glazeParts(studio.maker, { ...one(), on: '2026-05-05' });
    const said = [early, none, ahead].map((each) => (each.ok ? 'kept' : each.refusal.code));
    expect(said).toEqual(['part_not_begun', 'no_such_bucket', 'day_to_come']);
  });
});
