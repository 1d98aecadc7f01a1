import { describe, expect, test } from 'vitest';
import { checkDigit, isValidGtin, weightedSum } from '@/lib/catalogue/rules';

describe('check digits as they are published', () => {
  test.each([
    ['GS1, how to calculate a check digit by hand', '629104150021', 57, 3],
    ['GS1 India, check digit example', '890400021003', 63, 7],
    ['GS1 Sweden, check digit example', '730001100001', 23, 7],
  ] as const)('%s', (...[, digits, sum, digit]) => {
    expect(weightedSum(digits)).toBe(sum);
    expect(checkDigit(digits)).toEqual({ ok: true, value: digit });
    expect(isValidGtin(`${digits}${digit}`)).toBe(true);
  });

  test('the twelve digits of a UPC: 03600024145 ends in 7', () => {
    expect(checkDigit('03600024145')).toEqual({ ok: true, value: 7 });
    expect(isValidGtin('036000241457')).toBe(true);
  });
});
