import { describe, expect, test } from 'vitest';
import { addDays, type Day } from '@/lib/dates/rules';
import {
  forecast,
  promiseDay,
  readyDayIn,
  shareReadyBy,
  type JobForecast,
} from '@/lib/studio/rules/forecast/forecast';
import { forecastRefusalMessage, type ForecastJob } from '@/lib/studio/rules/forecast/model';
import { likelihoods } from '@/lib/studio/rules/forecast/pert';
import { aBench, aJob, aKiln, aStep, aStudio, openJobs, today, twoKilns } from './a-load';

const course = { futures: 40, seed: 3, sightDays: 400 };
const fixed = (days: number) => [days, days, days] as const;
const atBench = (days: number) => aStep('modelling', { bench: 'bench' }, fixed(days));
const inKiln = (days: number, cone = '6') => aStep('the glaze kiln', { cone }, fixed(days));

function told(jobs: readonly ForecastJob[], studio = aStudio(), on: Day = today): JobForecast[] {
  const said = forecast(studio, jobs, on, course);
  if (!said.ok) throw new Error(said.refusal.code);
  return said.value;
}

/** The day of each job, where chance has nothing to say. */
function daysOf(jobs: readonly ForecastJob[], studio = aStudio(), on: Day = today) {
  return told(jobs, studio, on).map(({ readyOn }) => {
    expect(new Set(Object.values(readyOn)).size).toBe(1);
    return readyOn.in80;
  });
}

// The first of June 2026 is a Monday.
describe('as one counts by hand', () => {
  test('three days at a bench from a Thursday, then two in a free kiln', () => {
    const thursday = '2026-06-04';
    expect(daysOf([aJob({ id: 'a', steps: [atBench(3)] })], aStudio(), thursday)).toEqual([
      '2026-06-09',
    ]);
    const both = aJob({ id: 'a', steps: [atBench(3), inKiln(2)] });
    expect(daysOf([both], aStudio(), thursday)).toEqual(['2026-06-11']);
  });
  test('a kiln goes on over the weekend and is emptied on the Monday', () => {
    expect(daysOf([aJob({ id: 'a', steps: [atBench(4), inKiln(2)] })])).toEqual(['2026-06-08']);
  });
  test('a job begun on a closed day begins on the next that is open', () => {
    const saturday = '2026-06-06';
    expect(daysOf([aJob({ id: 'a', steps: [atBench(1)] })], aStudio(), saturday)).toEqual([
      '2026-06-09',
    ]);
  });
  test('nobody is at a bench on its own closed day', () => {
    const studio = aStudio({ benches: [aBench('bench', 1, ['2026-06-02'])] });
    expect(daysOf([aJob({ id: 'a', steps: [atBench(2)] })], studio)).toEqual(['2026-06-04']);
  });
  test('two jobs at one place follow each other, the sooner needed first', () => {
    const late = aJob({ id: 'late', steps: [atBench(2)] });
    const soon = aJob({ id: 'soon', steps: [atBench(2)], neededOn: '2026-06-03' });
    expect(daysOf([late, soon])).toEqual(['2026-06-05', '2026-06-03']);
    const both = [{ ...late, neededOn: '2026-06-20' as const }, soon];
    expect(daysOf(both)).toEqual(['2026-06-05', '2026-06-03']);
    const studio = aStudio({ benches: [aBench('bench', 2)] });
    expect(daysOf([late, soon], studio)).toEqual(['2026-06-03', '2026-06-03']);
  });
  test('a kiln waits for half a load, and no longer than ten days', () => {
    const studio = aStudio({ kilns: [aKiln({ leastFillPercent: 50, longestWaitDays: 10 })] });
    const small = aJob({ id: 'small', pieceCm3: 10_000, steps: [inKiln(2)] });
    expect(daysOf([small], studio)).toEqual(['2026-06-15']);
    const large = aJob({ id: 'large', pieceCm3: 90_000, steps: [atBench(3), inKiln(2)] });
    expect(daysOf([small, large], studio)).toEqual(['2026-06-08', '2026-06-08']);
  });
  test('another cone is another load', () => {
    const [six, ofour] = [inKiln(2, '6'), inKiln(2, '06')];
    const jobs = [aJob({ id: 'a', steps: [six] }), aJob({ id: 'b', steps: [ofour] })];
    expect(daysOf(jobs)).toEqual(['2026-06-03', '2026-06-05']);
    const oneTurn = aStudio({ kilns: [aKiln({ turnsAWeek: 1 })] });
    expect(daysOf(jobs, oneTurn)).toEqual(['2026-06-03', '2026-06-10']);
    const usedUp = aStudio({ kilns: [aKiln({ turnsAWeek: 2, loadsThisWeek: 1 })] });
    expect(daysOf(jobs, usedUp)).toEqual(['2026-06-03', '2026-06-10']);
  });
  test('more pieces than a load holds need a second', () => {
    const job = aJob({ id: 'a', pieces: 10, pieceCm3: 30_000, steps: [inKiln(2)] });
    expect(daysOf([job])).toEqual(['2026-06-05']);
  });
  test('a large piece waits for the kiln that holds it', () => {
    const small = aKiln({ id: 'small', volumeCm3: 20_000 });
    const large = aKiln({ id: 'large', closedDays: ['2026-06-01', '2026-06-02'] });
    const job = aJob({ id: 'a', pieceCm3: 30_000, steps: [inKiln(2)] });
    expect(daysOf([job], aStudio({ kilns: [small, large] }))).toEqual(['2026-06-05']);
  });
  test('clay dries half as long again in a wet month', () => {
    const percents = [150, 150, 150, 100, 100, 100, 100, 100, 100, 100, 150, 150];
    const job = aJob({ id: 'a', steps: [aStep('drying', { kind: 'dry' }, fixed(10))] });
    const studio = aStudio({ dryingPercents: percents });
    expect(daysOf([job], studio, '2026-06-01')).toEqual(['2026-06-11']);
    expect(daysOf([job], studio, '2026-02-02')).toEqual(['2026-02-17']);
  });
  test('assembly waits for the last piece', () => {
    const steps = [
      atBench(1),
      inKiln(2),
      aStep('assembly on the board', { bench: 'board' }, fixed(1), { isTogether: true }),
    ];
    const standings = [
      { position: 1, pieces: 1, sinceOn: today, heldBy: 'bench' },
      { position: 3, pieces: 1, sinceOn: '2026-05-20', heldBy: null },
    ] as const;
    const studio = aStudio({ benches: [aBench('bench'), aBench('board')] });
    const job = aJob({ id: 'a', pieces: 2, steps, standings });
    expect(daysOf([job], studio)).toEqual(['2026-06-05']);
    expect(told([job], studio)[0]?.drives.map((drive) => drive.days)).toEqual([2, 1, 1]);
  });
  test('what was begun before today has that much less to go', () => {
    const drying = aStep('drying', { kind: 'dry' }, fixed(10));
    const since = (sinceOn: Day) =>
      aJob({
        id: 'a',
        steps: [drying],
        standings: [{ position: 1, pieces: 1, sinceOn, heldBy: null }],
      });
    expect(daysOf([since('2026-05-25')])).toEqual(['2026-06-04']);
    expect(daysOf([since('2026-05-22')])).toEqual(['2026-06-01']);
    expect(daysOf([since('2026-04-01')])).toEqual(['2026-06-01']);
  });
  test('a load in the kiln keeps it until it is out', () => {
    const inside = aJob({
      id: 'inside',
      steps: [inKiln(4)],
      standings: [{ position: 1, pieces: 1, sinceOn: '2026-05-29', heldBy: 'kiln' }],
    });
    const waiting = aJob({ id: 'waiting', steps: [inKiln(2)] });
    expect(daysOf([inside, waiting])).toEqual(['2026-06-02', '2026-06-04']);
  });
  test('one piece of ten is modelled again in a tenth of the days', () => {
    const steps = [atBench(10), aStep('drying', { kind: 'dry' }, fixed(2))];
    const standings = [
      { position: 0, pieces: 1, sinceOn: null, heldBy: null },
      { position: 3, pieces: 9, sinceOn: null, heldBy: null },
    ] as const;
    expect(daysOf([aJob({ id: 'a', pieces: 10, steps, standings })])).toEqual(['2026-06-04']);
  });
  test('the collector takes days of the calendar, and a finished job is ready today', () => {
    const asked = aJob({ id: 'a', steps: [aStep('a yes', { kind: 'collector' }, fixed(5))] });
    const standings = [{ position: 2, pieces: 1, sinceOn: null, heldBy: null }] as const;
    const finished = aJob({ id: 'b', steps: [atBench(2)], standings });
    expect(daysOf([asked, finished])).toEqual(['2026-06-08', today]);
  });
});

describe('what is out of sight', () => {
  test('a job whose every piece is lost is never ready', () => {
    const steps = [atBench(1), aStep('drying', { kind: 'dry' }, fixed(1), { lossRate: 1 })];
    const [never] = told([aJob({ id: 'a', steps, neededOn: '2026-12-01' })]);
    expect(never?.readyOn).toEqual({ in50: null, in80: null, in95: null });
    expect([never?.shareInTime, never?.drives]).toEqual([0, []]);
  });
  test('and at half the losses it is late in as many futures as chance says', () => {
    const steps = [aStep('drying', { kind: 'dry' }, fixed(1), { lossRate: 0.5 })];
    const open = aStudio({ closed: { weekdays: [], days: [] } });
    const said = forecast(open, [aJob({ id: 'a', steps })], today, { ...course, futures: 10_000 });
    const job = said.ok ? said.value[0] : undefined;
    if (!job) throw new Error('refused');
    // Ready after 1, 2, 3 days in 1/2, 3/4, 7/8; 0.02 is four standard errors.
    [0.5, 0.75, 0.875].forEach((share, at) => {
      expect(Math.abs(shareReadyBy(job, addDays(today, at + 1)) - share)).toBeLessThan(0.02);
    });
    expect(job.readyOn.in80).toBe('2026-06-04');
    expect(readyDayIn(job, 100)).not.toBeNull();
    // Each lost piece costs the day in which it was lost: one day on average, and one for the good.
    expect(job.drives.map((drive) => drive.kind).toSorted()).toEqual(['lost', 'step']);
  });
});

describe('what is under way', () => {
  test('takes one of the days that are still possible, each as likely as it was', () => {
    const days = { shortestDays: 2, likelyDays: 5, longestDays: 12 };
    const drying = aStep('drying', { kind: 'dry' }, [2, 5, 12]);
    const standings = [
      { position: 1, pieces: 1, sinceOn: addDays(today, -8), heldBy: null },
    ] as const;
    const open = aStudio({ closed: { weekdays: [], days: [] } });
    const jobs = [aJob({ id: 'a', steps: [drying], standings })];
    const said = forecast(open, jobs, today, { ...course, futures: 4_000 });
    const counts = said.ok ? said.value[0]?.readyCounts : undefined;
    const possible = likelihoods(days).slice(8);
    const whole = possible.reduce((sum, share) => sum + share, 0);
    // 0.03 is four standard errors; 1,024 cases leave the rarest day within 0.005 more.
    possible.slice(0, 3).forEach((share, left) => {
      expect(Math.abs((counts?.[left] ?? 0) / 4_000 - share / whole)).toBeLessThan(0.035);
    });
  });
});

test('the collector is not asked again for a piece that is made again', () => {
  const steps = [
    atBench(1),
    aStep('a yes', { kind: 'collector' }, fixed(30)),
    aStep('drying', { kind: 'dry' }, fixed(1), { lossRate: 0.5 }),
  ];
  const open = aStudio({ closed: { weekdays: [], days: [] } });
  const said = forecast(open, [aJob({ id: 'a', steps })], today, { ...course, futures: 10_000 });
  const job = said.ok ? said.value[0] : undefined;
  if (!job) throw new Error('refused');
  // After 32 days in half, two more for each loss; 0.02 is four standard errors.
  expect(Math.abs(shareReadyBy(job, addDays(today, 34)) - 0.75)).toBeLessThan(0.02);
});

describe('what drives the date', () => {
  test('waiting and working by name, the most days first; they come to the mean day', () => {
    const studio = aStudio({ kilns: [aKiln({ leastFillPercent: 50, longestWaitDays: 9 })] });
    const steps = [atBench(2), inKiln(3)];
    const jobs = [aJob({ id: 'first', steps: [atBench(1)] }), aJob({ id: 'second', steps })];
    const second = told(jobs, studio)[1];
    expect(second?.readyOn.in50).toBe('2026-06-18');
    expect(second?.drives).toEqual([
      { kind: 'kiln', name: 'the glaze kiln', days: 11 },
      { kind: 'step', name: 'the glaze kiln', days: 3 },
      { kind: 'step', name: 'modelling', days: 2 },
      { kind: 'bench', name: 'bench', days: 1 },
    ]);
  });
  test('in a whole studio they come to the mean day of every job', () => {
    for (const job of told(openJobs(30, 4), twoKilns)) {
      const days = job.readyCounts.reduce((sum, count, day) => sum + count * day, 0);
      const parts = job.drives.reduce((sum, drive) => sum + drive.days, 0);
      expect(parts).toBeCloseTo(days / job.futures, 9);
    }
  });
});

describe('the day that may be promised', () => {
  const load = { jobs: openJobs(25, 8), todayOn: today };
  const newJob = { ...openJobs(1, 2)[0], id: 'new', neededOn: null } as ForecastJob;
  const promised = (ofHundred: number, jobs = load.jobs) => {
    const said = promiseDay(twoKilns, { ...load, jobs, newJob }, ofHundred, course);
    return said.ok ? said.value.day : null;
  };
  test('is the day of that job among the others', () => {
    const own = told([...load.jobs, newJob], twoKilns).at(-1);
    expect(promised(80)).toBe(own?.readyOn.in80);
    expect(promised(95)).toBe(own?.readyOn.in95);
  });
  test('is later the surer it is to be', () => {
    const days = [10, 50, 80, 95, 100].map((ofHundred) => promised(ofHundred));
    expect(days).toEqual(days.toSorted());
  });
  test('is later by what stands before it at the bench', () => {
    const own = aJob({ id: 'new', steps: [atBench(2)] });
    const before = [1, 2, 3].map((at) => aJob({ id: `job ${at}`, steps: [atBench(at)] }));
    const day = (jobs: readonly ForecastJob[], neededOn: Day | null) => {
      const asked = { jobs, newJob: { ...own, neededOn }, todayOn: today };
      const said = promiseDay(aStudio(), asked, 80, course);
      return said.ok ? said.value.day : null;
    };
    expect(day([], null)).toBe('2026-06-03');
    expect(day(before, null)).toBe('2026-06-11');
    expect(day(before, '2026-06-05')).toBe('2026-06-03');
  });
});

describe('what is refused', () => {
  const steps = [atBench(1), inKiln(2)];
  const job = aJob({ id: 'a', steps });
  test.each([
    ['never_open', aStudio({ closed: { weekdays: [0, 1, 2, 3, 4, 5, 6], days: [] } }), job],
    ['too_many_pieces', aStudio(), aJob({ id: 'a', pieces: 1_001, steps })],
    ['no_such_bench', aStudio({ benches: [] }), job],
    ['no_kiln_for_cone', aStudio({ kilns: [aKiln({ cones: ['06'] })] }), job],
    ['piece_fits_no_kiln', aStudio({ kilns: [aKiln({ volumeCm3: 999 })] }), job],
  ] as const)('%s, in a sentence that says what to do', (code, studio, asked) => {
    const said = forecast(studio, [asked], today, course);
    if (said.ok) throw new Error('not refused');
    expect(said.refusal.code).toBe(code);
    expect(forecastRefusalMessage(said.refusal)).toMatch(/^[A-Z].+\. [A-Z].+\.$|^Say .+\.$/);
    expect(promiseDay(studio, { jobs: [], newJob: asked, todayOn: today }).ok).toBe(false);
  });
  test('pieces that stand nowhere are a bug', () => {
    expect(() => told([{ ...job, standings: [] }])).toThrow('stand somewhere');
    expect(() => told([{ ...job, wanted: 2 }])).toThrow('As many as are wanted');
    expect(() => told([job, job])).toThrow('name of its own');
    const twice = aStep('drying', { kind: 'dry' }, [0, 1, 2], { lossRate: 0.1 });
    expect(() => told([aJob({ id: 'a', steps: [twice] })])).toThrow('a day goes by');
  });
});
