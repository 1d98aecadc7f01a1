import { expect, test } from 'vitest';
import { judgeLeachTest, type LeachedMetal, type WareKind } from '@/lib/clay/rules/leach';

const held = (ware: WareKind, metal: LeachedMetal, mgPerL: string) => {
  const reading = { lead: '0', cadmium: '0', [metal]: mgPerL };
  const readings = Array.from({ length: 6 }, () => reading);
  const test = { laboratory: 'a laboratory', testedOn: '2026-01-05', ware, readings } as const;
  const judged = judgeLeachTest(test, '2026-02-01');
  return judged.ok && judged.value.holds;
};

// FDA Food Code 4-101.13, as in WAC 246-215-04110; the same figures as FDA CPG 545.450.
test.each<[WareKind, string, string]>([
  ['flatware', '3.0', '3.1'],
  ['small_hollowware', '2.0', '2.1'],
  ['large_hollowware', '1.0', '1.1'],
  ['cup_or_mug', '0.5', '0.6'],
  ['pitcher', '0.5', '0.6'],
])('lead from %s: %s mg in a litre holds, %s does not', (ware, most, more) => {
  expect([held(ware, 'lead', most), held(ware, 'lead', more)]).toEqual([true, false]);
});

// FDA CPG 545.400; a pitcher is taken for large hollowware.
test.each<[WareKind, string, string]>([
  ['flatware', '0.5', '0.51'],
  ['small_hollowware', '0.5', '0.51'],
  ['large_hollowware', '0.25', '0.26'],
  ['cup_or_mug', '0.5', '0.51'],
  ['pitcher', '0.25', '0.26'],
])('cadmium from %s: %s mg in a litre holds, %s does not', (ware, most, more) => {
  expect([held(ware, 'cadmium', most), held(ware, 'cadmium', more)]).toEqual([true, false]);
});
