import { beforeEach, expect, test } from 'vitest';
import { db } from '@/lib/platform/db/client';
import { constraintOf } from '@/lib/platform/db/errors';
import { keepRouteInput, type KeepRouteInput } from '@/lib/studio/input/routes';
import { waysInputIn } from '@/lib/studio/input/ways';
import { listRoutes } from '@/lib/studio/reads/route-list';
import { getStudioSettings } from '@/lib/studio/reads/settings';
import { listClosedDays } from '@/lib/studio/reads/closed-days';
import { endRoute, keepRoute } from '@/lib/studio/writes/routes/keep';
import { closeDays, endBench, keepBench, keepWays, openDays } from '@/lib/studio/writes/ways/keep';
import { startAfresh } from '../../helpers/database';
import { aJob, aKey, aStudio, type TestStudio } from './a-studio';

let studio: TestStudio;

beforeEach(async () => {
  await startAfresh();
  studio = await aStudio();
});

async function benchCalled(name: string): Promise<string> {
  return (await db().bench.findUniqueOrThrow({ where: { name } })).id;
}

/** A route of two steps, as its form sends it. */
async function aForm(over: Record<string, string> = {}) {
  const row = (key: string, fields: Record<string, string>) =>
    Object.fromEntries(Object.entries(fields).map(([name, value]) => [`s${key}-${name}`, value]));
  const days = { shortestDays: '1', likelyDays: '2', longestDays: '4', isTogether: 'one_by_one' };
  const rest = { ...days, lossPercent: '2.5', minutesEach: '12', caution: '' };
  const benchId = await benchCalled('wheel');
  return {
    ...{
      requestKey: aKey(),
      routeId: '',
      name: 'Bowls in one day',
      technique: 'thrown',
      rows: '4,2',
    },
    ...row('2', {
      ...rest,
      name: 'the fast kiln',
      peg: 'glaze',
      kind: 'fire',
      cone: '04',
      benchId,
    }),
    ...row('4', { ...rest, name: 'throwing', peg: 'clay', kind: 'work', cone: '', benchId }),
    ...over,
  };
}

async function aRoute(over: Record<string, string> = {}): Promise<KeepRouteInput> {
  return keepRouteInput.parse(await aForm(over));
}

test('a route is kept in the order of its rows; a kiln has a cone and a bench a name', async () => {
  const kept = await keepRoute(studio.maker, await aRoute());
  if (!kept.ok) throw new Error(kept.refusal.code);
  const route = (await listRoutes(studio.maker.actor)).find((one) => one.id === kept.value.id);
  expect(
    route?.steps.map(({ name, kind, cone, benchId }) => [name, kind, cone, benchId !== null]),
  ).toEqual([
    ['throwing', 'work', '', true],
    ['the fast kiln', 'fire', '04', false],
  ]);
  const job = await aJob(studio.maker, { routeId: kept.value.id, pieces: 3 });
  const steps = {
    where: { jobId: job.id },
    select: { name: true },
    orderBy: { position: 'asc' },
  } as const;
  expect(await db().jobStep.findMany(steps)).toEqual([
    { name: 'throwing' },
    { name: 'the fast kiln' },
  ]);
});

test('a job keeps its route when the route is changed', async () => {
  const kept = await keepRoute(studio.maker, await aRoute());
  if (!kept.ok) throw new Error(kept.refusal.code);
  const { id } = kept.value;
  const job = await aJob(studio.maker, { routeId: id });
  const changed = await aRoute({ routeId: id, rows: '4', name: 'Bowls, raw' });
  expect((await keepRoute(studio.maker, changed)).ok).toBe(true);
  expect(await db().routeStep.count({ where: { routeId: id } })).toBe(1);
  expect(await db().jobStep.count({ where: { jobId: job.id } })).toBe(2);
});

test.each([
  ['likely below shortest', { 's4-likelyDays': '0' }, 's4-likelyDays'],
  ['longest below likely', { 's2-longestDays': '1' }, 's2-longestDays'],
  ['a firing of no day', { 's2-shortestDays': '0' }, 's2-shortestDays'],
  ['all are lost', { 's4-lossPercent': '100' }, 's4-lossPercent'],
  ['work without a bench', { 's4-benchId': '' }, 's4-benchId'],
  ['a firing without a cone', { 's2-cone': '' }, 's2-cone'],
  ['two steps of one name', { 's2-name': 'Throwing' }, 's2-name'],
  ['days that are no number', { 's2-likelyDays': 'two' }, 's2-likelyDays'],
])('what is wrong is told at its field: %s', async (_label, over, field) => {
  const read = keepRouteInput.safeParse(await aForm(over));
  expect(read.error?.issues.map((issue) => issue.path.join('.'))).toContain(field);
});

test('refusals, in their order', async () => {
  const usual = await db().route.findFirstOrThrow({ where: { technique: 'thrown' } });
  const nobody = { routeId: aKey(), name: 'Slip-cast', 's4-benchId': aKey() };
  const told = async (over: Record<string, string>) => {
    const kept = await keepRoute(studio.maker, await aRoute(over));
    return kept.ok ? 'kept' : kept.refusal.code;
  };
  expect(await keepRoute(studio.gallery, await aRoute(nobody))).toMatchObject({
    refusal: { code: 'not_allowed' },
  });
  expect(await told(nobody)).toBe('no_such_route');
  expect(await told({ ...nobody, routeId: usual.id })).toBe('name_taken');
  expect(await told({ routeId: usual.id, 's4-benchId': aKey() })).toBe('no_such_bench');
  expect(await told({ routeId: usual.id })).toBe('one_stays_usual');
  expect(await told({ routeId: usual.id, isUsual: 'on', technique: 'slip_cast' })).toBe(
    'one_stays_usual',
  );
  expect(await told({ routeId: usual.id, isUsual: 'on' })).toBe('kept');
});

test('another route becomes the usual one in one act, and the former can be put away then', async () => {
  const former = await db().route.findFirstOrThrow({ where: { technique: 'thrown' } });
  const away = () => endRoute(studio.maker, { requestKey: aKey(), routeId: former.id });
  expect(await away()).toMatchObject({ refusal: { code: 'one_stays_usual' } });
  expect((await keepRoute(studio.maker, await aRoute({ isUsual: 'on' }))).ok).toBe(true);
  expect((await away()).ok).toBe(true);
  expect(await away()).toMatchObject({ refusal: { code: 'route_was_put_away' } });
  const usual = { where: { technique: 'thrown', isUsual: true, endedAt: null } } as const;
  expect(await db().route.count(usual)).toBe(1);
  const second = db().route.create({
    data: { name: 'Two usual', technique: 'thrown', isUsual: true },
  });
  await expect(second).rejects.toSatisfy((error) => constraintOf(error) === 'one_usual_route');
});

test('the ways of the studio are kept, and what cannot be is told', async () => {
  const form = {
    ...{ requestKey: aKey(), closedWeekdays: ['7', '6'], promiseInHundred: '90' },
    ...{
      startInHundred: '97.5',
      roomAroundUm: '1/4',
      centsPerHour: '25.00',
      overheadPercent: '20',
    },
    ...{ glazeCentsPerM2: '12.50', degrees: 'C' },
    ...Object.fromEntries(Array.from({ length: 12 }, (_, at) => [`dry${at + 1}`, `${100 + at}`])),
  };
  expect((await keepWays(studio.maker, waysInputIn('in').parse(form))).ok).toBe(true);
  expect(await getStudioSettings()).toMatchObject({
    ...{ closedWeekdays: [6, 7], promiseInHundred: 90, startInHundred: '97.5', degrees: 'C' },
    ...{ centsPerHour: 2_500n, roomAroundUm: 6_350 },
  });
  const never = { ...form, closedWeekdays: ['1', '2', '3', '4', '5', '6', '7'], dry3: '5' };
  const faults = waysInputIn('in')
    .safeParse(never)
    .error?.issues.map((issue) => issue.path[0]);
  expect(faults).toEqual(['dry3', 'closedWeekdays']);
});

test('closed days come and go; a bench that a route needs stays', async () => {
  const days = { fromOn: '2026-12-24', toOn: '2026-12-31', why: 'the holidays' } as const;
  await closeDays(studio.maker, { requestKey: aKey(), ...days });
  const [closed] = await listClosedDays(studio.maker.actor, '2026-05-04');
  expect(closed).toMatchObject({ ...days, kiln: null });
  await openDays(studio.maker, { requestKey: aKey(), closedId: closed?.id ?? '' });
  expect(await listClosedDays(studio.maker.actor, '2026-05-04')).toEqual([]);
  const wheel = await benchCalled('wheel');
  const gone = await endBench(studio.maker, { requestKey: aKey(), benchId: wheel });
  expect(gone).toEqual({ ok: false, refusal: { code: 'bench_is_used', by: 'Thrown' } });
  const taken = { requestKey: aKey(), benchId: wheel, name: 'glazing bench', atOnce: 1 };
  expect(await keepBench(studio.maker, taken)).toMatchObject({ refusal: { code: 'name_taken' } });
  const another = { requestKey: aKey(), benchId: null, name: 'second wheel', atOnce: 1 };
  expect((await keepBench(studio.maker, another)).ok).toBe(true);
  const second = await benchCalled('second wheel');
  expect((await endBench(studio.maker, { requestKey: aKey(), benchId: second })).ok).toBe(true);
});
