import { expect, test } from 'vitest';
import { correctionRefusalMessage, decideCorrection } from '@/lib/stock/rules/correction';
import { standingWords } from '@/lib/stock/rules/words';

test.each([
  { said: { reason: 'made', pieces: 3 }, onHand: 5, quantity: 3 },
  { said: { reason: 'broken', pieces: 1 }, onHand: 1, quantity: -1 },
  { said: { reason: 'missing', pieces: 2 }, onHand: 5, quantity: -2 },
  { said: { reason: 'counted', pieces: 3 }, onHand: 5, quantity: -2 },
  { said: { reason: 'counted', pieces: 0 }, onHand: 5, quantity: -5 },
  { said: { reason: 'counted', pieces: 9 }, onHand: 5, quantity: 4 },
] as const)('$said where $onHand were moves $quantity', ({ said, onHand, quantity }) => {
  expect(decideCorrection(said, onHand)).toEqual({ ok: true, value: quantity });
});

test.each([
  { said: { reason: 'made', pieces: 0 }, onHand: 5, code: 'no_pieces' },
  { said: { reason: 'broken', pieces: 0 }, onHand: 0, code: 'no_pieces' },
  { said: { reason: 'broken', pieces: 2 }, onHand: 1, code: 'fewer_here' },
  { said: { reason: 'missing', pieces: 1 }, onHand: 0, code: 'fewer_here' },
  { said: { reason: 'counted', pieces: 5 }, onHand: 5, code: 'count_agrees' },
] as const)('$said where $onHand were is refused as $code', ({ said, onHand, code }) => {
  const decided = decideCorrection(said, onHand);
  expect(decided).toMatchObject({ ok: false, refusal: { code } });
  if (!decided.ok) expect(correctionRefusalMessage(decided.refusal)).toMatch(/^[A-Z].+\.$/);
});

test.each([
  { said: { reason: 'broken', pieces: 2 }, held: 4 },
  { said: { reason: 'missing', pieces: 5 }, held: 1 },
  { said: { reason: 'counted', pieces: 2 }, held: 3 },
] as const)('$said where $held of five are held is refused', ({ said, held }) => {
  const decided = decideCorrection(said, 5, held);
  expect(decided).toEqual({ ok: false, refusal: { code: 'held_for_somebody', held } });
  if (!decided.ok) expect(correctionRefusalMessage(decided.refusal)).toMatch(/held .*\.$/);
});

test('what is held may stay while the others go', () => {
  const said = { reason: 'counted', pieces: 3 } as const;
  expect(decideCorrection(said, 5, 3)).toEqual({ ok: true, value: -2 });
});

test.each([
  [0, 0, 'None here.'],
  [1, 0, 'The last one is here.'],
  [4, 0, '4 here.'],
  [0, 2, 'None here; 2 elsewhere.'],
])('%i here and %i elsewhere: %s', (onHand, elsewhere, words) => {
  expect(standingWords({ onHand, elsewhere })).toBe(words);
});
