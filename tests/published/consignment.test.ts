import { expect, test } from 'vitest';
import { lineDue, statementDue, type LineTold } from '@/lib/consignment/rules';
import { dueOnOf } from '@/lib/consignment/rules/owed';

// Common practice, without a published source: a worked statement of the trade at 50 %, a heron at
// 380.00 with 10 % borne by the gallery and a fern tile at 52.00, paid on 15 April for March.

const told = { number: null, quantity: 1, discount: null, borneBy: 'nobody' } as const;
const heron: LineTold = {
  ...{ ...told, skuId: 'h', sku: 'HR-14-MO', soldOn: '2026-03-03', retailCents: 38_000n },
  ...{ discount: { percent: '10' }, borneBy: 'gallery' },
};
const fern: LineTold = {
  ...{ ...told, skuId: 'f', sku: 'FT-06-CI', soldOn: '2026-03-09', retailCents: 5_200n },
};

test('the worked statement of the trade comes out to the cent', () => {
  const terms = { sharePercent: '50', fromOn: '2026-03-01', untilOn: '2026-03-31' } as const;
  const due = statementDue([heron, fern], terms);
  expect(due.ok && due.value.lines.map((line) => line.dueCents)).toEqual([19_000n, 2_600n]);
  expect(due.ok && due.value.lines.map((line) => line.shareCents)).toEqual([19_000n, 2_600n]);
  expect(due.ok && due.value.dueCents).toBe(21_600n);
  expect(dueOnOf('2026-03-31', 15)).toBe('2026-04-15');
});

test.each([
  ['gallery', 19_000n],
  ['us', 15_200n],
  ['both', 17_100n],
] as const)('10 %% of 380.00 borne by %s leaves us %s cents', (borneBy, dueCents) => {
  const due = lineDue({ ...heron, borneBy }, '50');
  expect(due).toMatchObject({ ok: true, value: { dueCents, discountCents: 3_800n } });
});
