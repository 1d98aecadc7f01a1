import { describe, expect, test } from 'vitest';
import { middleTrials, openTrials, shareWithin } from './trials';

const studios = 200;

/** How far a count of so many trials strays from its share in 999 of 1,000: 3.29 deviations. */
function strays(share: number, trials: number): number {
  return 3.29 * Math.sqrt((share * (1 - share)) / trials);
}

describe.each([
  ['jobs as they stand', openTrials(studios)],
  ['jobs left to their truth for some weeks', middleTrials(studios)],
] as const)('%s', (_, trials) => {
  test('are looked at in nearly every studio', () => {
    expect(trials.length).toBeGreaterThan(studios * 0.9);
  });

  test.each([50, 80, 95])('are ready within %d of 100 futures as often', (ofHundred) => {
    const share = ofHundred / 100;
    const held = shareWithin(trials, ofHundred);
    expect(Math.abs(held - share)).toBeLessThan(strays(share, trials.length));
  });

  test('are ready by the 80-day at least that often, and not much more', () => {
    const ready = trials.filter(({ told, readyOn }) => readyOn <= (told.readyOn.in80 ?? '9999'));
    const share = ready.length / trials.length;
    expect(share).toBeGreaterThan(0.8 - strays(0.8, trials.length));
    expect(share).toBeLessThan(0.9 + strays(0.9, trials.length));
  });
});
