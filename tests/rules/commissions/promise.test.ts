import { expect, test } from 'vitest';
import { sureness } from '@/lib/commissions/rules/course/promise';
import type { Day } from '@/lib/dates/rules';

const ready = (shortestOn: Day, likelyOn: Day, longestOn: Day) => ({
  ...{ shortestOn, likelyOn, longestOn },
});
const job = ready('2026-06-01', '2026-06-10', '2026-06-20');

test.each<[string, Day, Parameters<typeof sureness>[1], string | null]>([
  ['no job is open', '2026-06-30', [], null],
  ['everything is finished', '2026-06-30', [null], 'finished'],
  ['even the longest days are enough', '2026-06-20', [job], 'well in time'],
  ['the likely days are enough', '2026-06-19', [job], 'likely in time'],
  ['only the shortest days are enough', '2026-06-09', [job], 'tight'],
  ['not even those', '2026-05-31', [job], 'too late as it stands'],
  [
    'the slower of two jobs decides',
    '2026-06-20',
    [null, job, ready('2026-06-02', '2026-06-21', '2026-07-01')],
    'tight',
  ],
])('a promised day when %s', (_label, promisedOn, jobs, expected) => {
  expect(sureness(promisedOn, jobs)).toBe(expected);
});
