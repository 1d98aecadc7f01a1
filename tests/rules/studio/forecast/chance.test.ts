import { fc, test as law } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { nextChance } from '@/lib/studio/rules/forecast/chance';
import { lossTable, piecesLost } from '@/lib/studio/rules/forecast/losses';
import { casesOf, casesOfDays, likelihoods, pert } from '@/lib/studio/rules/forecast/pert';

const threeDays = fc.tuple(fc.nat(30), fc.nat(20), fc.nat(40)).map(([shortestDays, on, over]) => ({
  shortestDays,
  likelyDays: shortestDays + on,
  longestDays: shortestDays + on + over,
}));

describe('the days of a step', () => {
  law.prop([threeDays])('whole days keep the mean of the three, and stay within them', (days) => {
    const shares = likelihoods(days);
    const mean = shares.reduce((sum, share, day) => sum + share * day, 0);
    expect(shares.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    expect(Math.abs(mean - pert(days).mean)).toBeLessThan(0.001);
    const cases = casesOf(days);
    expect(cases[0]).toBeGreaterThanOrEqual(days.shortestDays);
    expect(cases[casesOfDays - 1]).toBeLessThanOrEqual(days.longestDays);
    const laidOut = cases.reduce((sum, day) => sum + day, 0) / casesOfDays;
    expect(Math.abs(laidOut - pert(days).mean)).toBeLessThan(0.05);
  });
  law.prop([threeDays, fc.integer({ min: 100, max: 200 })])(
    'longer days never give a shorter case',
    (days, percent) => {
      const longer = casesOf({
        shortestDays: (days.shortestDays * percent) / 100,
        likelyDays: (days.likelyDays * percent) / 100,
        longestDays: (days.longestDays * percent) / 100,
      });
      expect(casesOf(days).every((day, at) => day <= (longer[at] ?? 0))).toBe(true);
    },
  );
  test('the spread of a beta curve of 0, 3 and 6 days is known: (3 - 0)(6 - 3) / 7', () => {
    // Its shapes add up to 6, so the variance is (mean - a)(b - mean) / 7; whole days add a little.
    const shares = likelihoods({ shortestDays: 0, likelyDays: 3, longestDays: 6 });
    const variance = shares.reduce((sum, share, day) => sum + share * (day - 3) ** 2, 0);
    expect(variance).toBeGreaterThan((3 * 3) / 7);
    expect(variance).toBeLessThan((3 * 3) / 7 + 0.25);
  });
  test('fixed days have one case', () => {
    expect(new Set(casesOf({ shortestDays: 4, likelyDays: 4, longestDays: 4 }))).toEqual(
      new Set([4]),
    );
  });
  test('days out of their order are a bug', () => {
    expect(() => pert({ shortestDays: 4, likelyDays: 3, longestDays: 5 })).toThrow('likely');
    expect(() => pert({ shortestDays: -1, likelyDays: 3, longestDays: 5 })).toThrow('0 to 3,000');
  });
});

describe('losses', () => {
  // With 20,000 draws the mean lies within four of its standard errors.
  test.each([
    [24, 0.05],
    [12, 0.3],
    [40, 0.8],
    [1, 0.5],
    [900, 0.5],
  ])('of %d pieces at a rate of %d as many are lost as a binomial says', (pieces, rate) => {
    const table = lossTable(rate, 900);
    const streams = Int32Array.of(7);
    const draws = 20_000;
    let sum = 0;
    let squares = 0;
    let most = 0;
    for (let at = 0; at < draws; at += 1) {
      const lost = piecesLost(table, pieces, nextChance(streams, 0));
      most = Math.max(most, lost);
      sum += lost;
      squares += lost * lost;
    }
    const variance = pieces * rate * (1 - rate);
    expect(most).toBeLessThanOrEqual(pieces);
    expect(Math.abs(sum / draws - pieces * rate)).toBeLessThan(4 * Math.sqrt(variance / draws));
    expect((squares / draws - (sum / draws) ** 2) / variance).toBeCloseTo(1, 1);
  });
  // OpenStax, Introductory Statistics 2e, 4.3: B(20, .41) is at most 12 in .9738.
  test('a published binomial', () => {
    const table = lossTable(0.41, 20);
    const chances = Array.from({ length: 65_536 }, (_, at) => at * 65_536 + 32_768);
    const atMost = chances.filter((chance) => piecesLost(table, 20, chance) <= 12).length;
    expect(atMost / 65_536).toBeCloseTo(0.9738, 3);
  });
  law.prop([fc.integer({ min: 1, max: 1_000 }), fc.nat(0xffffffff)])(
    'at 0 nothing is lost, at 1 everything',
    (pieces, chance) => {
      expect(piecesLost(lossTable(0, pieces), pieces, chance)).toBe(0);
      expect(piecesLost(lossTable(1, pieces), pieces, chance)).toBe(pieces);
    },
  );
});

// 256 cells, 65,536 draws: chi-square with 255 degrees of freedom lies under 330 in 999 of 1,000.
test.each([0, 1, 0x9e3779b9, 123_456_789])('chances from %d fill every cell alike', (start) => {
  const streams = Int32Array.of(start);
  const cells = new Array<number>(256).fill(0);
  for (let draw = 0; draw < 65_536; draw += 1) {
    const cell = nextChance(streams, 0) >>> 24;
    cells[cell] = (cells[cell] ?? 0) + 1;
  }
  const unevenness = cells.reduce((sum, count) => sum + (count - 256) ** 2 / 256, 0);
  expect(unevenness).toBeLessThan(330);
});
