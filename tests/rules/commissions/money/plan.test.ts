import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { ChangeOrderFact, CommissionFacts, PlanStepFact } from '@/lib/commissions/rules/facts';
import {
  eventDays,
  eventOrder,
  fallenDueCents,
  owedBeforeHandOverCents,
  planDue,
} from '@/lib/commissions/rules/money/plan';
import { sumCents } from '@/lib/money/rules';
import { aJob, agreement, beforeClay, finished, paid, shown, someFacts } from '../some-facts';

/** A quarter of 10,000.00 and its tax of 800.00 at each of four events. */
const plan: PlanStepFact[] = [
  { position: 1, name: 'Deposit', event: 'agreed', amountCents: 270_000n },
  { position: 2, name: 'Colours', event: 'colours_approved', amountCents: 270_000n },
  { position: 3, name: 'Bisque', event: 'out_of_bisque', amountCents: 270_000n },
  { position: 4, name: 'Hung', event: 'hung', amountCents: 270_000n },
];
const whole = 1_080_000n;

function aChange(over: Partial<ChangeOrderFact>): ChangeOrderFact {
  return {
    ...{ number: 1, offeredOn: '2026-05-05', priceCents: 0n, dueEvent: null },
    ...{ signedOn: '2026-05-06', isWithdrawn: false, ...over },
  };
}

const facts = (over: Partial<CommissionFacts> = {}) => someFacts({ agreement, plan, ...over });
const amounts = (over: Partial<CommissionFacts>, total = whole) =>
  planDue(facts(over), total).map((step) => step.amountCents);

describe('a step falls due with its event', () => {
  const glazed = aJob(finished);
  test.each<[string, Partial<CommissionFacts>, (string | null)[]]>([
    ['the agreement', {}, ['2026-05-04', null, null, null]],
    ['the colours', beforeClay, ['2026-05-04', '2026-05-12', null, null]],
    [
      'out of the bisque',
      { ...beforeClay, jobs: [glazed] },
      ['2026-05-04', '2026-05-12', '2026-05-20', null],
    ],
    [
      'hung',
      { ...beforeClay, jobs: [glazed], handOver: { handedOn: '2026-06-18', totalCents: whole } },
      ['2026-05-04', '2026-05-12', '2026-05-20', '2026-06-18'],
    ],
  ])('%s', (_label, over, days) => {
    expect(planDue(facts(over), whole).map((step) => step.dueSince)).toEqual(days);
  });
  test('a sketch with an area without an approved tile makes no colours due', () => {
    const sketch = { ...shown('A', '2026-05-06', '2026-05-08'), areas: ['Sky'] };
    expect(eventDays(facts({ ...beforeClay, sketches: [sketch] })).colours_approved).toBeNull();
  });
  test('before the hand-over means: when every job is finished, or it is handed over unmade', () => {
    const both = [aJob(finished), { ...aJob(finished, '2026-05-28'), number: 8 }];
    expect(eventDays(facts({ jobs: both })).before_hand_over).toBe('2026-05-28');
    expect(eventDays(facts({ jobs: [aJob(finished), aJob(2)] })).before_hand_over).toBeNull();
    const handOver = { handedOn: '2026-06-18', totalCents: whole } as const;
    expect(eventDays(facts({ handOver })).before_hand_over).toBe('2026-06-18');
  });
});

describe('payments fill the steps in their order', () => {
  test.each([
    ['nothing', 0n, [0n, 0n, 0n, 0n]],
    ['a part of the first', 100_000n, [100_000n, 0n, 0n, 0n]],
    ['more than the first', 300_000n, [270_000n, 30_000n, 0n, 0n]],
    ['more than all of them', 2_000_000n, [270_000n, 270_000n, 270_000n, 270_000n]],
  ])('%s', (_label, cents, expected) => {
    const steps = planDue(facts({ payments: [paid(cents, '2026-05-13')] }), whole);
    expect(steps.map((step) => step.paidCents)).toEqual(expected);
    expect(steps.map((step) => step.paidCents + step.leftCents)).toEqual(
      steps.map((step) => step.amountCents),
    );
  });
  test('what went back is open again', () => {
    const payments = [paid(300_000n, '2026-05-13')];
    const refunds = [{ amountCents: 100_000n, refundedOn: '2026-05-14' }] as const;
    const [deposit] = planDue(facts({ payments, refunds }), whole);
    expect(deposit).toMatchObject({ paidCents: 200_000n, leftCents: 70_000n });
  });
  test('what was asked for says so', () => {
    const ask = { amountCents: 1n, askedOn: '2026-05-05', dueOn: '2026-05-19' } as const;
    const asked = [
      { ...ask, stepPosition: 2 },
      { ...ask, stepPosition: null },
    ];
    expect(planDue(facts({ asked }), whole).map((step) => step.isAsked)).toEqual([
      ...[false, true, false, false],
    ]);
  });
});

describe('signed changes move the amounts, and the steps still come to the whole', () => {
  test.each<[string, Partial<ChangeOrderFact>, bigint, bigint[]]>([
    [
      'more without an event: the last step',
      { priceCents: 40_000n },
      43_200n,
      [270_000n, 270_000n, 270_000n, 313_200n],
    ],
    [
      'more with an event: that step, the tax of it the last',
      { priceCents: 40_000n, dueEvent: 'agreed' },
      43_200n,
      [310_000n, 270_000n, 270_000n, 273_200n],
    ],
    [
      'less: the last step',
      { priceCents: -100_000n },
      -108_000n,
      [270_000n, 270_000n, 270_000n, 162_000n],
    ],
    [
      'less than the last step holds: the ones before',
      { priceCents: -300_000n },
      -324_000n,
      [270_000n, 270_000n, 216_000n, 0n],
    ],
    [
      'not signed: nothing',
      { priceCents: 40_000n, signedOn: null },
      0n,
      [270_000n, 270_000n, 270_000n, 270_000n],
    ],
  ])('%s', (_label, change, more, expected) => {
    const changeOrders = [aChange(change)];
    expect(amounts({ changeOrders }, whole + more)).toEqual(expected);
  });
  test('a change for an event that two steps name goes to the first of them', () => {
    const twice = plan.map((step) => ({ ...step, event: 'agreed' as const }));
    const changeOrders = [aChange({ priceCents: 10n, dueEvent: 'agreed' })];
    const steps = planDue(facts({ plan: twice, changeOrders }), whole + 10n);
    expect(steps.map((step) => step.amountCents)).toEqual([270_010n, 270_000n, 270_000n, 270_000n]);
  });
  test('any changes whatever: no step below nothing, together the whole', () => {
    const change = fc.record({
      priceCents: fc.bigInt({ min: -300_000n, max: 300_000n }),
      dueEvent: fc.constantFrom('agreed' as const, 'hung' as const, 'out_of_bisque' as const, null),
    });
    fc.assert(
      fc.property(
        fc.array(change, { maxLength: 5 }),
        fc.bigInt({ min: 0n, max: whole * 2n }),
        (changes, total) => {
          const changeOrders = changes.map((each, at) => aChange({ ...each, number: at + 1 }));
          const now = amounts({ changeOrders }, total);
          expect(now.every((cents) => cents >= 0n)).toBe(true);
          expect(sumCents(now)).toBe(total);
        },
      ),
    );
  });
});

describe('without a plan of its own', () => {
  test('it is the deposit, and the rest before the hand-over', () => {
    const steps = planDue(facts({ plan: [] }), whole);
    expect(steps).toMatchObject([
      { name: 'Deposit', event: 'agreed', amountCents: 500_000n },
      { name: 'Balance', event: 'before_hand_over', amountCents: 580_000n },
    ]);
    const all = { ...agreement, depositCents: whole };
    expect(planDue(facts({ plan: [], agreement: all }), whole)).toHaveLength(1);
  });
  test('nothing is due before anything is agreed', () => {
    expect(planDue(someFacts({ plan }), whole)).toEqual([]);
    expect(planDue(someFacts(), whole)).toEqual([]);
  });
});

test('what has fallen due, and what is owed before it leaves, are told apart', () => {
  const steps = planDue(facts({ ...beforeClay, payments: [paid(300_000n, '2026-05-13')] }), whole);
  expect(fallenDueCents(steps)).toBe(540_000n);
  expect(owedBeforeHandOverCents(steps)).toBe(510_000n);
  expect([eventOrder('agreed') < eventOrder('hung'), eventOrder('agreed')]).toEqual([true, 0]);
});
