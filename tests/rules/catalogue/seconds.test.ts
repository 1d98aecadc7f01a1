import { expect, test } from 'vitest';
import {
  gradeWords,
  sameFlaw,
  secondCode,
  secondPriceCents,
  secondRefusalMessage,
  type SecondRefusal,
} from '@/lib/stock/rules/marks/second';

// Common practice: about half off for a second, a quarter off for an irregular.
test.each([
  ['second', 13_800n, 6_900n],
  ['irregular', 13_800n, 10_350n],
  ['second', 5_201n, 2_601n],
  ['irregular', 1n, 1n],
  ['second', 0n, 0n],
] as const)('a %s of what costs %s costs %s', (grade, first, cents) => {
  expect(secondPriceCents(first, grade)).toBe(cents);
});

test.each([
  ['the first flaw', ['TERN-10-CI', 'second'], [], 'TERN-10-CI-S'],
  ['an irregular', ['TERN-10-CI', 'irregular'], ['TERN-10-CI-S'], 'TERN-10-CI-I'],
  ['another flaw', ['TERN-10-CI', 'second'], ['TERN-10-CI-S', 'TERN-10-CI-S2'], 'TERN-10-CI-S3'],
  ['a code that is full', ['A'.repeat(24), 'second'], [], `${'A'.repeat(22)}-S`],
  ['a full code cut at a hyphen', [`${'A'.repeat(21)}-CI`, 'second'], [], `${'A'.repeat(21)}-S`],
] as const)('%s has a SKU of its own', (_label, [first, grade], taken, code) => {
  expect(secondCode(first, grade, new Set(taken))).toBe(code);
});

test('one flaw is one flaw, however it is written', () => {
  expect(sameFlaw(' Pinholes  lower left. ')).toBe(sameFlaw('pinholes lower left'));
  expect(sameFlaw('pinholes lower left')).not.toBe(sameFlaw('pinholes lower right'));
});

test('a second is told with its flaw, a first is told nothing', () => {
  const flaw = 'pinholes lower left';
  expect(gradeWords({ grade: 'second', flaw })).toBe('second: pinholes lower left');
  expect(gradeWords({ grade: 'irregular', flaw: '' })).toBe('irregular');
  expect(gradeWords({ grade: 'first', flaw: '' })).toBe('');
});

const sentences: readonly [SecondRefusal, RegExp][] = [
  [{ code: 'not_allowed', permission: 'catalogue.keep' }, /does not let you/],
  [{ code: 'key_used_for_something_else' }, /Load it again/],
  [{ code: 'picture_empty' }, /\./],
  [{ code: 'unknown_piece' }, /not in the catalogue/],
  [{ code: 'second_already' }, /stays one/],
  [{ code: 'which_number', sku: 'HERON-W-AS' }, /which number/],
  [{ code: 'number_not_here' }, /not here/],
  [{ code: 'not_enough_here', onHand: 0, held: 0 }, /None are here/],
  [{ code: 'not_enough_here', onHand: 2, held: 0 }, /only 2 are here/],
  [{ code: 'not_enough_here', onHand: 2, held: 1 }, /1 of them are held/],
];
test.each(sentences)('what was refused is told: %o', (refusal, words) => {
  expect(secondRefusalMessage(refusal)).toMatch(words);
});
