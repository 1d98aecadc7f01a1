import { beforeEach, describe, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { readLossCounts } from '@/lib/studio/reads/forecast/loss-counts';
import { readStudioLoad } from '@/lib/studio/reads/forecast/load';
import { tellDays } from '@/lib/studio/reads/forecast/tell';
import { answersName } from '@/lib/studio/rules/forecast/load/jobs';
import { startAfresh } from '../../../helpers/database';
import { aCommission, aJob, agreed, aStudio, later, type TestStudio } from '../a-studio';
import { aKiln, lose, moveOn, today } from './a-load';

let studio: TestStudio;
beforeEach(async () => {
  await startAfresh();
  studio = await aStudio();
});

async function only(id: string) {
  const load = await readStudioLoad(db(), today);
  const own = load.jobs.find(({ job }) => job.id === id);
  if (!own) throw new Error('the job is not in the load');
  return { load, own };
}

describe('the load of the studio', () => {
  test('without a kiln nothing is told, and it is said which cone is missing', async () => {
    await aJob(studio.maker);
    const load = await readStudioLoad(db(), today);
    expect(load.jobs).toEqual([]);
    expect(load.stuck.map(({ refusal }) => refusal.code)).toEqual(['no_kiln_for_cone']);
  });

  test('a new job goes its route, with its kilns, benches and closed days', async () => {
    const kiln = await aKiln();
    await db().studioClosed.create({
      data: { fromOn: new Date('2026-07-03'), toOn: new Date('2026-07-04'), kilnId: kiln.id },
    });
    const job = await aJob(studio.maker, { size: tenInches });
    const { load, own } = await only(job.id);
    expect(own.sizeFrom).toBe('job');
    expect(own.job.standings).toEqual([{ position: 0, pieces: 24, sinceOn: null, heldBy: null }]);
    expect(load.studio.kilns[0]).toMatchObject({
      ...{ closedDays: ['2026-07-03', '2026-07-04'], loadsThisWeek: 0 },
      volumeCm3: Math.round(50.8 * 50.8 * (68.58 - 4 * 1.6)),
    });
    const [told] = tellDays(load);
    expect(told?.told.readyOn.in80 ?? '').toMatch(/^2026-/);
  });

  test('pieces in a lit kiln are held by it, the others at its step wait', async () => {
    const kiln = await aKiln();
    const job = await aJob(studio.maker, { pieces: 4 });
    const steps = await db().jobStep.findMany({
      where: { jobId: job.id },
      orderBy: { position: 'asc' },
    });
    const fire = steps.findIndex((step) => step.kind === 'fire') + 1;
    for (let at = 0; at < fire; at += 1) await moveOn(studio.maker, job.id, at, 4);
    await db().firing.create({
      data: {
        ...{
          kilnId: kiln.id,
          cone: steps[fire - 1]?.cone ?? '',
          peg: 'bisque',
          schedule: {},
          madeById: studio.maker.actor.id,
        },
        ...{ plannedOn: new Date(today), at: studio.maker.at },
        lines: {
          create: {
            ...{ jobId: job.id, position: fire, pieces: 3 },
            ...{ widthUm: 1, depthUm: 1, heightUm: 1 },
          },
        },
      },
    });
    const { id } = await db().firing.findFirstOrThrow({ select: { id: true } });
    await db().firingLit.create({
      data: {
        ...{ firingId: id, litOn: new Date(today), at: studio.maker.at },
        staffId: studio.maker.actor.id,
      },
    });
    const { load, own } = await only(job.id);
    expect(own.job.standings).toEqual([
      { position: fire, pieces: 3, sinceOn: today, heldBy: kiln.id },
      { position: fire, pieces: 1, sinceOn: today, heldBy: null },
    ]);
    expect(load.studio.kilns[0]?.loadsThisWeek).toBe(1);
    expect(tellDays(load)).toHaveLength(1);
  });

  test('a bench has begun as many as it takes, the longest there first', async () => {
    await aKiln();
    await db().bench.updateMany({ data: { atOnce: 1 } });
    const first = await aJob(studio.maker, { pieces: 2 });
    const second = await aJob(studio.maker, { pieces: 2 });
    await moveOn(studio.maker, second.id, 0, 2);
    await moveOn(later(studio.maker, '2026-05-05T17:00:00Z'), first.id, 0, 2);
    const load = await readStudioLoad(db(), '2026-05-06');
    const heldBy = (id: string) =>
      load.jobs.find(({ job }) => job.id === id)?.job.standings[0]?.heldBy ?? null;
    expect(heldBy(second.id)).not.toBeNull();
    expect(heldBy(first.id)).toBeNull();
  });

  test('a commission that may not begin waits for the collector; one that may does not', async () => {
    await aKiln();
    const commission = await aCommission(studio.gallery);
    await agreed(studio, commission.id, 90_000n);
    const job = await aJob(studio.maker, { commissionId: commission.id, pieces: 1 });
    const { own } = await only(job.id);
    expect(own.job.steps[0]).toMatchObject({
      kind: 'collector',
      name: answersName,
      likelyDays: 10,
    });
    expect(own.neededOn).toBe('2026-08-08');
    await db().startOverride.create({
      data: {
        ...{ commissionId: commission.id, why: 'The wall waits.', at: studio.owner.at },
        staffId: studio.owner.actor.id,
      },
    });
    expect((await only(job.id)).own.job.steps[0]?.kind).toBe('work');
  });

  test('a job of a commission that has ended, and a finished one, are no load', async () => {
    await aKiln();
    const job = await aJob(studio.maker, { pieces: 1 });
    const steps = await db().jobStep.count({ where: { jobId: job.id } });
    for (let at = 0; at <= steps; at += 1) await moveOn(studio.maker, job.id, at, 1);
    expect((await readStudioLoad(db(), today)).jobs).toEqual([]);
  });
});

describe('what the studio has counted of losses', () => {
  test('pieces that left a step or were lost there, by technique and name', async () => {
    await aKiln();
    const job = await aJob(studio.maker, { pieces: 10 });
    await moveOn(studio.maker, job.id, 0, 10);
    await lose(studio.maker, job.id, 1, 2);
    await moveOn(studio.maker, job.id, 1, 8);
    const first = await db().jobStep.findFirstOrThrow({
      where: { jobId: job.id },
      orderBy: { position: 'asc' },
    });
    const counts = await readLossCounts(db());
    expect(counts.get(`press_moulded ${first.name}`)).toEqual({ of: 10, lost: 2 });
    const { own } = await only(job.id);
    expect(own.job.steps[0]?.lossRate).toBeGreaterThan(0.05);
    expect(own.job.pieces).toBe(10);
  });
});

const tenInches = { widthUm: 254_000, heightUm: 254_000, depthUm: 25_400 };
