import { describe, expect, test } from 'vitest';
import fc from 'fast-check';
import { readPlan } from '@/lib/commissions/input/proposal/terms';
import { depositOf, splitPlan, type PlanWish } from '@/lib/commissions/rules/proposal/plan';
import { proposalSentences } from '@/lib/commissions/rules/proposal/refusals';
import { sumCents } from '@/lib/money/rules';

const share = (percent: string): PlanWish => ({
  ...{ name: 'Part', event: 'hung', percent, amountCents: null },
});
const amount = (amountCents: bigint): PlanWish => ({
  ...{ name: 'Part', event: 'hung', percent: null, amountCents },
});
const amounts = (steps: PlanWish[], cents: bigint) =>
  splitPlan(steps, cents)?.map((step) => step.amountCents) ?? null;

describe('a plan of payments', () => {
  test.each([
    ['a half and two quarters', [share('50'), share('25'), share('25')], 10_001n],
    ['thirds', [share('33.333'), share('33.333'), share('33.334')], 100n],
    ['an amount, then shares', [amount(25_000n), share('50'), share('25')], 100_000n],
    ['nothing at all', [share('50'), share('50')], 0n],
  ])('%s: the parts come to the whole', (_label, steps, cents) => {
    expect(sumCents(amounts(steps, cents) ?? [])).toBe(cents);
  });

  test('the last takes what is left', () => {
    expect(amounts([amount(25_000n), amount(1n)], 100_000n)).toEqual([25_000n, 75_000n]);
  });

  test('steps before the last that come to more than the whole are no plan', () => {
    expect(amounts([amount(60_000n), amount(50_000n), amount(0n)], 100_000n)).toBeNull();
    expect(amounts([amount(100_001n)], 100_000n)).toEqual([100_000n]);
  });

  test('parts add up for any shares of a hundred', () => {
    const cuts = fc.array(fc.integer({ min: 0, max: 100 }), { minLength: 1, maxLength: 4 });
    fc.assert(
      fc.property(cuts, fc.bigInt({ min: 0n, max: 10n ** 10n }), (at, cents) => {
        const marks = [0, ...at.toSorted((a, b) => a - b), 100];
        const steps = marks.slice(1).map((mark, n) => share(String(mark - (marks[n] ?? 0))));
        expect(sumCents(amounts(steps, cents) ?? [])).toBe(cents);
      }),
    );
  });

  test('the deposit is what falls due on agreeing', () => {
    const steps = [
      { event: 'agreed', amountCents: 30n } as const,
      { event: 'hung', amountCents: 70n } as const,
    ];
    expect(depositOf(steps)).toBe(30n);
  });
});

const first = { stepName1: 'Deposit', stepEvent1: 'agreed' };

describe('a plan as it is written', () => {
  test.each([
    ['a share', '50 %', { percent: '50', amountCents: null }],
    ['a bare number is a share', '50', { percent: '50', amountCents: null }],
    ['an amount', '$250.00', { percent: null, amountCents: 25_000n }],
  ])('%s', (_label, stepMuch1, told) => {
    const last = { stepName2: 'Balance', stepEvent2: 'hung', stepMuch2: '' };
    const read = readPlan({ ...first, stepMuch1, ...last });
    expect('plan' in read && read.plan[0]).toMatchObject(told);
  });

  test.each([
    ['no step', {}, 'stepName1'],
    ['no event', { stepName1: 'Deposit', stepMuch1: '50' }, 'stepEvent1'],
    ['neither share nor amount', { ...first, stepMuch1: 'half' }, 'stepMuch1'],
    ['shares of ninety', { ...first, stepMuch1: '90 %' }, 'stepMuch1'],
  ])('%s is marked where it stands', (_label, fields, field) => {
    expect(readPlan(fields)).toMatchObject({ field });
  });
});

test('every refusal is a full sentence', () => {
  const facts = {
    ...{ validUntilOn: '2026-05-12', agreedOn: '2026-05-12', sentOn: '2026-05-12' },
    ...{ version: 3, answeredBy: 'Marit Oland', accepted: true },
  };
  for (const sentence of Object.values(proposalSentences)) {
    expect(sentence(facts as never)).toMatch(/^[A-Z].*\.$/);
  }
});
