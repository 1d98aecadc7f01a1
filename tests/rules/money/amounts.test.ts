import { describe, expect, test } from 'vitest';
import { centsInput, percentInput, someCentsInput } from '@/lib/money/input';
import {
  formatCents,
  moneyRefusalMessage,
  mostCents,
  parseCents,
  plainCents,
  sumCents,
  type MoneyRefusal,
} from '@/lib/money/rules';

describe('amounts as people type them', () => {
  test.each([
    ['whole dollars', '1299', 129_900n],
    ['commas at the thousands', '1,299.00', 129_900n],
    ['the sign of the dollar', '$1,299.00', 129_900n],
    ['a gap behind the sign', '$ 12', 1_200n],
    ['one decimal is tens of cents', '1299.5', 129_950n],
    ['cents alone', '.05', 5n],
    ['spaces around', '  48 ', 4_800n],
    ['zero', '0', 0n],
    ['the most there is', '9,999,999,999.99', mostCents],
  ])('%s', (_label, text, cents) => {
    expect(parseCents(text)).toEqual({ ok: true, value: cents });
  });

  const refused: Record<MoneyRefusal['code'], readonly string[]> = {
    no_amount: ['', '   ', '$'],
    below_zero: ['-5', '−5', '$-5', '(5)', '-nothing'],
    not_an_amount: ['abc', '5.', '12 34', '1e3', '5 dollars', '.', '٣'],
    thousands_misplaced: ['12,34', '1,2345.00', '1,,000', '1234,567', '1,'],
    part_of_a_cent: ['1.234', '0.001', '$1,000.999'],
    too_much: ['10000000000', '99,999,999,999.99'],
  };
  const rows = Object.entries(refused).flatMap(([code, texts]) =>
    texts.map((text) => [text, code] as const),
  );
  test.each(rows)('%j is refused: %s', (text, code) => {
    const read = parseCents(text);
    expect(read.ok ? 'taken' : read.refusal.code).toBe(code);
    if (!read.ok) expect(moneyRefusalMessage(read.refusal)).toMatch(/^[A-Z].*\.$/);
  });

  test('misplaced commas are told before a part of a cent', () => {
    expect(parseCents('12,34.567')).toEqual({
      ok: false,
      refusal: { code: 'thousands_misplaced' },
    });
  });
});

describe('amounts as they are read', () => {
  test.each([
    ['thousands', 129_900n, '$1,299.00'],
    ['below zero', -500n, '−$5.00'],
    ['cents alone', 5n, '$0.05'],
    ['zero', 0n, '$0.00'],
    ['three groups', 123_456_789_012n, '$1,234,567,890.12'],
    ['no comma at three figures', 99_999n, '$999.99'],
  ])('%s', (_label, cents, text) => {
    expect(formatCents(cents)).toBe(text);
  });

  test('another currency has its own sign', () => {
    expect(formatCents(-129_900n, { currency: 'EUR' })).toBe('−€1,299.00');
  });

  test('a spreadsheet gets neither sign of currency nor commas', () => {
    expect([plainCents(-129_900n), plainCents(7n)]).toEqual(['-1299.00', '0.07']);
  });

  test('nothing at all adds up to zero', () => {
    expect([sumCents([]), sumCents([1n, -3n, 9n])]).toEqual([0n, 7n]);
  });
});

describe('amounts in a form', () => {
  test('a typed amount becomes cents', () => {
    expect(centsInput.parse('$1,299.5')).toBe(129_950n);
  });

  test('a refused amount says why', () => {
    expect(centsInput.safeParse('12,34').error?.issues[0]?.message).toMatch(/commas/);
  });

  test('a text far too long is not read at all', () => {
    expect(centsInput.safeParse('1'.repeat(500)).success).toBe(false);
  });

  test('where something has to be paid, zero is refused', () => {
    expect(someCentsInput.safeParse('0').success).toBe(false);
    expect(someCentsInput.parse('0.01')).toBe(1n);
  });

  test.each([
    ['12.5', true],
    ['0', true],
    ['100', true],
    ['100.01', false],
    ['-1', false],
    ['ten', false],
    ['', false],
  ])('the percentage %j is taken: %s', (text, taken) => {
    expect(percentInput.safeParse(text).success).toBe(taken);
  });
});
