import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';
import { sumCents } from '@/lib/money/rules';
import { formatDecimal } from '@/lib/money/rules/decimal';
import { combinedRatePercent, ratesOn, workOutTax } from '@/lib/tax/rules';
import { addDays, daysBetween, type Day } from '@/lib/dates/rules';

const ratePercent = fc
  .integer({ min: 0, max: 1_500_000 })
  .map((units) => formatDecimal({ units: BigInt(units), scale: 5 }));
const parts = fc.array(fc.record({ name: fc.constantFrom('State', 'County'), ratePercent }), {
  maxLength: 5,
});
const line = (min: bigint) =>
  fc.record({ cents: fc.bigInt({ min, max: 10_000_000n }), taxable: fc.boolean() });
const sale = fc.record({
  lines: fc.array(line(0n), { maxLength: 30 }),
  parts,
  roundBy: fc.constantFrom('invoice' as const, 'item' as const),
});
const mixedSale = fc.record({
  lines: fc.array(line(-10_000_000n), { maxLength: 30 }),
  parts,
  roundBy: fc.constantFrom('invoice' as const, 'item' as const),
});
const size = (amount: bigint): bigint => (amount < 0n ? -amount : amount);

/** The combined rate in units of which ten million make the whole: five places of a percent. */
function rateUnits(of: readonly { ratePercent: string }[]): bigint {
  const [whole = '0', fraction = ''] = combinedRatePercent(
    of.map((part) => ({ name: 'all', ...part })),
  ).split('.');
  return BigInt(whole + fraction.padEnd(5, '0'));
}
const unitsOfAll = 10_000_000n;

test.prop([mixedSale])('the authorities’ shares add up to the tax', (asked) => {
  const due = workOutTax(asked);
  const shared = sumCents(due.parts.map((part) => part.taxCents));
  expect(shared).toBe(asked.parts.length === 0 ? 0n : due.taxCents);
});

test.prop([mixedSale])('the lines’ shares add up to the tax', (asked) => {
  const due = workOutTax(asked);
  expect(due.perLineCents).toHaveLength(asked.lines.length);
  expect(sumCents(due.perLineCents)).toBe(due.taxCents);
});

test.prop([mixedSale])('each line’s share is less than a cent from its exact tax', (asked) => {
  const rate = rateUnits(asked.parts);
  workOutTax(asked).perLineCents.forEach((cents, place) => {
    const line = asked.lines[place];
    const exact = line?.taxable ? line.cents * rate : 0n;
    expect(size(cents * unitsOfAll - exact)).toBeLessThan(unitsOfAll);
  });
});

test.prop([sale])('by invoice the tax is within half a cent of the exact tax', (asked) => {
  const taxable = sumCents(asked.lines.map((line) => (line.taxable ? line.cents : 0n)));
  const due = workOutTax({ ...asked, roundBy: 'invoice' });
  const over = due.taxCents * unitsOfAll - taxable * rateUnits(asked.parts);
  expect(over * 2n).toBeGreaterThan(-unitsOfAll);
  expect(over * 2n).toBeLessThanOrEqual(unitsOfAll);
});

test.prop([sale])(
  'each authority is less than a cent from its share of what was taken',
  (asked) => {
    const due = workOutTax(asked);
    const all = rateUnits(asked.parts);
    due.parts.forEach((part) => {
      const off = part.taxCents * all - due.taxCents * rateUnits([part]);
      expect(size(off) <= (all === 0n ? 0n : all - 1n)).toBe(true);
    });
  },
);

test.prop([mixedSale])('a return of everything gives back every cent', (asked) => {
  const taken = workOutTax(asked);
  const lines = asked.lines.map((line) => ({ ...line, cents: -line.cents }));
  const back = workOutTax({ ...asked, lines });
  expect(back.taxCents + taken.taxCents).toBe(0n);
  if (taken.taxCents !== 0n) {
    expect(back.perLineCents).toEqual(taken.perLineCents.map((cents) => -cents));
  }
});

test.prop([fc.array(fc.integer({ min: 1, max: 900 }), { maxLength: 8 }), fc.nat({ max: 8_000 })])(
  'rates that follow each other leave no day with two of them',
  (lengths, offset) => {
    const first: Day = '2020-01-01';
    const starts = lengths.reduce<Day[]>(
      (days, length) => [...days, addDays(days.at(-1) ?? first, length)],
      [first],
    );
    const rates = starts.map((fromOn, place) => ({ fromOn, untilOn: starts[place + 1] ?? null }));
    const day = addDays('2019-06-01', offset);
    expect(ratesOn(rates, day)).toHaveLength(daysBetween(first, day) >= 0 ? 1 : 0);
  },
);
