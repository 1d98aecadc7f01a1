import { expect, test } from 'vitest';
import { signInRefusalMessage, waitUntil, type SignInTry } from '@/lib/access/rules/wait';

const start = Date.UTC(2026, 10, 25, 10, 0, 0);
const at = (seconds: number) => new Date(start + seconds * 1000);
const wrong = (...seconds: number[]): SignInTry[] =>
  seconds.map((second) => ({ at: at(second), succeeded: false }));
const right = (second: number): SignInTry => ({ at: at(second), succeeded: true });

test.each<[string, SignInTry[], number | null]>([
  ['nobody has tried', [], null],
  ['four wrong tries', wrong(0, 1, 2, 3), null],
  ['the fifth wrong try', wrong(0, 1, 2, 3, 4), 4 + 30],
  ['the sixth, as soon as it is free', wrong(0, 1, 2, 3, 4, 34), 34 + 60],
  ['the seventh', wrong(0, 1, 2, 3, 4, 34, 94), 94 + 120],
  ['the eighth', wrong(0, 1, 2, 3, 4, 34, 94, 214), 214 + 240],
  ['the ninth', wrong(0, 1, 2, 3, 4, 34, 94, 214, 454), 454 + 480],
  ['the tenth, at most 15 minutes', wrong(0, 1, 2, 3, 4, 34, 94, 214, 454, 934), 934 + 900],
  ['the eleventh, still 15', wrong(0, 1, 2, 3, 4, 34, 94, 214, 454, 934, 1834), 1834 + 900],
  ['five with a right one before the last', [...wrong(0, 1, 2, 3), right(4), ...wrong(5)], null],
  ['five spread over an hour, each after quiet', wrong(0, 901, 1802, 2703, 3604), null],
  ['five, 15 minutes apart at the most', wrong(0, 900, 1800, 2700, 3600), 3600 + 30],
  ['a slow guesser who waits it out', wrong(0, 1, 2, 3, 4, 34 + 899), 34 + 899 + 60],
  ['quiet for 15 minutes after the wait', wrong(0, 1, 2, 3, 4, 34 + 901), null],
])('%s', (_label, tries, seconds) => {
  expect(waitUntil(tries, 5)).toEqual(seconds === null ? null : at(seconds));
});

test('an address has twenty free tries', () => {
  const tries = wrong(...Array.from({ length: 20 }, (_, second) => second));
  expect(waitUntil(tries.slice(0, 19), 20)).toBeNull();
  expect(waitUntil(tries, 20)).toEqual(at(19 + 30));
});

test.each([
  [500, 'a second'],
  [1001, '2 seconds'],
  [60_000, '60 seconds'],
  [60_001, '2 minutes'],
  [900_000, '15 minutes'],
])('a wait of %i ms is told as %s', (waitMs, words) => {
  expect(signInRefusalMessage({ code: 'wait_a_little', waitMs })).toContain(`Wait ${words},`);
});

test('a wrong name and a wrong password are told in the same words', () => {
  expect(signInRefusalMessage({ code: 'name_and_password_differ' })).toBe(
    'This name and this password do not belong together. Look at both once more.',
  );
});
