import { expect, test } from 'vitest';
import { sharesOf, shareWords } from '@/lib/reports/rules';

test.each([
  ['three alike', [1n, 1n, 1n], [334, 333, 333]],
  ['one alone', [13_800n], [1_000]],
  ['nothing earned', [0n, 0n], [0, 0]],
  ['no line at all', [], []],
  ['a piece given away beside one sold', [0n, 4_200n], [0, 1_000]],
  ['by hand: 41,400, 17,000 and 164,000', [41_400n, 17_000n, 164_000n], [186, 77, 737]],
])('shares of %s', (_label, cents, tenths) => {
  expect(sharesOf(cents)).toEqual(tenths);
});

test('the shares of any month are exactly a hundred per cent together', () => {
  for (let lines = 1; lines < 60; lines += 1) {
    const cents = Array.from({ length: lines }, (_, at) => BigInt((at * 7_919) % 10_007) + 1n);
    expect(sharesOf(cents).reduce((sum, tenths) => sum + tenths, 0)).toBe(1_000);
  }
});

test('a share is written with one decimal', () => {
  expect([0, 5, 186, 1_000].map(shareWords)).toEqual(['0.0 %', '0.5 %', '18.6 %', '100.0 %']);
});
