import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';
import {
  formatCents,
  mostCents,
  parseCents,
  percentsAddUp,
  plainCents,
  shareCents,
  splitByPercents,
  splitCents,
  sumCents,
} from '@/lib/money/rules';
import { formatDecimal, parseDecimal } from '@/lib/money/rules/decimal';

const cents = fc.bigInt({ min: -mostCents, max: mostCents });
const weights = fc
  .array(fc.bigInt({ min: 0n, max: 1_000_000n }), { minLength: 1, maxLength: 40 })
  .filter((each) => each.some((weight) => weight > 0n));
const size = (amount: bigint): bigint => (amount < 0n ? -amount : amount);

test.prop([cents, weights])('the parts of a split add up to the whole', (total, by) => {
  expect(sumCents(splitCents(total, by))).toBe(total);
});

test.prop([cents, weights])('each part is less than a cent from its exact share', (total, by) => {
  const all = sumCents(by);
  splitCents(total, by).forEach((part, place) => {
    const off = part * all - total * (by[place] ?? 0n);
    expect(size(off)).toBeLessThan(all);
  });
});

test.prop([cents, weights])('a split below zero mirrors the one above', (total, by) => {
  expect(splitCents(-total, by)).toEqual(splitCents(total, by).map((part) => -part));
});

test.prop([cents, weights])('nothing is given to a weight of zero', (total, by) => {
  const parts = splitCents(total, [...by, 0n]);
  expect(parts.at(-1)).toBe(0n);
});

test.prop([cents, weights, fc.bigInt({ min: 1n, max: 1_000n })])(
  'only the proportion of the weights counts',
  (total, by, times) => {
    const larger = by.map((weight) => weight * times);
    expect(splitCents(total, larger)).toEqual(splitCents(total, by));
  },
);

/** Percentages with two places that add up to 100, cut at random places. */
const percents = fc
  .array(fc.integer({ min: 0, max: 10_000 }), { maxLength: 11 })
  .map((cuts) => [0, ...cuts.toSorted((a, b) => a - b), 10_000])
  .map((cuts) => cuts.slice(1).map((cut, place) => cut - (cuts[place] ?? 0)))
  .map((hundredths) => hundredths.map((each) => formatDecimal({ units: BigInt(each), scale: 2 })));

test.prop([cents, percents])('instalments add up to the price', (price, shares) => {
  expect(percentsAddUp(shares)).toBe(true);
  expect(sumCents(splitByPercents(price, shares))).toBe(price);
});

test.prop([cents, percents])('percentages one hundredth short are noticed', (_price, shares) => {
  expect(percentsAddUp([...shares, '0.01'])).toBe(false);
});

test.prop([cents, fc.integer({ min: 0, max: 100_000 })])(
  'a share rounded up and one rounded down differ by a cent at most, half-up between them',
  (amount, thousandths) => {
    const percent = formatDecimal({ units: BigInt(thousandths), scale: 3 });
    const [down, half, up] = (['down', 'half-up', 'up'] as const).map((rounding) =>
      size(shareCents(amount, percent, rounding)),
    );
    expect(up === down || up === (down ?? 0n) + 1n).toBe(true);
    expect([down, up]).toContain(half);
    const exact = size(amount) * BigInt(thousandths);
    expect(size((half ?? 0n) * 100_000n - exact) * 2n).toBeLessThanOrEqual(100_000n);
  },
);

test.prop([fc.bigInt({ min: 0n, max: mostCents })])(
  'an amount survives being written and read',
  (amount) => {
    expect(parseCents(formatCents(amount))).toEqual({ ok: true, value: amount });
    expect(parseCents(plainCents(amount))).toEqual({ ok: true, value: amount });
  },
);

test.prop([fc.string({ maxLength: 30 })])('no text makes reading an amount fail', (text) => {
  const read = parseCents(text);
  expect(read.ok ? read.value >= 0n : read.refusal.code.length > 0).toBe(true);
});

test.prop([fc.bigInt({ min: -(10n ** 15n) + 1n, max: 10n ** 15n - 1n }), fc.nat({ max: 12 })])(
  'a decimal survives being written and read',
  (units, scale) => {
    const read = parseDecimal(formatDecimal({ units, scale }));
    expect(read && read.units * 10n ** BigInt(scale - read.scale)).toBe(units);
  },
);
