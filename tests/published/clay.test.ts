import { describe, expect, test } from 'vitest';
import { clayWeightG, firedUm, measuredShrinkagePercent, wetClayG, wetUm } from '@/lib/clay/rules';
import { absorptionOf } from '@/lib/clay/rules/absorption';

const inchUm = 25_400;
const gramsPerPound = 453.592_37;
const worked = (answer: { ok: boolean; value?: number }): number => answer.value ?? Number.NaN;

// The relation is that of ASTM C326: total shrinkage is measured on the plastic length.
describe('ASTM C326: wet and fired sizes', () => {
  test('10 inches wet, 8.5 fired: 15 percent (potters.org discussion, 1996)', () => {
    const bar = measuredShrinkagePercent(10 * inchUm, 8.5 * inchUm);
    expect(bar).toEqual({ ok: true, value: '15.00' });
  });

  // potters.org discussion, 2003
  test('6 inches of wet clay at 11.5 percent come out at 5.31', () => {
    expect(worked(firedUm(6 * inchUm, '11.5')) / inchUm).toBeCloseTo(5.31, 2);
  });

  // potters.org discussion, 2003; 6 × 1.115 would be 6.69, and too small
  test('6 inches fired at 11.5 percent are made at 6.78', () => {
    expect(worked(wetUm(6 * inchUm, '11.5')) / inchUm).toBeCloseTo(6.78, 2);
  });

  // Worked from the relation
  test('100 mm to 88 mm is 12 percent, and 250 mm are made at 284', () => {
    expect(measuredShrinkagePercent(100_000, 88_000)).toEqual({ ok: true, value: '12.00' });
    expect(worked(wetUm(250_000, '12')) / 1_000).toBeCloseTo(284.09, 2);
  });

  // Common practice: a 60-inch panel of 12-percent clay
  test('a 60-inch panel is made at 68.2 inches; made at 67.2 it comes out at 59.1', () => {
    expect(worked(wetUm(60 * inchUm, '12')) / inchUm).toBeCloseTo(68.2, 1);
    expect(worked(firedUm(67.2 * inchUm, '12')) / inchUm).toBeCloseTo(59.1, 1);
  });
});

describe('weights', () => {
  test('a cubic foot at 1 g in each cubic centimetre weighs 62.43 lb (unit conversion)', () => {
    const foot = 12 * inchUm;
    const cube = { lengthUm: foot, widthUm: foot, thicknessUm: foot, densityGPerCm3: '1' };
    expect(worked(clayWeightG(cube)) / gramsPerPound).toBeCloseTo(62.43, 2);
  });

  // Structural engineers' common figure for quarry tile of 20 mm
  test('a square metre of 20 mm quarry tile at 2.5 weighs 50 kg', () => {
    const metre = 1_000_000;
    const tile = { lengthUm: metre, widthUm: metre, thicknessUm: 20_000, densityGPerCm3: '2.5' };
    expect(worked(clayWeightG(tile))).toBe(50_000);
  });

  // Common practice: 11 to 12 lb for each square foot and inch of thickness, fired stoneware
  test.each(['2.2', '2.3'])('stoneware at %s weighs 11 to 12 lb by the square foot inch', (of) => {
    const foot = 12 * inchUm;
    const slab = { lengthUm: foot, widthUm: foot, thicknessUm: inchUm, densityGPerCm3: of };
    const pounds = worked(clayWeightG(slab)) / gramsPerPound;
    expect(pounds).toBeGreaterThan(11);
    expect(pounds).toBeLessThan(12);
  });

  // Common practice: fired over 0.73, and 15 to 20 percent of scrap
  test('57 lb fired want about 78 lb of wet clay, 92 lb with scrap', () => {
    const fired = Math.round(57 * gramsPerPound);
    expect(worked(wetClayG(fired, '27', '0')) / gramsPerPound).toBeCloseTo(78.1, 1);
    expect(worked(wetClayG(fired, '27', '18')) / gramsPerPound).toBeCloseTo(92.1, 1);
  });
});

// ANSI A137.1: the four classes, tried on either side of each boundary
describe('ANSI A137.1: classes of absorption', () => {
  test.each([
    ['0', 'impervious'],
    ['0.5', 'impervious'],
    ['0.50', 'impervious'],
    ['0.51', 'vitreous'],
    ['3.0', 'vitreous'],
    ['3.01', 'semi-vitreous'],
    ['7.0', 'semi-vitreous'],
    ['7.01', 'non-vitreous'],
    ['20', 'non-vitreous'],
  ])('%s percent is %s', (percent, name) => {
    expect(absorptionOf(percent)).toMatchObject({ ok: true, value: { class: name } });
  });
});
