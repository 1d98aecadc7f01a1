import { describe, expect, test } from 'vitest';
import { parseCents } from '@/lib/money/rules';
import { exactTax, workOutTax, type RoundBy } from '@/lib/tax/rules';

function cents(text: string): bigint {
  const read = parseCents(text);
  if (!read.ok) throw new Error(`${text} is not an amount`);
  return read.value;
}

function taxOn(amounts: readonly string[], ratePercent: string, roundBy: RoundBy): bigint {
  const lines = amounts.map((amount) => ({ cents: cents(amount), taxable: true }));
  return workOutTax({ lines, parts: [{ name: 'all', ratePercent }], roundBy }).taxCents;
}

// Streamlined Sales and Use Tax Agreement, section 324: carried to the third decimal and rounded
// up when that is above 4. The rows are worked from that rule.
describe('SSUTA section 324: rounding', () => {
  test.each([
    ['rounding half to even would give 0.82', '10.00', '8.25', '$0.825', '0.83'],
    ['rounding twice would give 0.83', '9.70', '8.5', '$0.8245', '0.82'],
    ['the smallest half', '0.30', '5', '$0.015', '0.02'],
    ['third decimal 1', '1.45', '7', '$0.1015', '0.10'],
    ['third decimal 4', '35.50', '6.35', '$2.25425', '2.25'],
    ['third decimal 9', '12.07', '6.875', '$0.8298125', '0.83'],
    ['a base of TB-ST-838 at 8 percent', '549.95', '8', '$43.996', '44.00'],
    ['a base of TB-ST-838 at 8.875 percent', '3750.00', '8.875', '$332.8125', '332.81'],
  ] as const)('%s', (...[, amount, rate, exact, tax]) => {
    expect(exactTax(cents(amount), rate)).toBe(exact);
    expect(taxOn([amount], rate, 'invoice')).toBe(cents(tax));
    expect(taxOn([amount], rate, 'item')).toBe(cents(tax));
  });

  test.each([
    ['three of 9.99 at 7.25', Array(3).fill('9.99'), '7.25', '2.16', '2.17'],
    ['five of 0.50 at 7', Array(5).fill('0.50'), '7', '0.20', '0.18'],
  ] as [string, string[], string, string, string][])(
    'item and invoice basis differ: %s',
    (...[, amounts, rate, byItem, byInvoice]) => {
      expect(taxOn(amounts, rate, 'item')).toBe(cents(byItem));
      expect(taxOn(amounts, rate, 'invoice')).toBe(cents(byInvoice));
    },
  );

  // 0.10 at 5 percent is 0.005: rounded apart, state and city would take 0.02.
  test('state and city are added before they are rounded', () => {
    const lines = [{ cents: 10n, taxable: true }];
    const parts = ['State', 'City'].map((name) => ({ name, ratePercent: '5' }));
    expect(workOutTax({ lines, parts, roundBy: 'invoice' }).taxCents).toBe(1n);
  });
});

describe('published amounts of tax', () => {
  // OpenStax, Principles of Accounting, volume 1, section 12.1
  test('50.00 at 8 percent is 4.00', () => {
    expect(taxOn(['50.00'], '8', 'invoice')).toBe(cents('4.00'));
  });

  // OpenStax, Principles of Accounting, volume 1, section 12.2
  test('18,000 at 6 percent is 1,080, and 19,080 in cash', () => {
    const tax = taxOn(['18,000.00'], '6', 'invoice');
    expect([tax, cents('18,000.00') + tax]).toEqual([cents('1,080.00'), cents('19,080.00')]);
  });
});

// New York State, Tax Bulletin TB-ST-838, 14 May 2012: the seller's own delivery is in the base.
describe('TB-ST-838: taxable bases', () => {
  test.each([
    ['a dryer, a service contract and delivery', ['499.95', '30.00', '20.00'], '549.95'],
    ['furniture to order and its carrier', ['3,500.00', '250.00'], '3,750.00'],
    ['lumber and prepaid freight', ['400.00', '100.00'], '500.00'],
  ] as const)('%s', (_label, amounts, base) => {
    const lines = amounts.map((amount) => ({ cents: cents(amount), taxable: true }));
    const parts = [{ name: 'State', ratePercent: '8' }];
    const due = workOutTax({ lines, parts, roundBy: 'invoice' });
    expect(due.parts[0]?.taxableCents).toBe(cents(base));
  });
});
