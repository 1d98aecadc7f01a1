import { describe, expect, test } from 'vitest';
import {
  chanceOfShort,
  goodMost,
  howManyToStart,
  shareThrough,
  startRefusalMessage,
  type StartAsked,
} from '@/lib/studio/rules/losses/start';
import { startWords } from '@/lib/studio/rules/losses/words';

const losing = (...percents: string[]) =>
  percents.map((percent, at) => ({ step: `step ${at + 1}`, percent }));
const asked = (over: Partial<StartAsked> = {}): StartAsked => ({
  good: 10,
  steps: losing('10'),
  certaintyPercent: '95',
  ...over,
});
const startOf = (over: Partial<StartAsked> = {}) => {
  const worked = howManyToStart(asked(over));
  if (!worked.ok) throw new Error(worked.refusal.code);
  return worked.value;
};

describe('how many to begin', () => {
  test('is the least number that is sure enough: one fewer is not', () => {
    const steps = losing('4', '4', '1.5', '4.5');
    const { start } = startOf({ good: 24, steps, certaintyPercent: '90' });
    const shortOf = (begun: number) => {
      const short = chanceOfShort({ begun, good: 24, steps });
      return short.ok ? short.value : Number.NaN;
    };
    expect(shortOf(start)).toBeLessThanOrEqual(0.1);
    expect(shortOf(start - 1)).toBeGreaterThan(0.1);
  });

  test('losses of steps multiply; they are not added', () => {
    const share = shareThrough(losing('50', '50'));
    expect(share).toEqual({ ok: true, value: 0.25 });
  });

  test('in what order steps lose makes no difference', () => {
    const [there, back] = [losing('4', '12', '1.5'), losing('1.5', '4', '12')];
    expect(startOf({ steps: there }).start).toBe(startOf({ steps: back }).start);
  });

  test('where nothing is lost, just as many are begun', () => {
    expect(startOf({ steps: [] })).toMatchObject({ start: 10, expectedGood: 10, shortChance: 0 });
    expect(startOf({ steps: losing('0', '0') }).start).toBe(10);
  });

  test('the surer it is to be, the more are begun', () => {
    const starts = ['50', '80', '95', '99', '99.99'].map(
      (certaintyPercent) => startOf({ certaintyPercent }).start,
    );
    expect(starts).toEqual(starts.toSorted((a, b) => a - b));
    expect(new Set(starts).size).toBeGreaterThan(3);
  });

  test('the number that comes out on average is not enough to be sure', () => {
    const { shortChanceWithoutSpare, shortChance } = startOf();
    expect(shortChanceWithoutSpare).toBeGreaterThan(0.5);
    expect(shortChance).toBeLessThanOrEqual(0.05);
  });
});

describe('the chance of falling short', () => {
  test.each([
    [{ begun: 2, good: 1 }, '20', 0.04],
    [{ begun: 1, good: 1 }, '20', 0.2],
    [{ begun: 3, good: 4 }, '0', 1],
    [{ begun: 0, good: 1 }, '5', 1],
    [{ begun: 4, good: 4 }, '0', 0],
  ])('%j at a loss of %s is %d', (of, percent, chance) => {
    const short = chanceOfShort({ ...of, steps: losing(percent) });
    expect(short.ok && short.value).toBeCloseTo(chance, 12);
  });
});

describe('what is refused, in this order', () => {
  test.each<[Partial<StartAsked>, string]>([
    [{ good: 0, steps: losing('100') }, 'pieces_out_of_range'],
    [{ good: 1.5 }, 'pieces_out_of_range'],
    [{ good: goodMost + 1 }, 'pieces_out_of_range'],
    [{ steps: losing('4', '100'), certaintyPercent: '0' }, 'loss_out_of_range'],
    [{ steps: losing('-1') }, 'loss_out_of_range'],
    [{ steps: losing('a few') }, 'loss_out_of_range'],
    [{ steps: losing('95', '95'), certaintyPercent: '0' }, 'nothing_comes_through'],
    [{ certaintyPercent: '0' }, 'certainty_out_of_range'],
    [{ certaintyPercent: '100' }, 'certainty_out_of_range'],
    [{ certaintyPercent: 'quite' }, 'certainty_out_of_range'],
  ])('%j: %s', (over, code) => {
    const worked = howManyToStart(asked(over));
    expect(worked).toMatchObject({ ok: false, refusal: { code } });
    expect(!worked.ok && startRefusalMessage(worked.refusal)).toMatch(/^[A-Z].*\.$/);
  });

  test('the step whose loss does not read is named', () => {
    const worked = howManyToStart(asked({ steps: [{ step: 'drying', percent: '104' }] }));
    expect(!worked.ok && startRefusalMessage(worked.refusal)).toBe(
      'What is lost at drying is 0 to less than 100 of a hundred: write it as 4 or 4.5.',
    );
  });

  test('the chance of falling short refuses the same', () => {
    const of = (begun: number, good: number, steps: string[]) =>
      chanceOfShort({ begun, good, steps: losing(...steps) });
    expect(of(-1, 1, [])).toMatchObject({ refusal: { code: 'pieces_out_of_range' } });
    expect(of(2, 0, [])).toMatchObject({ refusal: { code: 'pieces_out_of_range' } });
    expect(of(2, 1, ['100'])).toMatchObject({ refusal: { code: 'loss_out_of_range' } });
  });
});

test('what is said at the bench', () => {
  expect(startWords(10, startOf())).toBe(
    'Begin 13 pieces for 10: fewer than 10 come out whole about 3 times in 100. ' +
      'With no spare ones it would be about 65 times in 100.',
  );
  expect(startWords(10, startOf({ steps: [] }))).toBe('Begin 10: nothing is lost on the way.');
  const likely = startOf({ good: 1, steps: losing('2'), certaintyPercent: '50' });
  expect(startWords(1, likely)).toBe(
    'Begin 1, no spare ones: none comes out whole about 2 times in 100.',
  );
  const sure = startOf({ good: 1, steps: losing('2'), certaintyPercent: '99' });
  expect(startWords(1, sure)).toBe(
    'Begin 2 pieces for 1: none comes out whole less than once in 200 times. ' +
      'With no spare ones it would be about 2 times in 100.',
  );
});
