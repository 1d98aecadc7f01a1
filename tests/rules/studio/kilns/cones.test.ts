import { describe, expect, test } from 'vitest';
import {
  compareCones,
  coneBeside,
  coneNamed,
  coneRates,
  coneRefusalMessage,
  cones,
  coneTemperatureC,
} from '@/lib/studio/rules/kilns/cones';
import {
  celsiusOf,
  climbInCelsius,
  climbInFahrenheit,
  degreesWords,
  fahrenheitOf,
} from '@/lib/studio/rules/kilns/degrees';

describe('cones', () => {
  test('go from 022 to 01 and on from 1 to 14, 36 of them', () => {
    expect([cones[0], cones[21], cones[22], cones.at(-1), cones.length]).toEqual([
      ...['022', '01', '1', '14', 36],
    ]);
  });

  test('06 is cooler than 6, and than 05', () => {
    expect(compareCones('06', '6')).toBeLessThan(0);
    expect(compareCones('06', '05')).toBeLessThan(0);
    expect(compareCones('01', '1')).toBeLessThan(0);
    expect(compareCones('10', '9')).toBeGreaterThan(0);
    expect(compareCones('6', '6')).toBe(0);
    expect((['6', '06', '10', '010'] as const).toSorted(compareCones)).toEqual([
      ...['010', '06', '6', '10'],
    ]);
  });

  test('are found by the names people write', () => {
    expect(['06', ' cone 6 ', '^04', 'Cone 022', 'cone10'].map(coneNamed)).toEqual([
      ...['06', '6', '04', '022', '10'],
    ]);
    expect(['0', '15', '023', '5.5', '', 'six'].map(coneNamed)).toEqual(Array(6).fill(undefined));
  });

  test('a second firing is often a cone or two lower', () => {
    expect([coneBeside('6', -1), coneBeside('01', 1), coneBeside('1', -1)]).toEqual([
      ...['5', '1', '01'],
    ]);
    expect([coneBeside('022', -1), coneBeside('14', 1)]).toEqual([null, null]);
  });

  test.each(coneRates)('at %d °C an hour every cone is hotter than the one before', (rate) => {
    const told = cones.flatMap((cone) => {
      const celsius = coneTemperatureC(cone, rate);
      return celsius.ok ? [celsius.value] : [];
    });
    expect(told.length).toBe(rate === 15 ? 33 : 36);
    expect(told).toEqual(told.toSorted((a, b) => a - b));
    expect(new Set(told).size).toBe(told.length);
  });

  test('a faster climb takes a cone further up', () => {
    for (const cone of cones) {
      const told = coneRates.flatMap((rate) => {
        const celsius = coneTemperatureC(cone, rate);
        return celsius.ok ? [celsius.value] : [];
      });
      expect(told.slice(1).every((celsius, at) => celsius > (told[at] ?? 0))).toBe(true);
    }
  });

  test.each([
    ['15', 45, 'no_such_cone'],
    ['06', 45, 'rate_not_in_table'],
    ['022', 15, 'not_in_table'],
  ])('cone %s at %d: %s', (cone, rate, code) => {
    const told = coneTemperatureC(cone, rate);
    expect(told).toMatchObject({ ok: false, refusal: { code } });
    expect(!told.ok && coneRefusalMessage(told.refusal)).toMatch(/^[A-Z].*\.$/);
  });
});

describe('degrees', () => {
  test('of temperature have a freezing point, those of a climb have none', () => {
    expect([fahrenheitOf(0), fahrenheitOf(100), fahrenheitOf(-40)]).toEqual([32, 212, -40]);
    expect([celsiusOf(32), celsiusOf(212), celsiusOf(-40)]).toEqual([0, 100, -40]);
    expect([climbInFahrenheit(60), climbInCelsius(108), climbInFahrenheit(-50)]).toEqual([
      ...[108, 60, -90],
    ]);
  });

  test('go there and back', () => {
    for (let celsius = 0; celsius <= 1_400; celsius += 1) {
      expect(celsiusOf(fahrenheitOf(celsius))).toBe(celsius);
    }
  });

  test('are read with their scale', () => {
    expect(degreesWords(1_222, 'C')).toBe('1,222 °C');
    expect(degreesWords(1_222, 'F')).toBe('2,232 °F');
    expect(degreesWords(93, 'C')).toBe('93 °C');
  });
});
