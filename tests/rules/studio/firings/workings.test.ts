import { describe, expect, test } from 'vitest';
import { findWorking } from '@/lib/workings/list';

function answer(name: string, more: object = {}) {
  const working = findWorking(name);
  const answered = working?.answer({ ...working.example, ...more });
  if (!answered) throw new Error(`There is no ${name}`);
  return answered.ok ? answered.value : answered.refusal;
}

describe('the firings’ calculations by name', () => {
  test('what fits in a kiln: nine tiles of 6 in on each of eight shelves, and eight left', () => {
    expect(answer('kiln-load')).toMatchObject({ shelves: 8, laid: 72, left: 8 });
  });

  test('how long a firing takes', () => {
    expect(answer('firing-time')).toMatchObject({ minutes: 551, peakC: 1_222 });
    expect(answer('firing-time', { segments: [] })).toContain('segments');
  });

  test('when a kiln is cool', () => {
    expect(answer('kiln-cooling')).toMatchObject({ minutes: 667 });
    expect(answer('kiln-cooling', { secondC: 1_100 })).toBe(
      'secondC: must be cooler than firstC, and with toC above roomC',
    );
  });

  test('what of a firing falls to a piece', () => {
    expect(answer('firing-share')).toMatchObject({
      lineCents: [760, 1_140],
      eachCents: [760, 380],
    });
    expect(answer('firing-share', { cents: -1 })).toContain('cents');
  });
});
