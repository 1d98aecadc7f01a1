import { fc, test as law } from '@fast-check/vitest';
import { expect, test } from 'vitest';
import { dryingDays, routeForThickness, thicknessOf } from '@/lib/studio/rules/drying';
import { routes } from '../../helpers/usual-routes';

const inch = 25_400;

// Common practice: a thin tile dries one to two weeks, an inch three to four, two inches five to eight.
test.each([
  [6_350, [7, 10, 14]],
  [inch / 2, [7, 10, 14]],
  [(inch * 3) / 4, [14, 17, 21]],
  [inch, [21, 24, 28]],
  [inch * 2, [35, 45, 56]],
  [inch * 3, [53, 68, 84]],
])('%i µm of clay dry so many days', (thicknessUm, days) => {
  expect(dryingDays(thicknessUm)).toEqual(days);
});

law.prop([fc.integer({ min: 1, max: 100_000 }), fc.integer({ min: 1, max: 100_000 })])(
  'what is thicker never dries in fewer days',
  (one, other) => {
    const thin = dryingDays(Math.min(one, other));
    const thick = dryingDays(Math.max(one, other));
    thin.forEach((days, at) => {
      expect(days).toBeLessThanOrEqual(thick[at] ?? 0);
    });
  },
);

test.each([
  ['slab_relief', inch, inch],
  ['slab_relief', inch * 4, inch * 2],
  ['press_moulded', inch, inch],
  ['slip_cast', inch * 9, null],
  ['thrown', inch, null],
  ['slab_relief', null, null],
] as const)('the clay of %s that is %s µm deep is so thick', (technique, depthUm, thick) => {
  expect(thicknessOf(technique, depthUm)).toBe(thick);
});

test('only drying grows with the thickness, and never below the route’s own days', () => {
  const thick = routeForThickness(routes.press_moulded, inch);
  const dry = thick.find((step) => step.kind === 'dry');
  expect(dry).toMatchObject({ shortestDays: 21, likelyDays: 24, longestDays: 28 });
  expect(thick.filter((step) => step.kind !== 'dry')).toEqual(
    routes.press_moulded.filter((step) => step.kind !== 'dry'),
  );
  expect(routeForThickness(routes.slab_relief, inch / 2)).toEqual(routes.slab_relief);
  expect(routeForThickness(routes.thrown, null)).toEqual(routes.thrown);
});
