import { describe, expect, test } from 'vitest';
import { placeWords, places } from '@/lib/commissions/rules/colours/places';
import { roundsOf, shownSince } from '@/lib/commissions/rules/colours/rounds';
import type { ShownFact } from '@/lib/commissions/rules/facts';

const sketch = (label: string, changesOn: ShownFact['changesOn'] = null): ShownFact => ({
  ...{ label, shownOn: '2026-05-04', approvedOn: null, changesOn, areas: [] },
});
const terms = { included: 2, extraCents: 15_000n };
const asked = '2026-05-08';

describe('the rounds of changes to the sketch', () => {
  test.each([
    ['the first', [sketch('A')], 'A', { used: 0, next: 1, feeCents: 0n }],
    ['the second', [sketch('A', asked), sketch('B')], 'B', { used: 1, next: 2, feeCents: 0n }],
    ['one more to the same sketch', [sketch('A', asked)], 'A', { used: 1, next: 1, feeCents: 0n }],
    [
      'the third costs',
      [sketch('A', asked), sketch('B', asked), sketch('C')],
      'C',
      { used: 2, next: 3, feeCents: 15_000n },
    ],
    [
      'a sketch nobody changed is no round',
      [sketch('A'), sketch('B', asked), sketch('C')],
      'C',
      { used: 1, next: 2, feeCents: 0n },
    ],
    [
      'more to a round that was paid for',
      [sketch('A', asked), sketch('B', asked), sketch('C', asked)],
      'C',
      { next: 3, feeCents: 0n },
    ],
  ] as const)('%s', (_what, sketches, label, expected) => {
    expect(roundsOf({ sketches }, label, terms)).toMatchObject({ included: 2, ...expected });
  });

  test('none is included where none was agreed', () => {
    const none = { included: 0, extraCents: 15_000n };
    expect(roundsOf({ sketches: [sketch('A')] }, 'A', none).feeCents).toBe(15_000n);
  });
});

test.each([
  ['the last one', [sketch('A'), sketch('B')], 'B', null],
  ['an older one', [sketch('A'), sketch('B')], 'A', 'B'],
  ['the only one', [sketch('A')], 'A', null],
  ['none at all', [], 'A', null],
] as const)('what was shown since: %s', (_what, sketches, label, since) => {
  expect(shownSince({ sketches }, label)).toBe(since);
});

describe('where a spot is', () => {
  test.each(Object.values(places))('$words is said as it is chosen', (place) => {
    expect(placeWords(place)).toBe(place.words);
  });
  test.each([
    [0, 0, 'upper left'],
    [1000, 1000, 'lower right'],
    [333, 500, 'left'],
    [334, 500, 'in the middle'],
    [666, 666, 'in the middle'],
    [667, 667, 'lower right'],
  ])('%d, %d is %s', (xPermille, yPermille, words) => {
    expect(placeWords({ xPermille, yPermille })).toBe(words);
  });
});
