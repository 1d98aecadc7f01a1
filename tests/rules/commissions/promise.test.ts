import { describe, expect, test } from 'vitest';
import { sureness, toldDay } from '@/lib/commissions/rules/course/promise';
import type { CommissionFacts } from '@/lib/commissions/rules/facts';
import type { Day } from '@/lib/dates/rules';
import { agreement, someFacts } from './some-facts';

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

describe('the day they were told of', () => {
  const promised = { ...agreement, promisedOn: '2026-05-01' as Day };
  const notice = { fromOn: '2026-05-01', toldOn: '2026-04-20', clock: 'kiln' } as const;
  const change = (signedOn: Day | null) =>
    ({
      ...({ number: 1, offeredOn: '2026-04-01', priceCents: 0n, dueEvent: null } as const),
      ...{ signedOn, isWithdrawn: false },
    }) as const;

  test.each<[string, Partial<CommissionFacts>, Day | null]>([
    ['none', {}, null],
    ['another', { delays: [{ ...notice, toOn: '2026-05-09' }] }, '2026-05-09'],
    ['the promised one again', { delays: [{ ...notice, toOn: '2026-05-01' }] }, null],
    [
      'named anew by a later change',
      { delays: [{ ...notice, toOn: '2026-05-09' }], changeOrders: [change('2026-04-21')] },
      null,
    ],
    [
      'not by one of the same day, nor by one nobody signed',
      {
        delays: [{ ...notice, toOn: '2026-05-09' }],
        changeOrders: [change('2026-04-20'), change(null)],
      },
      '2026-05-09',
    ],
  ])('%s', (_label, facts, expected) => {
    expect(toldDay(someFacts({ agreement: promised, ...facts }))).toBe(expected);
  });
});
