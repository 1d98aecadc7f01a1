import { describe, expect, test } from 'vitest';
import {
  learnLoss,
  learnRefusalMessage,
  planWith,
  statedWeighsPieces,
  type Counted,
  type Stated,
} from '@/lib/studio/rules/losses/learned';
import { howManyToStart } from '@/lib/studio/rules/losses/start';
import { learnedWords } from '@/lib/studio/rules/losses/words';

const fiveInAHundred: Stated = { percent: '5', weighsPieces: statedWeighsPieces };
const learned = (counted: Counted, stated: Stated | null = fiveInAHundred) => {
  const worked = learnLoss(counted, stated);
  if (!worked.ok) throw new Error(worked.refusal.code);
  return worked.value;
};

describe('a loss that learns', () => {
  test('says what was stated before anything is counted', () => {
    expect(learned({ lost: 0, of: 0 })).toMatchObject({ share: 0.05, ownShare: 0 });
  });

  test('lies between what was stated and what was counted', () => {
    const { share } = learned({ lost: 10, of: 40 });
    expect(share).toBeCloseTo((0.05 * 20 + 10) / (20 + 40), 12);
    expect(share).toBeGreaterThan(0.05);
    expect(share).toBeLessThan(0.25);
  });

  test('comes to what was counted as counts grow, and knows it better', () => {
    const counts = [4, 40, 400, 4_000].map((lost) => learned({ lost, of: lost * 10 }));
    const gaps = counts.map(({ share }) => Math.abs(share - 0.1));
    const spans = counts.map(({ lowShare, highShare }) => highShare - lowShare);
    const own = counts.map(({ ownShare }) => ownShare);
    expect(gaps).toEqual(gaps.toSorted((a, b) => b - a));
    expect(spans).toEqual(spans.toSorted((a, b) => b - a));
    expect(own).toEqual(own.toSorted((a, b) => a - b));
    expect(gaps.at(-1)).toBeLessThan(0.0005);
  });

  test('a stated rate that weighs more gives way more slowly', () => {
    const counted = { lost: 10, of: 40 };
    const light = learned(counted, { percent: '5', weighsPieces: 5 });
    const heavy = learned(counted, { percent: '5', weighsPieces: 200 });
    expect(heavy.share).toBeLessThan(light.share);
    expect(heavy.ownShare).toBeLessThan(light.ownShare);
  });

  test('none of a few lost is not taken for never', () => {
    const { share, highShare } = learned({ lost: 0, of: 5 }, null);
    expect(share).toBeGreaterThan(0.05);
    expect(highShare).toBeGreaterThan(0.3);
  });

  test('the share to reckon with lies within its span', () => {
    for (const of of [0, 1, 3, 50, 1_000]) {
      for (const lost of [0, Math.floor(of / 3), of]) {
        const { share, lowShare, highShare } = learned({ lost, of });
        expect(lowShare).toBeLessThan(share);
        expect(highShare).toBeGreaterThan(share);
      }
    }
  });
});

test.each<[Counted, Stated | null, string]>([
  [{ lost: 3, of: 40 }, null, '3 of 40 lost; between 2 and 19 of 100.'],
  [{ lost: 3, of: 40 }, fiveInAHundred, '3 of 40 lost; between 1 and 15 of 100.'],
  [{ lost: 0, of: 0 }, fiveInAHundred, 'Nothing counted yet; as stated, between 0 and 18 of 100.'],
  [{ lost: 0, of: 0 }, null, 'Nothing counted yet, nor stated.'],
  [
    { lost: 0, of: 12 },
    fiveInAHundred,
    'None of 12 lost; between 0 and 12 of 100. That still rests more on what was stated than on counts.',
  ],
  [{ lost: 30, of: 400 }, fiveInAHundred, '30 of 400 lost; between 5 and 11 of 100.'],
])('%j, stated %j: %s', (counted, stated, words) => {
  expect(learnedWords(learned(counted, stated))).toBe(words);
});

test('what was learned can be planned with, likely and at its worst', () => {
  const drying = learned({ lost: 3, of: 40 }, null);
  const startFor = (side: 'likely' | 'high') => {
    const steps = [planWith('drying', drying, side)];
    const worked = howManyToStart({ good: 24, steps, certaintyPercent: '90' });
    return worked.ok ? worked.value.start : Number.NaN;
  };
  expect(planWith('drying', drying, 'likely')).toEqual({ step: 'drying', percent: '8.54' });
  expect(startFor('high')).toBeGreaterThan(startFor('likely'));
});

describe('what is refused, in this order', () => {
  test.each<[Counted, Stated | null, string]>([
    [{ lost: 5, of: 4 }, { percent: '0', weighsPieces: 0 }, 'counts_do_not_fit'],
    [{ lost: -1, of: 4 }, null, 'counts_do_not_fit'],
    [{ lost: 0.5, of: 4 }, null, 'counts_do_not_fit'],
    [{ lost: 0, of: 4 }, { percent: '0', weighsPieces: 0 }, 'stated_out_of_range'],
    [{ lost: 0, of: 4 }, { percent: '100', weighsPieces: 20 }, 'stated_out_of_range'],
    [{ lost: 0, of: 4 }, { percent: 'few', weighsPieces: 20 }, 'stated_out_of_range'],
    [{ lost: 0, of: 4 }, { percent: '5', weighsPieces: 0 }, 'weight_out_of_range'],
    [{ lost: 0, of: 4 }, { percent: '5', weighsPieces: 2.5 }, 'weight_out_of_range'],
    [{ lost: 0, of: 4 }, { percent: '5', weighsPieces: 10_001 }, 'weight_out_of_range'],
  ])('%j, stated %j: %s', (counted, stated, code) => {
    const worked = learnLoss(counted, stated);
    expect(worked).toMatchObject({ ok: false, refusal: { code } });
    expect(!worked.ok && learnRefusalMessage(worked.refusal)).toMatch(/^[A-Z].*\.$/);
  });
});
