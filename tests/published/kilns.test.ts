import { expect, test } from 'vitest';
import { firingCostCents, firingWh } from '@/lib/studio/rules/kilns/energy';

const wh = (powerW: number, ...stages: [number, string][]) => {
  const worked = firingWh({
    powerW,
    stages: stages.map(([minutes, dutyPercent]) => ({ minutes, dutyPercent })),
  });
  return worked.ok ? worked.value : Number.NaN;
};
const cents = (wattHours: number, centsPerKwh: string) => {
  const worked = firingCostCents({ wattHours, centsPerKwh, wearCents: 0n });
  return worked.ok ? Number(worked.value) : Number.NaN;
};

// Suppliers' worked examples of what a firing costs, as they print them.
test('48 A at 240 V for 8 hours at 9 cents: $8.29', () => {
  expect(cents(wh(48 * 240, [480, '100']), '9')).toBe(829);
});

// Printed $8.45; exactly it is 8.4565, and we round once, at the end.
test('16.64 kW for 8.47 hours, half of it on, at 12 cents: within a cent of $8.45', () => {
  const minutes = Math.round(8.47 * 60);
  expect(Math.abs(cents(wh(16_640, [minutes, '50']), '12') - 845)).toBeLessThanOrEqual(1);
});

test('3.6 kW for 3 1/4 hours at 17 cents: $1.99', () => {
  expect(cents(wh(3_600, [195, '100']), '17')).toBe(199);
});

// Duties of common practice: 15 in 100 while it warms, 50 in a bisque.
test('11.52 kW, 7 hours of warming and 9 of bisque: 63.936 kWh', () => {
  expect(wh(11_520, [420, '15'], [540, '50'])).toBe(63_936);
});
