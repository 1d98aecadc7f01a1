import { fc, test as prop } from '@fast-check/vitest';
import { describe, expect, test } from 'vitest';
import { coveredBy, paidOfAsks } from '@/lib/commissions/rules/money/covered';
import { sumCents } from '@/lib/money/rules';

function ask(amountCents: bigint, namedCents = 0n, isWithdrawn = false) {
  return { amountCents, namedCents, isWithdrawn };
}

describe('what came in for each that was asked for', () => {
  test.each([
    ['nothing for nothing', [], 500n, []],
    ['what names it stays with it', [ask(500n), ask(250n, 100n)], 0n, [0n, 100n]],
    ['what names none fills them in their order', [ask(500n), ask(250n)], 600n, [500n, 100n]],
    ['what is more than was asked for goes on', [ask(500n, 600n), ask(250n)], 0n, [500n, 100n]],
    ['one that was taken back takes nothing', [ask(500n, 0n, true), ask(250n)], 300n, [0n, 250n]],
    ['one that was taken back lets go', [ask(500n, 80n, true), ask(250n)], 0n, [0n, 80n]],
    ['what is more than all of it is for none', [ask(500n), ask(250n)], 900n, [500n, 250n]],
  ])('%s', (_label, asks, otherCents, expected) => {
    expect(paidOfAsks(asks, otherCents)).toEqual(expected);
  });
});

const plan = [
  { name: 'Deposit', amountCents: 500n },
  { name: 'Balance', amountCents: 500n },
];

describe('what a payment went to', () => {
  test.each([
    ['the first step, in part', [0n, 300n], [['Deposit', 300n]], 0n],
    [
      'the rest of one, some of the next',
      [400n, 300n],
      [
        ['Deposit', 100n],
        ['Balance', 200n],
      ],
      0n,
    ],
    ['the last step alone', [500n, 500n], [['Balance', 500n]], 0n],
    ['more than the whole plan', [900n, 300n], [['Balance', 100n]], 200n],
    ['nothing of a plan that was paid before', [1_000n, 10n], [], 10n],
  ])('%s', (_label, [beforeCents = 0n, amountCents = 0n], steps, beyondCents) => {
    const covered = coveredBy(plan, beforeCents, amountCents);
    expect(covered.steps.map(({ name, cents }) => [name, cents])).toEqual(steps);
    expect(covered.beyondCents).toBe(beyondCents);
  });
});

const cents = fc.bigInt({ min: 0n, max: 100_000n });

prop.prop([fc.array(cents, { maxLength: 6 }), fc.array(cents, { maxLength: 8 })])(
  'payments one after the other cover every cent once, in the order of the plan',
  (amounts, payments) => {
    const steps = amounts.map((amountCents, at) => ({ name: String(at), amountCents }));
    const filled = new Map<string, bigint>();
    let before = 0n;
    for (const paid of payments) {
      const covered = coveredBy(steps, before, paid);
      expect(sumCents(covered.steps.map((each) => each.cents)) + covered.beyondCents).toBe(paid);
      for (const each of covered.steps) {
        filled.set(each.name, (filled.get(each.name) ?? 0n) + each.cents);
      }
      before += paid;
    }
    for (const { name, amountCents } of steps) {
      expect((filled.get(name) ?? 0n) <= amountCents).toBe(true);
    }
    const whole = sumCents(amounts);
    expect(sumCents([...filled.values()])).toBe(before < whole ? before : whole);
  },
);

prop.prop([
  fc.array(fc.record({ amountCents: cents, namedCents: cents, isWithdrawn: fc.boolean() })),
  cents,
])(
  'nothing is counted twice among what was asked for, and none takes more than it asks for',
  (asks, otherCents) => {
    const paid = paidOfAsks(asks, otherCents);
    const inAll = otherCents + sumCents(asks.map((each) => each.namedCents));
    const open = sumCents(asks.map((each) => (each.isWithdrawn ? 0n : each.amountCents)));
    expect(sumCents(paid)).toBe(inAll < open ? inAll : open);
  },
);
