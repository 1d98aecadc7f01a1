import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';
import { checkDigit, digitsBeforeCheck, inStoreCode, isValidGtin } from '@/lib/catalogue/rules';
import { clayWeightG, firedUm, wetClayG, wetUm } from '@/lib/clay/rules';
import { formatDecimal } from '@/lib/money/rules/decimal';

const um = fc.integer({ min: 1_000, max: 3_000_000 });
const percent = fc
  .integer({ min: 0, max: 2_500 })
  .map((hundredths) => formatDecimal({ units: BigInt(hundredths), scale: 2 }));
const worked = (answer: { ok: boolean; value?: number }): number => answer.value ?? Number.NaN;

test.prop([um, percent])(
  'a piece made at its wet size comes out at its fired size',
  (size, lost) => {
    const wet = worked(wetUm(size, lost));
    expect(wet).toBeGreaterThanOrEqual(size);
    expect(worked(firedUm(wet, lost))).toBe(size);
  },
);

test.prop([um, um, um])('a piece weighs the same whichever way it lies', (a, b, c) => {
  const flat = { lengthUm: a, widthUm: b, thicknessUm: c, densityGPerCm3: '1.9' };
  const upright = { lengthUm: c, widthUm: a, thicknessUm: b, densityGPerCm3: '1.9' };
  expect(worked(clayWeightG(flat))).toBe(worked(clayWeightG(upright)));
});

test.prop([um, um])('two halves of a piece weigh what it weighs', (a, b) => {
  const piece = { lengthUm: a, widthUm: b, thicknessUm: 20_000, densityGPerCm3: '2.05' };
  const half = worked(clayWeightG({ ...piece, thicknessUm: 10_000 }));
  expect(Math.abs(worked(clayWeightG(piece)) - 2 * half)).toBeLessThanOrEqual(1);
});

test.prop([fc.integer({ min: 1, max: 1_000_000 }), percent, percent])(
  'there is never less wet clay than the piece weighs fired',
  (grams, lost, scrap) => {
    expect(worked(wetClayG(grams, lost, scrap))).toBeGreaterThanOrEqual(grams);
  },
);

const digits = fc
  .constantFrom(...digitsBeforeCheck)
  .chain((length) => fc.array(fc.nat({ max: 9 }), { minLength: length, maxLength: length }));

test.prop([digits, fc.nat(), fc.integer({ min: 1, max: 9 })])(
  'every single wrong digit of a code is noticed',
  (written, where, by) => {
    const place = where % written.length;
    const wrong = written.map((digit, at) => (at === place ? (digit + by) % 10 : digit));
    expect(worked(checkDigit(wrong.join('')))).not.toBe(worked(checkDigit(written.join(''))));
  },
);

test.prop([
  fc.integer({ min: 0, max: 9_999_999_999 }),
  fc.nat({ max: 12 }),
  fc.integer({ min: 1, max: 9 }),
])('a tag of the gallery with one wrong digit does not scan', (number, place, by) => {
  const code = inStoreCode('20', number);
  const wrong = Array.from(code, (digit, at) => (at === place ? (Number(digit) + by) % 10 : digit));
  expect(isValidGtin(code)).toBe(true);
  expect(isValidGtin(wrong.join(''))).toBe(false);
});
