import { expect, test } from 'vitest';
import { costOfOne, type CostStep } from '@/lib/studio/rules/costs/cost';

// A 6 × 6 in relief tile as small studios commonly reckon it (common practice, no publication):
// clay 0.90, glaze 0.60, 35 minutes at $25 an hour, two firings of $25 shared by 80, a mould of $40
// for 100 casts, 12 in 100 lost of all that, 20 percent of overhead: $23.33.
test('a pressed tile costs what the common reckoning says', () => {
  const step: CostStep = {
    ...{ name: 'all of it', minutesEach: '35', lossPercent: '12' },
    clay: { over: 90n, under: 1n },
    glaze: { over: 60n, under: 1n },
    firing: { over: 2n * 2_500n, under: 80n },
    mould: { over: 4_000n, under: 100n },
  };
  const cost = costOfOne({ steps: [step], centsPerHour: 2_500n, overheadPercent: '20' });
  if (!cost.ok) throw new Error(cost.refusal.code);
  const { totalCents, lines } = cost.value;
  expect(totalCents).toBe(2_333n);
  const bare = lines.slice(0, 5).reduce((sum, line) => sum + line.cents, 0n);
  expect(bare).toBe(1_711n);
  const beforeOverhead = lines.slice(0, 6).reduce((sum, line) => sum + line.cents, 0n);
  expect(beforeOverhead).toBe(1_944n);
});
