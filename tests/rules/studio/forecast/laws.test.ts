import { fc, test } from '@fast-check/vitest';
import { describe, expect } from 'vitest';
import { addDays, daysBetween, weekdayOf, type Day } from '@/lib/dates/rules';
import { isOpenOn } from '@/lib/studio/rules/forecast/calendar';
import { forecast } from '@/lib/studio/rules/forecast/forecast';
import type { ForecastJob, ForecastStudio } from '@/lib/studio/rules/forecast/model';
import { watchFuture, type Happening } from '@/lib/studio/rules/forecast/watch';
import { aJob, aStep, aStudio, dice, openJobs, today, twoKilns } from './a-load';
import { atFirst, happen, piecesIn } from './replay';

const seed = fc.integer({ min: 1, max: 1_000_000 });
const some = { numRuns: 15 };

/** Jobs that nobody has begun, so that everything they go through is told. */
function freshJobs(count: number, by: number): ForecastJob[] {
  return openJobs(count, by).map((job) => {
    const { standings } = aJob({ id: job.id, pieces: job.pieces });
    return { ...job, standings };
  });
}

/** The usual studio with kilns and days that are closed by chance. */
function anyStudio(by: number): ForecastStudio {
  const roll = dice(by);
  const closedDays = () => Array.from({ length: 4 }, () => addDays(today, roll(0, 90)));
  return {
    ...twoKilns,
    closed: { weekdays: roll(0, 1) === 0 ? [0, 6] : [0, 1], days: closedDays() },
    benches: twoKilns.benches.map((bench) => ({ ...bench, closedDays: closedDays() })),
    kilns: twoKilns.kilns.map((kiln) => ({
      ...kiln,
      closedDays: closedDays(),
      turnsAWeek: roll(1, 4),
      leastFillPercent: roll(0, 100),
      longestWaitDays: roll(0, 20),
    })),
  };
}

function watched(jobs: readonly ForecastJob[], studio: ForecastStudio, by: number) {
  return watchFuture(studio, jobs, today, { seed: by, future: 0, sightDays: 400 });
}

/** What is lit on one day in one kiln. */
function loadsOf(happenings: readonly Happening[]): Map<string, Happening[]> {
  const loads = new Map<string, Happening[]>();
  for (const one of happenings) {
    if (one.kilnId === null) continue;
    const name = `${one.kilnId} ${one.on}`;
    loads.set(name, [...(loads.get(name) ?? []), one]);
  }
  return loads;
}

describe('whatever the studio and its jobs', () => {
  test.prop([seed, seed], some)('the same seed gives the same answer', (load, by) => {
    const jobs = openJobs(8, load);
    const course = { futures: 20, seed: by, sightDays: 400 };
    expect(forecast(twoKilns, jobs, today, course)).toEqual(
      forecast(twoKilns, jobs, today, course),
    );
  });

  test.prop([seed, seed], some)(
    'half are ready before eight in ten, these before 95',
    (load, by) => {
      const said = forecast(anyStudio(by), openJobs(8, load), today, {
        futures: 50,
        seed: by,
        sightDays: 400,
      });
      for (const { readyOn } of said.ok ? said.value : []) {
        const days = [readyOn.in50, readyOn.in80, readyOn.in95].map((day) => day ?? '9999-12-31');
        expect(days).toEqual(days.toSorted());
      }
      expect(said.ok).toBe(true);
    },
  );

  test.prop([seed, seed], some)(
    'no piece appears or vanishes, each is finished once',
    (load, by) => {
      const jobs = freshJobs(10, load);
      const { happenings, readyOn } = watched(jobs, anyStudio(by), by);
      const states = atFirst(jobs);
      happenings.forEach((one, at) => {
        const job = jobs.find((other) => other.id === one.jobId);
        const state = states.get(one.jobId);
        if (!job || !state) throw new Error('a job that nobody knows');
        happen(state, job, one);
        const next = happenings[at + 1];
        if (next?.on === one.on) return;
        for (const each of jobs) {
          expect(piecesIn(states.get(each.id) ?? state)).toBe(each.pieces);
        }
      });
      for (const job of jobs) {
        expect(readyOn.get(job.id)).not.toBeNull();
        expect(states.get(job.id)?.finished).toBe(job.pieces);
      }
    },
  );

  test.prop([seed, seed], some)('nothing happens on a closed day', (load, by) => {
    const studio = anyStudio(by);
    const jobs = freshJobs(10, load);
    for (const { on, what, jobId, position, kilnId } of watched(jobs, studio, by).happenings) {
      expect(isOpenOn(studio.closed, on)).toBe(true);
      const step = jobs.find((job) => job.id === jobId)?.steps[position - 1];
      const held = step?.kind === 'work' ? step.bench : kilnId;
      const place = [...studio.benches, ...studio.kilns].find((one) => one.id === held);
      if (what === 'starts') expect(place?.closedDays ?? []).not.toContain(on);
    }
  });

  test.prop([seed, seed], some)('a load fits its kiln and is of one cone', (load, by) => {
    const studio = anyStudio(by);
    const jobs = freshJobs(14, load);
    const loads = loadsOf(watched(jobs, studio, by).happenings);
    expect(loads.size).toBeGreaterThan(0);
    for (const lots of loads.values()) {
      const kiln = studio.kilns.find((one) => one.id === lots[0]?.kilnId);
      const cones = lots.map(({ jobId, position }) => {
        const step = jobs.find((job) => job.id === jobId)?.steps[position - 1];
        return step?.kind === 'fire' ? step.cone : 'none';
      });
      const volume = lots.reduce((sum, { jobId, pieces }) => {
        return sum + pieces * (jobs.find((job) => job.id === jobId)?.pieceCm3 ?? 0);
      }, 0);
      expect(volume).toBeLessThanOrEqual(kiln?.volumeCm3 ?? 0);
      expect(new Set(cones).size).toBe(1);
      expect(kiln?.cones).toContain(cones[0]);
    }
  });

  test.prop([seed, seed], some)(
    'a kiln takes its turns a week and no more, one at a time',
    (load, by) => {
      const studio = anyStudio(by);
      const jobs = freshJobs(14, load);
      const { happenings } = watched(jobs, studio, by);
      for (const kiln of studio.kilns) {
        const lit = happenings.filter((one) => one.kilnId === kiln.id).map((one) => one.on);
        const days = [...new Set(lit)];
        const weeks = new Map<Day, number>();
        for (const day of days) {
          const monday = addDays(day, -((weekdayOf(day) + 6) % 7));
          weeks.set(monday, (weeks.get(monday) ?? 0) + 1);
        }
        expect(Math.max(0, ...weeks.values())).toBeLessThanOrEqual(kiln.turnsAWeek);
        // Every firing of these jobs takes two days at least.
        days.slice(1).forEach((day, at) => {
          expect(daysBetween(days[at] ?? day, day)).toBeGreaterThanOrEqual(2);
        });
      }
    },
  );

  test.prop([seed, seed], some)('a bench has no more jobs than it takes at once', (load, by) => {
    const studio = anyStudio(by);
    const jobs = freshJobs(14, load);
    const states = atFirst(jobs);
    for (const one of watched(jobs, studio, by).happenings) {
      const job = jobs.find((other) => other.id === one.jobId);
      const state = states.get(one.jobId);
      if (!job || !state) throw new Error('a job that nobody knows');
      happen(state, job, one);
      const held = [...states.values()].flatMap((each) => each.underWay);
      for (const bench of studio.benches) {
        const there = held.filter((stand) => stand.heldBy === bench.id).length;
        expect(there).toBeLessThanOrEqual(bench.atOnce);
      }
    }
  });

  test.prop([seed, seed], some)('what is begun together has nothing behind it', (load, by) => {
    const jobs = freshJobs(10, load);
    const states = atFirst(jobs);
    for (const one of watched(jobs, anyStudio(by), by).happenings) {
      const job = jobs.find((other) => other.id === one.jobId);
      const state = states.get(one.jobId);
      if (!job || !state) throw new Error('a job that nobody knows');
      const isFirst = !state.underWay.some((stand) => stand.position > one.position);
      happen(state, job, one);
      if (one.what !== 'starts' || !job.steps[one.position - 1]?.isTogether) continue;
      const behind = [...state.waiting, ...state.underWay].filter(
        (stand) => stand.position < one.position,
      );
      if (isFirst && state.finished === 0) expect(behind).toEqual([]);
    }
  });
});

// One more job may well make others readier: it fills a load sooner, and by holding one job up it lets
// another through (R. L. Graham, Bounds on multiprocessing timing anomalies, 1969). So the law is held
// where it is true: at one bench where everything waits from the beginning, with the same luck.
describe('one more job', () => {
  const threeDays = fc
    .tuple(fc.nat(5), fc.nat(5), fc.nat(5))
    .map(([least, on, over]) => [least, least + on, least + on + over] as const);
  test.prop(
    [
      fc.array(threeDays, { minLength: 2, maxLength: 9 }),
      fc.nat(8),
      fc.integer({ min: 1, max: 3 }),
      seed,
    ],
    { numRuns: 40 },
  )('makes no other job readier at a shared bench, in any future', (all, which, atOnce, by) => {
    const studio = aStudio({ benches: [{ id: 'bench', atOnce, closedDays: [] }] });
    const jobs = all.map((days, at) =>
      aJob({ id: `job ${at}`, steps: [aStep('modelling', { bench: 'bench' }, days)] }),
    );
    const more = jobs[which % jobs.length];
    const fewer = jobs.filter((job) => job !== more);
    for (let future = 0; future < 5; future += 1) {
      const course = { seed: by, future, sightDays: 400 };
      const [without, withIt] = [fewer, jobs].map((one) => watchFuture(studio, one, today, course));
      for (const { id } of fewer) {
        const day = without?.readyOn.get(id) ?? '';
        expect(String(withIt?.readyOn.get(id)) >= day).toBe(true);
      }
    }
  });

  test.prop([seed, seed], some)('that shares nothing changes nothing', (load, by) => {
    const jobs = openJobs(8, load);
    const apart = aJob({
      id: 'apart',
      steps: [aStep('drying', { kind: 'dry' }, [3, 5, 9], { lossRate: 0.2 })],
      neededOn: today,
    });
    const course = { futures: 10, seed: by, sightDays: 400 };
    const without = forecast(twoKilns, jobs, today, course);
    const withIt = forecast(twoKilns, [apart, ...jobs], today, course);
    expect(withIt.ok && withIt.value.slice(1)).toEqual(without.ok && without.value);
  });
});
