import { describe, expect, test } from 'vitest';
import { weightInput, weightInputIn } from '@/lib/units/input';
import {
  formatWeight,
  parseWeight,
  weightRefusalMessage,
  type WeightRefusal,
} from '@/lib/units/rules';

describe('weights as people type them', () => {
  test.each([
    ['a bare number is in pounds', '6.25', 2_835],
    ['pounds and ounces', '6 lb 4 oz', 2_835],
    ['pounds and ounces with a comma', '6 lbs, 4 1/2 oz', 2_849],
    ['a fraction of a pound', '6 1/2 lb', 2_948],
    ['ounces', '12 oz', 340],
    ['one pound, rounded to the gram', '1 pound', 454],
    ['kilograms', '2.3 kg', 2_300],
    ['grams', '850g', 850],
    ['the heaviest there is', '100000 kg', 100_000_000],
  ])('%s', (_label, text, grams) => {
    expect(parseWeight(text, 'lb')).toEqual({ ok: true, value: grams });
  });

  const refused: Record<WeightRefusal['code'], readonly string[]> = {
    no_weight: ['', ' '],
    not_a_weight: ['heavy', '-3 lb', '1/0 lb'],
    unknown_weight_unit: ['10 stone', '2 tons', '1 lb 2 kg'],
    weight_of_zero: ['0', '0 oz', '0.4 g'],
    too_heavy: ['999999 lb', '100001 kg'],
  };
  const rows = Object.entries(refused).flatMap(([code, texts]) =>
    texts.map((text) => [text, code] as const),
  );
  test.each(rows)('%j is refused: %s', (text, code) => {
    const read = parseWeight(text, 'lb');
    expect(read.ok ? 'taken' : read.refusal.code).toBe(code);
    if (!read.ok) expect(weightRefusalMessage(read.refusal)).toMatch(/^[A-Z].*\.$/);
  });
});

describe('weights as they are read', () => {
  test.each([
    [340, '12 oz', '340 g'],
    [454, '1 lb', '454 g'],
    [2_835, '6 lb 4 oz', '2.84 kg'],
    [4_530, '10 lb', '4.53 kg'],
    [25_855, '57 lb', '25.9 kg'],
    [1_000, '2 lb 3 oz', '1 kg'],
    [0, '0 oz', '0 g'],
  ])('%d grams are %s or %s', (grams, pounds, kilograms) => {
    expect([formatWeight(grams, 'lb'), formatWeight(grams, 'kg')]).toEqual([pounds, kilograms]);
  });
});

describe('weights in a form', () => {
  test('a typed weight becomes grams', () => {
    expect([weightInput.parse('1 lb'), weightInputIn('kg').parse('1')]).toEqual([454, 1_000]);
  });

  test('a refused weight says why', () => {
    expect(weightInput.safeParse('3 stone').error?.issues[0]?.message).toMatch(/pounds, ounces/);
    expect(weightInput.safeParse('1'.repeat(50)).success).toBe(false);
  });
});
