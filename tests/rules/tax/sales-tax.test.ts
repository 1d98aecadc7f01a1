import { describe, expect, test } from 'vitest';
import { ratePercentInput, roundByInput } from '@/lib/tax/input';
import {
  combinedRatePercent,
  exactTax,
  ratesOn,
  workOutTax,
  type RoundBy,
  type TaxLine,
} from '@/lib/tax/rules';

const state = { name: 'State', ratePercent: '6' };
const county = { name: 'County', ratePercent: '1.25' };
const taxed = (...amounts: bigint[]): TaxLine[] =>
  amounts.map((cents) => ({ cents, taxable: true }));

describe('a sale with tax', () => {
  const sale = (roundBy: RoundBy) =>
    workOutTax({ lines: taxed(999n, 999n, 999n), parts: [state, county], roundBy });

  test('by invoice the whole is rounded once and shared over the lines', () => {
    expect(sale('invoice')).toEqual({
      taxCents: 217n,
      perLineCents: [73n, 72n, 72n],
      parts: [
        { ...state, taxableCents: 2_997n, taxCents: 180n },
        { ...county, taxableCents: 2_997n, taxCents: 37n },
      ],
    });
  });

  test('by item each line is rounded, and the authorities share what was collected', () => {
    const due = sale('item');
    expect([due.taxCents, due.perLineCents]).toEqual([216n, [72n, 72n, 72n]]);
    expect(due.parts.map((part) => part.taxCents)).toEqual([179n, 37n]);
  });

  test('the rates are added before anything is rounded', () => {
    // Apart, each half cent would go up and make 2 cents of 1.
    const parts = [
      { name: 'State', ratePercent: '0.5' },
      { name: 'City', ratePercent: '0.5' },
    ];
    expect(workOutTax({ lines: taxed(100n), parts, roundBy: 'invoice' }).taxCents).toBe(1n);
  });

  test('what is not taxable bears none of it', () => {
    const lines = [...taxed(10_000n), { cents: 5_000n, taxable: false }];
    const due = workOutTax({ lines, parts: [state], roundBy: 'invoice' });
    expect([due.taxCents, due.perLineCents]).toEqual([600n, [600n, 0n]]);
    expect(due.parts[0]?.taxableCents).toBe(10_000n);
  });

  test.each<RoundBy>(['invoice', 'item'])('a return gives back what the sale took, by %s', (by) => {
    const amounts = [999n, 1_999n, 350n];
    const taken = workOutTax({ lines: taxed(...amounts), parts: [state, county], roundBy: by });
    const back = workOutTax({
      lines: taxed(...amounts.map((cents) => -cents)),
      parts: [state, county],
      roundBy: by,
    });
    expect(back.taxCents).toBe(-taken.taxCents);
    expect(back.perLineCents).toEqual(taken.perLineCents.map((cents) => -cents));
    expect(back.parts.map((part) => part.taxCents)).toEqual(
      taken.parts.map((part) => -part.taxCents),
    );
  });

  test('an exchange of equal prices is taxed by nothing', () => {
    const due = workOutTax({ lines: taxed(1_999n, -1_999n), parts: [state], roundBy: 'invoice' });
    expect([due.taxCents, due.perLineCents]).toEqual([0n, [120n, -120n]]);
  });

  test('no authority, no tax', () => {
    const due = workOutTax({ lines: taxed(999n), parts: [], roundBy: 'invoice' });
    expect(due).toEqual({ taxCents: 0n, perLineCents: [0n], parts: [] });
  });

  test('a rate of zero is shown and takes nothing', () => {
    const parts = [{ name: 'State', ratePercent: '0' }];
    const due = workOutTax({ lines: taxed(999n), parts, roundBy: 'item' });
    expect(due.parts).toEqual([
      { name: 'State', ratePercent: '0', taxableCents: 999n, taxCents: 0n },
    ]);
  });

  test.each(['-1', 'six', ''])('the rate %j is a broken promise', (ratePercent) => {
    const parts = [{ name: 'State', ratePercent }];
    expect(() => workOutTax({ lines: taxed(1n), parts, roundBy: 'item' })).toThrow(/rate of State/);
  });
});

describe('rates', () => {
  test('the rates of all authorities together, without zeros that say nothing', () => {
    expect(combinedRatePercent([state, county, { name: 'City', ratePercent: '1.125' }])).toBe(
      '8.375',
    );
    expect(combinedRatePercent([state, { name: 'City', ratePercent: '2.00000' }])).toBe('8');
    expect(combinedRatePercent([])).toBe('0');
  });

  test('the exact tax is shown before it is rounded', () => {
    expect([exactTax(1_000n, '8.25'), exactTax(-30n, '5')]).toEqual(['$0.825', '−$0.015']);
  });

  const rates = [
    { name: 'old', fromOn: '2025-01-01', untilOn: '2026-07-01' },
    { name: 'new', fromOn: '2026-07-01', untilOn: null },
    { name: 'fair', fromOn: '2026-06-30', untilOn: '2026-07-02' },
  ] as const;
  test.each([
    ['before any of them', '2024-12-31', []],
    ['on the first day of a rate', '2025-01-01', ['old']],
    ['on the last day of a rate', '2026-06-30', ['old', 'fair']],
    ['on the day a rate ends and the next begins', '2026-07-01', ['new', 'fair']],
    ['long after', '2030-01-01', ['new']],
  ] as const)('in force %s', (_label, day, names) => {
    expect(ratesOn(rates, day).map((rate) => rate.name)).toEqual(names);
  });

  test.each([
    ['8.375', true],
    ['0', true],
    ['100', true],
    ['100.1', false],
    ['8.375001', false],
    ['-1', false],
    ['8,5', false],
  ])('a form takes the rate %j: %s', (text, taken) => {
    expect(ratePercentInput.safeParse(text).success).toBe(taken);
  });

  test('a form asks how the cents are rounded', () => {
    expect(roundByInput.safeParse('sometimes').error?.issues[0]?.message).toMatch(/rounded once/);
  });
});
