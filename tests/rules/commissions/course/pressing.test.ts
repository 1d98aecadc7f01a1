import { describe, expect, test } from 'vitest';
import type { CommissionFacts } from '@/lib/commissions/rules/facts';
import {
  daysOver,
  mostOverdueFirst,
  overWords,
  pressing,
  waitsWords,
  type Pressing,
} from '@/lib/commissions/rules/course/list/pressing';
import { standing } from '@/lib/commissions/rules/course/standing';
import type { Day } from '@/lib/dates/rules';
import {
  agreement,
  beforeClay,
  paid,
  shown,
  someFacts,
} from '@/tests/rules/commissions/some-facts';

const today = '2026-06-10';
const telling = { today, seesMoney: true, currency: 'USD' } as const;

function at(facts: CommissionFacts, day: Day = today) {
  return pressing(facts, standing(facts, day), day);
}

function aDelay(toOn: Day): CommissionFacts['delays'][number] {
  return { fromOn: '2026-06-01', toOn, clock: 'kiln', toldOn: '2026-05-30' };
}

function askedFor(amountCents: bigint, dueOn: Day, stepPosition: number | null = null) {
  return { amountCents, dueOn, stepPosition, askedOn: '2026-05-04' as Day };
}

const plan = [
  { position: 1, name: 'Deposit', event: 'agreed', amountCents: 500_000n },
  { position: 2, name: 'Half-way', event: 'colours_approved', amountCents: 300_000n },
  { position: 3, name: 'Rest', event: 'hung', amountCents: 200_000n },
] as const;

describe('money over its day', () => {
  const owing = someFacts({ agreement, asked: [askedFor(500_000n, '2026-05-18')] });

  test('counts from the day after', () => {
    expect(at(owing, '2026-05-18').money).toBeNull();
    expect(at(owing, '2026-05-19').money).toEqual({
      ...{ leftCents: 500_000n, dueOn: '2026-05-18', days: 1 },
    });
  });

  test('is what is left of it, and nothing once it is paid', () => {
    expect(at({ ...owing, payments: [paid(499_999n, today)] }).money?.leftCents).toBe(1n);
    expect(at({ ...owing, payments: [paid(500_000n, today)] }).money).toBeNull();
  });

  test('adds what is asked for, from the oldest day', () => {
    const both = { ...owing, asked: [...owing.asked, askedFor(1_000n, '2026-05-10')] };
    expect(at(both).money).toEqual({ leftCents: 501_000n, dueOn: '2026-05-10', days: 31 });
  });

  test('money fills the plan in its order, not the order of asking', () => {
    const asked = [askedFor(300_000n, '2026-05-20', 2), askedFor(500_000n, '2026-05-18', 1)];
    const facts = { ...someFacts({ ...beforeClay, plan: [...plan], asked }) };
    expect(at(facts).money).toEqual({ leftCents: 300_000n, dueOn: '2026-05-20', days: 21 });
  });

  test('is nobody’s after an early end', () => {
    const ending = { endedOn: '2026-05-30', why: 'They moved.', feeCents: 0n } as const;
    expect(at({ ...owing, ending }).money).toBeNull();
  });
});

describe('a step nobody asked for', () => {
  const facts = someFacts({ ...beforeClay, plan: [...plan] });

  test('presses from the day after its event', () => {
    expect(at(facts, '2026-05-12').toAsk).toBeNull();
    expect(at(facts, '2026-05-14').toAsk).toMatchObject({ name: 'Half-way', days: 2 });
  });

  test('not once it was asked for', () => {
    const asked = [askedFor(300_000n, '2026-12-01', 2)];
    expect(at({ ...facts, asked }).toAsk).toBeNull();
  });
});

describe('the promised day', () => {
  const promised = someFacts({ agreement: { ...agreement, promisedOn: '2026-06-01' } });

  test.each([
    ['2026-06-01', null],
    ['2026-06-02', 1],
    ['2026-06-10', 9],
  ] as const)('on %s', (day, days) => {
    expect(at(promised, day).promise?.days ?? null).toBe(days);
  });

  test('says whether they were told', () => {
    const delays = [aDelay('2026-07-01')];
    const told = overWords(at({ ...promised, delays }), telling).join();
    expect(told).toContain('passed 9 days ago, they were told of 1 Jul');
    expect(overWords(at(promised), telling).join()).not.toContain('told');
  });
});

test('without leave to see money no amount is said', () => {
  const owing = someFacts({ agreement, asked: [askedFor(500_000n, '2026-05-18')] });
  const words = overWords(at(owing), { ...telling, seesMoney: false }).join();
  expect(words).toContain('a payment is 23 days over');
  expect(words).not.toMatch(/\d,\d/);
});

test('the most overdue stands first, then the longest waiting, what waits on nobody last', () => {
  const over = (days: number): Pressing => ({
    ...{ money: { leftCents: 1n, dueOn: today, days }, toAsk: null, promise: null },
    waits: null,
  });
  const waiting = (days: number | null): Pressing => ({
    ...{ money: null, toAsk: null, promise: null },
    waits: days === null ? null : { since: today, days },
  });
  const sorted = [waiting(null), waiting(3), over(2), waiting(9), over(12)].sort(mostOverdueFirst);
  expect(sorted.map((each) => [daysOver(each), each.waits?.days ?? null])).toEqual([
    [12, null],
    [2, null],
    [0, 9],
    [0, 3],
    [0, null],
  ]);
});

test('how long it waits is said from the second day on', () => {
  const facts = someFacts({ agreement, sketches: [shown('A', '2026-06-09')] });
  expect(waitsWords(at(facts, '2026-06-09'))).toBeNull();
  expect(waitsWords(at(facts, '2026-06-10'))).toBe('Waits 1 day');
});
