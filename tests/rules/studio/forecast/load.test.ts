import { describe, expect, test } from 'vitest';
import { forecast } from '@/lib/studio/rules/forecast/forecast';
import { askedJob, type AskedJob } from '@/lib/studio/rules/forecast/load/asked';
import type { JobInLoad, LoadFacts } from '@/lib/studio/rules/forecast/load/facts';
import { answersName, cancelDaysName } from '@/lib/studio/rules/forecast/load/jobs';
import { loadOf } from '@/lib/studio/rules/forecast/load/load';
import { queuesOf } from '@/lib/studio/rules/forecast/telling/queues';
import type { BeginFacts, Move } from '@/lib/studio/rules';
import type { RouteStep } from '@/lib/studio/rules/routes';

const step = (name: string, more: Partial<RouteStep> & Pick<RouteStep, 'kind'>): RouteStep => ({
  ...{ name, peg: 'clay', benchId: null, cone: '', isTogether: false, lossPercent: '0' },
  ...{ shortestDays: 2, likelyDays: 2, longestDays: 2, minutesEach: '0', caution: '' },
  ...more,
});
const steps = [
  step('pressing', { kind: 'work', benchId: 'moulds' }),
  step('drying', { kind: 'dry', lossPercent: '5' }),
  step('the bisque kiln', { kind: 'fire', cone: '06' }),
];
const begin: BeginFacts = {
  ...{ commissionNumber: 4, hasEnded: false, isLetBegin: false, depositCents: 100n },
  ...{ paidCents: 0n, sketchHasYes: true, coloursHaveYes: true, today: '2026-06-01' },
  clayFromOn: '2026-06-05',
};

function aJob(more: Partial<JobInLoad> = {}): JobInLoad {
  return {
    ...{ id: 'a', number: 1, title: 'Terns', technique: 'press_moulded', pieces: 4, wanted: 3 },
    ...{ steps, moves: [], inKilns: [], skuSize: null, neededOn: null, commission: null },
    size: { widthUm: 100_000, heightUm: 100_000, depthUm: 20_000 },
    ...more,
  };
}

function facts(jobs: readonly JobInLoad[], more: Partial<LoadFacts> = {}): LoadFacts {
  return {
    // A Monday.
    ...{ todayOn: '2026-06-01', closedWeekdays: [6, 7], promiseInHundred: 80, roomAroundUm: 0 },
    dryingPercents: Array.from({ length: 12 }, () => 100),
    ...{ answerDays: 10, closed: [], losses: new Map(), jobs },
    benches: [{ id: 'moulds', name: 'casting table', atOnce: 1 }],
    kilns: [
      {
        ...{ id: 'large', name: 'large kiln', cones: ['06'], turnsAWeek: 2, leastFillPercent: 50 },
        ...{ longestWaitDays: 10, loadsThisWeek: 0, shelves: 1, shelfThickUm: 0 },
        ...{ insideHeightUm: 100_000, shelfWidthUm: 200_000, shelfDepthUm: 100_000 },
      },
    ],
    ...more,
  };
}

function moved(id: number, from: number, to: number, pieces: number): Move {
  return {
    ...{ id: String(id), fromPosition: from, toPosition: to, pieces },
    ...{ movedOn: '2026-05-28', undoesId: null },
  };
}

describe('the load of the studio', () => {
  test('closed weekdays and days are those of the studio, its benches and its kilns', () => {
    const span = { fromOn: '2026-07-03', toOn: '2026-07-04', kilnId: null, benchId: null } as const;
    const closed = [span, { ...span, benchId: 'moulds', toOn: '2026-07-03' } as const];
    const { studio } = loadOf(facts([], { closed }));
    expect(studio.closed).toEqual({ weekdays: [6, 0], days: ['2026-07-03', '2026-07-04'] });
    expect(studio.benches[0]?.closedDays).toEqual(['2026-07-03']);
    expect(studio.kilns[0]).toMatchObject({ closedDays: [], volumeCm3: 2_000 });
  });

  test('spare pieces are in it, and what is too few is not begun yet', () => {
    const [own] = loadOf(facts([aJob()])).jobs;
    expect(own?.job).toMatchObject({ pieces: 4, wanted: 3, pieceCm3: 200 });
    const lost = [moved(1, 0, 1, 4), moved(2, 1, -1, 2)];
    const [fewer] = loadOf(facts([aJob({ moves: lost })])).jobs;
    expect(fewer?.job.standings).toEqual([
      { position: 0, pieces: 1, sinceOn: null, heldBy: null },
      { position: 1, pieces: 2, sinceOn: '2026-05-28', heldBy: 'moulds' },
    ]);
  });

  test('what comes before the clay stands before it, and moves the route on', () => {
    const commission = { id: 'c', number: 4, collector: 'Marit Oland', begin };
    const [own] = loadOf(facts([aJob({ commission })])).jobs;
    expect(own?.job.steps.slice(0, 2)).toMatchObject([
      { kind: 'wait', name: cancelDaysName, likelyDays: 4 },
      { kind: 'collector', name: answersName, shortestDays: 1, likelyDays: 10, longestDays: 30 },
    ]);
    expect(own?.missing).toEqual(['days_to_cancel', 'deposit']);
    const [begun] = loadOf(facts([aJob({ commission, moves: [moved(1, 0, 1, 4)] })])).jobs;
    expect(begun?.job.steps).toHaveLength(3);
  });

  test('a job whose pieces no kiln fires is stuck, and the others are told all the same', () => {
    const cold = aJob({ id: 'b', steps: [step('the glaze kiln', { kind: 'fire', cone: '6' })] });
    const load = loadOf(facts([aJob(), cold]));
    expect(load.stuck.map(({ of, refusal }) => [of.job.id, refusal.code])).toEqual([
      ['b', 'no_kiln_for_cone'],
    ]);
    const { studio, jobs, todayOn } = load;
    const course = { futures: 20, seed: 1, sightDays: 400 };
    expect(
      forecast(
        studio,
        jobs.map(({ job }) => job),
        todayOn,
        course,
      ).ok,
    ).toBe(true);
  });
});

describe('what waits for the kilns', () => {
  test('is counted by cone, with how full each kiln would be and when it is lit at the latest', () => {
    const moves = [moved(1, 0, 1, 4), moved(2, 1, 2, 4), moved(3, 2, 3, 4)];
    const inKilns = [{ position: 3, pieces: 1, kilnId: 'large', litOn: '2026-06-01' }] as const;
    expect(queuesOf(loadOf(facts([aJob({ moves, inKilns })])))).toEqual([
      {
        ...{ cone: '06', pieces: 3, cm3: 600, sinceOn: '2026-05-28' },
        kilns: [
          {
            ...{ name: 'large kiln', fillPercent: 30, leastFillPercent: 50 },
            atLatestOn: '2026-06-07',
          },
        ],
      },
    ]);
    expect(queuesOf(loadOf(facts([aJob()])))).toEqual([]);
  });
});

describe('a day that is asked before a price', () => {
  const asked: AskedJob = {
    ...{ technique: 'press_moulded', route: steps, pieces: 6, answersFirst: true },
    size: { widthUm: 100_000, heightUm: 100_000, depthUm: 50_800 },
  };
  test('waits for their answers, dries by its thickness and goes last', () => {
    const { job, sizeFrom } = askedJob(facts([]), asked);
    expect(job.steps.map((one) => one.name)).toEqual([
      ...[answersName, 'pressing', 'drying', 'the bisque kiln'],
    ]);
    expect(job.steps[2]?.likelyDays).toBeGreaterThan(35);
    expect([job.neededOn, job.wanted, sizeFrom]).toEqual([null, 6, 'job']);
    expect(askedJob(facts([]), { ...asked, answersFirst: false }).job.steps).toHaveLength(3);
  });
});
