import { expect, test } from 'vitest';
import { testedBody, totalShrinkagePercent } from '@/lib/clay/rules/body';
import { mouldHoldsMl } from '@/lib/clay/rules/slip';
import { wetSides } from '@/lib/clay/rules/weights';

// A clay shrinkage table on the web (cal2.calculator.city): 6.00 while drying and 6.38 of the dry
// length while firing come to 12.00 of the wet length.
test('two shrinkages: 6.00 and 6.38 are 12.00', () => {
  expect(totalShrinkagePercent('6.00', '6.38')).toEqual({ ok: true, value: '12.00' });
});

// Worked from the relation of ASTM C326: at 12 percent of length, 0.88³ of the volume is left.
test('12 percent of length leaves 0.681472 of the volume', () => {
  const side = 880_000;
  const wet = wetSides({ lengthUm: side, widthUm: side, thicknessUm: side }, '12');
  const wetMl = wet.ok ? (wet.value.lengthUm / 10_000) ** 3 : Number.NaN;
  expect((side / 10_000) ** 3 / wetMl).toBeCloseTo(0.681472, 6);
  const box = { lengthUm: side, widthUm: side, depthUm: side, shrinkagePercent: '12' };
  expect(mouldHoldsMl({ ...box, filledPercent: '100' })).toEqual({ ok: true, value: 1_000_000 });
});

// Worked from the formulas of ASTM C373 (from memory): dry 100, soaked 105, hung in water 60.
test('ASTM C373: 5.00 percent of water, 11.11 of open pores, 2.222 g in a cubic centimetre', () => {
  const tested = testedBody({ dryG: '100.00', soakedG: '105.00', hungInWaterG: '60.00' });
  const value = { absorptionPercent: '5.00', openPoresPercent: '11.11', densityGPerCm3: '2.22' };
  expect(tested).toEqual({ ok: true, value });
});
