import { describe, expect, test } from 'vitest';
import { coneTemperatureC } from '@/lib/studio/rules/kilns/cones';
import { climbInFahrenheit, fahrenheitOf } from '@/lib/studio/rules/kilns/degrees';

const celsius = (cone: string, rate: number) => {
  const told = coneTemperatureC(cone, rate);
  return told.ok ? told.value : Number.NaN;
};

// Temperature equivalents of the Orton Ceramic Foundation, self-supporting regular cones: the cells
// that agree in two copies of the chart, at 60 and 150 °C (108 and 270 °F) an hour; the chart prints
// both scales. The cells of cones 4 and 8 were misprinted in one list in use: 2142 and 2273 °F.
describe('the chart of cones', () => {
  test.each([
    ['022', 586, 590, 1_087, 1_094],
    ['019', 678, 695, 1_252, 1_283],
    ['018', 715, 734, 1_319, 1_353],
    ['017', 738, 763, 1_360, 1_405],
    ['010', 903, 915, 1_657, 1_679],
    ['09', 920, 930, 1_688, 1_706],
    ['08', 942, 956, 1_728, 1_753],
    ['06', 998, 1_013, 1_828, 1_855],
    ['05', 1_031, 1_044, 1_888, 1_911],
    ['04', 1_063, 1_077, 1_945, 1_971],
    ['1', 1_137, 1_154, 2_079, 2_109],
    ['5', 1_186, 1_207, 2_167, 2_205],
    ['6', 1_222, 1_243, 2_232, 2_269],
    ['7', 1_239, 1_257, 2_262, 2_295],
    ['10', 1_285, 1_305, 2_345, 2_381],
  ])('cone %s: %d and %d °C, %d and %d °F', (...row) => {
    const [cone, medium, fast, mediumF, fastF] = row;
    expect([celsius(cone, 60), celsius(cone, 150)]).toEqual([medium, fast]);
    expect(fahrenheitOf(celsius(cone, 60))).toBe(mediumF);
    expect(fahrenheitOf(celsius(cone, 150))).toBe(fastF);
  });

  test.each([
    ['4', 1_162, 2_124],
    ['8', 1_249, 2_280],
  ])('cone %s is %d °C, which is %d °F', (cone, medium, mediumF) => {
    expect(celsius(cone, 60)).toBe(medium);
    expect(fahrenheitOf(celsius(cone, 60))).toBe(mediumF);
  });

  // One copy of the chart only.
  test.each([
    ['019', 656],
    ['010', 891],
    ['06', 981],
    ['04', 1_046],
    ['6', 1_185],
    ['10', 1_251],
  ])('cone %s at 15 °C an hour: %d °C', (cone, slow) => {
    expect(celsius(cone, 15)).toBe(slow);
  });

  test('its climbs are 27, 108 and 270 °F an hour', () => {
    expect([15, 60, 150].map(climbInFahrenheit)).toEqual([27, 108, 270]);
  });
});
