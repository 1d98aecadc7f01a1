import { describe, expect, test } from 'vitest';
import type { Day } from '@/lib/dates/rules';
import { notAllowedMessage } from '@/lib/access/rules';
import { lossKey } from '@/lib/studio/rules/forecast/load/facts';
import { lossRateOf } from '@/lib/studio/rules/forecast/load/losing';
import { kilnRoomOf, kilnVolumeOf, usualSizeUm } from '@/lib/studio/rules/forecast/load/sizes';
import { movedSentence } from '@/lib/studio/rules/forecast/telling/moved';
import {
  medianOf,
  middleWords,
  pastPromises,
  pastSentence,
  pastShares,
  promisesSentence,
  type PastJob,
} from '@/lib/studio/rules/forecast/telling/past';
import {
  keepAskedRefusalMessage,
  type KeepAskedRefusal,
} from '@/lib/studio/rules/forecast/telling/refusals';
import { byRisk } from '@/lib/studio/rules/forecast/telling/risk';
import { driveLine, lateInHundred, tellDrives } from '@/lib/studio/rules/forecast/telling/words';

describe('the room of pieces and kilns', () => {
  const none = { widthUm: null, heightUm: null, depthUm: null };
  const tile = { widthUm: 100_000, heightUm: 100_000, depthUm: 20_000 };
  test('its own size first, then that of the stock list, then a usual one', () => {
    expect(kilnRoomOf(tile, null, 5_000)).toEqual({ cm3: 363, from: 'job' });
    expect(kilnRoomOf(none, tile, 0)).toEqual({ cm3: 200, from: 'piece' });
    expect(kilnRoomOf(none, null, 0)).toEqual({
      cm3: Math.round((20.32 * 20.32 * 254) / 100),
      from: 'usual',
    });
  });
  test('a depth that nobody knows is taken from the stock list, else the usual one', () => {
    const flat = { ...tile, depthUm: null };
    expect(kilnRoomOf(flat, tile, 0).cm3).toBe(200);
    expect(kilnRoomOf(flat, null, 0).cm3).toBe(usualSizeUm.depthUm / 100);
  });
  test('shelves take room of their own', () => {
    const kiln = {
      ...{ id: 'k', name: 'large', cones: ['6'], turnsAWeek: 1, leastFillPercent: 0 },
      ...{ longestWaitDays: 1, loadsThisWeek: 0, shelves: 5, shelfThickUm: 20_000 },
      ...{ insideHeightUm: 600_000, shelfWidthUm: 500_000, shelfDepthUm: 400_000 },
    };
    expect(kilnVolumeOf(kiln)).toBe(50 * 40 * 50);
  });
});

describe('what a step loses here', () => {
  const step = (lossPercent: string) => ({ name: 'drying', lossPercent });
  const counts = new Map([[lossKey('thrown', 'drying'), { lost: 4, of: 20 }]]);
  test('is what was stated until it was counted, and then between the two', () => {
    expect(lossRateOf('thrown', step('5'), new Map())).toBeCloseTo(0.05, 9);
    // One piece of twenty stated and four of twenty counted: five of forty.
    expect(lossRateOf('thrown', step('5'), counts)).toBeCloseTo(5 / 40, 9);
    expect(lossRateOf('slip_cast', step('5'), counts)).toBeCloseTo(0.05, 9);
  });
  test('nothing, where nothing was stated and nothing was lost', () => {
    const kept = new Map([[lossKey('thrown', 'drying'), { lost: 0, of: 3 }]]);
    expect(lossRateOf('thrown', step('0'), kept)).toBe(0);
    expect(lossRateOf('thrown', step('0'), counts)).toBeGreaterThan(0.15);
  });
});

describe('in words', () => {
  test('what drives a date, the most days first and no crumbs', () => {
    const drives = [
      { kind: 'kiln', name: 'the glaze kiln', days: 8.6 },
      { kind: 'bench', name: 'b', days: 1.2 },
      { kind: 'lost', name: '', days: 0.4 },
    ] as const;
    const told = tellDrives(drives, new Map([['b', 'glazing bench']])).map(driveLine);
    expect(told).toEqual([
      'waiting for the glaze kiln: 9 days',
      'waiting for the glazing bench: a day',
    ]);
  });
  test.each([
    [1, 0],
    [0.999, 1],
    [0.8, 20],
    [0, 100],
    [null, null],
  ])('in time in %s of all futures is late in %s of 100', (shareInTime, late) => {
    expect(lateInHundred({ shareInTime })).toBe(late);
  });
  test('what moved the day since it was foretold', () => {
    const before = [{ toldOn: '2026-05-01', in80On: '2026-06-11' }] as const;
    const now = { in80On: '2026-06-20', todayOn: '2026-05-20' } as const;
    const anew = { pieces: 2, sinceOn: '2026-05-03' } as const;
    expect(movedSentence(before, now, anew)).toBe(
      '2 pieces are made anew since 3 May: 9 days later than foretold on 1 May.',
    );
    expect(movedSentence(before, { ...now, in80On: '2026-06-10' }, null)).toBe(
      'That is a day sooner than foretold on 1 May.',
    );
    expect(movedSentence(before, { ...now, in80On: '2026-06-11' }, null)).toBeNull();
    expect(movedSentence([], now, anew)).toBeNull();
  });
  test('the one that is late most often stands first, and those without a day last', () => {
    const told = (shareInTime: number | null, in80: '2026-06-01' | null) => ({
      told: { shareInTime, readyOn: { in50: null, in80, in95: null } },
    });
    const jobs = [told(null, null), told(1, '2026-06-01'), told(0.4, '2026-06-01'), told(1, null)];
    expect(byRisk(jobs)).toEqual([jobs[2], jobs[3], jobs[1], jobs[0]]);
  });
});

describe('how past days turned out', () => {
  const job = (finishedOn: Day): PastJob => ({
    ...{ number: 1, title: 'Terns', toldOn: '2026-05-01', finishedOn },
    ...{ in50On: '2026-06-01', in80On: '2026-06-05', in95On: '2026-06-10' },
  });
  test('are counted by each of the three days, and by their middle', () => {
    const shares = pastShares([job('2026-06-01'), job('2026-06-05'), job('2026-06-20')]);
    expect(shares).toEqual({ jobs: 3, by50: 1, by80: 2, by95: 2, medianLateDays: 0 });
    expect(pastSentence(shares)).toBe(
      'Of 3 jobs 2 were ready by the day that was foretold in 80 of 100. So few say little: look again when there are 10.',
    );
    expect(pastSentence(pastShares([]))).toMatch(/^No job/);
  });
  test('promises are kept on the day itself, and lateness has a middle', () => {
    const promise = (handedOn: '2026-06-01' | '2026-06-08') =>
      ({ commissionNumber: 1, title: 'Herons', promisedOn: '2026-06-01', handedOn }) as const;
    const all = [promise('2026-06-01'), promise('2026-06-08')];
    expect(pastPromises(all)).toEqual({
      ...{ promises: 2, kept: 1, medianLateDays: 0, medianOfLateDays: 7 },
    });
    expect(promisesSentence(pastPromises(all))).toBe(
      'Of 2 promised days 1 was kept. Half of the late ones were 7 days late or less. So few say little: look again when there are 10.',
    );
    expect(promisesSentence(pastPromises(all.slice(1)))).toMatch(
      /^Of one promised day none was kept/,
    );
    expect(middleWords(-2, 'the promised day')).toBe(
      'In the middle they were ready 2 days before the promised day.',
    );
    expect(medianOf([])).toBeNull();
  });
});

test('every refusal says what to do', () => {
  const where = { jobId: 'a', step: 'drying' };
  const all: Record<KeepAskedRefusal['code'], KeepAskedRefusal> = {
    no_such_commission: { code: 'no_such_commission' },
    commission_ended: { code: 'commission_ended', commissionNumber: 3 },
    out_of_sight: { code: 'out_of_sight' },
    no_such_route: { code: 'no_such_route' },
    never_open: { code: 'never_open' },
    too_many_pieces: { code: 'too_many_pieces', jobId: 'a', most: 1_000 },
    no_such_bench: { code: 'no_such_bench', ...where },
    no_kiln_for_cone: { code: 'no_kiln_for_cone', ...where, cone: '6' },
    piece_fits_no_kiln: { code: 'piece_fits_no_kiln', ...where, cone: '6' },
  };
  for (const refusal of Object.values(all)) {
    expect(keepAskedRefusalMessage(refusal)).toMatch(/^[A-Z].+\.$/);
  }
  const refusal = { code: 'not_allowed', permission: 'commissions.propose' } as const;
  expect(keepAskedRefusalMessage(refusal)).toBe(notAllowedMessage(refusal));
});
