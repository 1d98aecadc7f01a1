import { describe, expect, test } from 'vitest';
import { clockSpans, daysByClock, daysLost } from '@/lib/commissions/rules/course/clocks';
import type { CommissionFacts } from '@/lib/commissions/rules/facts';
import { daysBetween, type Day } from '@/lib/dates/rules';
import { routes } from '../../../helpers/usual-routes';
import { aJob, agreement, beforeClay, paid, shown, someFacts } from '../some-facts';

const sent = { sentOn: '2026-05-03', validUntilOn: '2026-06-02', answer: null } as const;

function told(facts: CommissionFacts, today: Day): string[] {
  return clockSpans(facts, today).map(({ clock, days }) => `${clock} ${days}`);
}

describe('whose clock a day ran on', () => {
  test('the gallery’s until it proposes, then the collector’s', () => {
    const proposals = [{ version: 1, writtenOn: '2026-05-02', ...sent } as const];
    expect(told(someFacts({ proposals }), '2026-05-06')).toEqual(['gallery 2', 'collector 3']);
  });

  test('nobody’s on the day it was asked for', () => {
    expect(clockSpans(someFacts(), '2026-05-01')).toEqual([]);
  });

  test('the collector’s while they may still cancel', () => {
    const facts = { ...beforeClay, agreement: { ...agreement, clayFromOn: '2026-05-20' as Day } };
    expect(told(someFacts(facts), '2026-05-21').slice(-2)).toEqual(['collector 7', 'studio 1']);
  });

  test.each<[string, number, string]>([
    ['drying', routes.slip_cast.findIndex(({ peg }) => peg === 'dry') + 1, 'clay 5'],
    ['the bisque kiln', routes.slip_cast.findIndex(({ peg }) => peg === 'bisque') + 1, 'kiln 5'],
    ['glazing', routes.slip_cast.findIndex(({ name }) => name === 'glazing') + 1, 'studio 12'],
    [
      'the glaze kiln',
      routes.slip_cast.findIndex(({ name }) => name === 'the glaze kiln') + 1,
      'kiln 5',
    ],
  ])('pieces at %s', (_place, position, last) => {
    const facts = someFacts({ ...beforeClay, jobs: [aJob(position, '2026-05-20')] });
    expect(told(facts, '2026-05-25').at(-1)).toBe(last);
  });

  test('it stops with the hand-over', () => {
    const handOver = { handedOn: '2026-05-10' as Day, totalCents: 1n };
    expect(clockSpans(someFacts({ handOver }), '2026-12-01').at(-1)?.toOn).toBe('2026-05-10');
  });

  test('what was said later does not change whose day it was', () => {
    const before = someFacts({ agreement, sketches: [shown('A', '2026-05-06')] });
    const after = someFacts({
      agreement,
      sketches: [shown('A', '2026-05-06', '2026-05-12')],
      payments: [paid(500_000n, '2026-05-13')],
    });
    expect(told(after, '2026-05-12')).toEqual(told(before, '2026-05-12'));
  });
});

describe('days lost', () => {
  const sketches = [shown('A', '2026-05-06', '2026-05-20')];
  const facts = someFacts({ agreement, sketches });

  test('an answer beyond the days agreed for it counts what is beyond', () => {
    const spans = clockSpans(facts, '2026-05-20');
    expect(daysByClock(spans)).toContainEqual({ clock: 'collector', days: 14 });
    expect(daysLost(facts, spans, 10)).toEqual([{ clock: 'collector', days: 4 }]);
    expect(daysLost(facts, spans, 14)).toEqual([]);
  });

  test('a notice counts on the clock it names; an earlier day loses none', () => {
    const delays = [
      { fromOn: '2026-09-01', toOn: '2026-09-15', clock: 'kiln', toldOn: '2026-08-01' },
      { fromOn: '2026-09-15', toOn: '2026-09-10', clock: 'studio', toldOn: '2026-08-20' },
    ] as const;
    expect(daysLost({ delays }, [], 10)).toEqual([{ clock: 'kiln', days: 14 }]);
  });
});

test('the spans go from the request to today without a gap', () => {
  const facts = someFacts({ ...beforeClay, jobs: [aJob(3)] });
  const spans = clockSpans(facts, '2026-07-01');
  expect(spans[0]?.fromOn).toBe('2026-05-01');
  spans.slice(1).forEach((span, at) => {
    expect(span.fromOn).toBe(spans[at]?.toOn);
    expect(span.clock).not.toBe(spans[at]?.clock);
  });
  const all = daysByClock(spans).reduce((sum, { days }) => sum + days, 0);
  expect(all).toBe(daysBetween('2026-05-01', '2026-07-01'));
});
