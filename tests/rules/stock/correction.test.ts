import { expect, test } from 'vitest';
import { correctionRefusalMessage, decideCorrection } from '@/lib/stock/rules/correction';
import { movementWords, standingWords } from '@/lib/stock/rules/words';

test.each([
  ['made', 3, 5, 3],
  ['broken', 1, 1, -1],
  ['missing', 2, 5, -2],
  ['counted', 3, 5, -2],
  ['counted', 0, 5, -5],
  ['counted', 9, 5, 4],
] as const)('%s, %i said where %i were: %i', (reason, pieces, ...[onHand, quantity]) => {
  expect(decideCorrection({ reason, pieces }, onHand)).toEqual({ ok: true, value: quantity });
});

test.each([
  ['made', 0, 5, 'no_pieces'],
  ['broken', 0, 0, 'no_pieces'],
  ['broken', 2, 1, 'fewer_here'],
  ['missing', 1, 0, 'fewer_here'],
  ['counted', 5, 5, 'count_agrees'],
] as const)('%s, %i said where %i were is refused', (reason, pieces, ...[onHand, code]) => {
  const decided = decideCorrection({ reason, pieces }, onHand);
  expect(decided).toMatchObject({ ok: false, refusal: { code } });
  if (!decided.ok) expect(correctionRefusalMessage(decided.refusal)).toMatch(/^[A-Z].+\.$/);
});

test.each([
  [-1, 'sold', '1 sold'],
  [3, 'made', '3 came from the studio'],
  [-2, 'counted', 'Counted: 2 fewer'],
  [2, 'counted', 'Counted: 2 more than thought'],
  [1, 'missing', '1 found again'],
] as const)('%i %s is told as “%s”', (quantity, reason, words) => {
  expect(movementWords({ quantity, reason })).toBe(words);
});

test.each([
  [0, 0, 'None here.'],
  [1, 0, 'The last one is here.'],
  [4, 0, '4 here.'],
  [0, 2, 'None here; 2 elsewhere.'],
])('%i here and %i elsewhere: %s', (onHand, elsewhere, words) => {
  expect(standingWords({ onHand, elsewhere })).toBe(words);
});
