import { describe, expect, test } from 'vitest';
import { mix, wordOf } from '@/lib/studio/rules/forecast/chance';
import { pert, type ThreeDays } from '@/lib/studio/rules/forecast/pert';

const days = (shortestDays: number, likelyDays: number, longestDays: number): ThreeDays => ({
  shortestDays,
  likelyDays,
  longestDays,
});

/** The share of a normal distribution below z, summed in thin slices. */
function belowNormal(z: number): number {
  const slice = 0.0001;
  let sum = 0;
  for (let at = slice / 2; at < z; at += slice) sum += Math.exp((-at * at) / 2) * slice;
  return 0.5 + sum / Math.sqrt(2 * Math.PI);
}

// flylib.com/books/en/3.287.1.117/1, a worked network: activities 1 to 7, the longest way 1-3-5-7
// read there as 24 with a probability of .9633 to be done by 28. Its formulas are those of Malcolm,
// Roseboom, Clark and Fazar, 1959.
describe('a worked network of seven activities', () => {
  test.each([
    [days(5, 8, 17), 9],
    [days(7, 10, 13), 10],
    [days(3, 5, 7), 5],
    [days(1, 3, 5), 3],
    [days(4, 6, 8), 6],
    [days(3, 3, 3), 3],
    [days(3, 4, 5), 4],
  ])('the expected time of %o is %d', (activity, expected) => {
    expect(pert(activity).mean).toBe(expected);
  });
  test('its longest way takes 24, and is done by 28 in 96 of 100', () => {
    const way = [days(5, 8, 17), days(3, 5, 7), days(4, 6, 8), days(3, 4, 5)].map(pert);
    const mean = way.reduce((sum, one) => sum + one.mean, 0);
    const variance = way.reduce((sum, one) => sum + one.variance, 0);
    expect(mean).toBe(24);
    expect(variance).toBeCloseTo(5, 12);
    expect(belowNormal((28 - mean) / Math.sqrt(variance))).toBeCloseTo(0.9633, 3);
  });
});

// The published test vectors of MurmurHash3 in 32 bits for an empty text, which is its finaliser
// alone: seed 0 gives 0, seed 1 gives 514E28B7, seed FFFFFFFF gives 81F16F39. From memory.
test('words are mixed as the published finaliser mixes them', () => {
  expect([0, 1, 0xffffffff].map(mix)).toEqual([0, 0x514e28b7, 0x81f16f39]);
});

// FNV-1a, 32 bits, from its authors' table of test vectors: '', 'a', 'foobar'. From memory.
test('names become the words that the published hash gives', () => {
  expect(['', 'a', 'foobar'].map(wordOf)).toEqual([0x811c9dc5, 0xe40c292c, 0xbf9cf968]);
});
