import { expect, test } from 'vitest';
import { designCodeFrom, sameName } from '@/lib/catalogue/rules/piece';
import { mayMeanTitle, slipsBetween } from '@/lib/catalogue/rules/letters';

test.each([
  ['the beginning of a word', 'ter', true],
  ['words in another order', 'shoals tern', true],
  ['two letters swapped', 'tren', true],
  ['a letter missing', 'shols', true],
  ['a letter wrong', 'shoels', true],
  ['a letter too many', 'shoalls', true],
  ['a slip in the beginning of a word', 'shaol', true],
  ['capitals', 'TERN', true],
  ['another word', 'fern', true],
  ['three letters with a slip', 'trn', false],
  ['two slips in a short word', 'sohlas', false],
  ['one word right and one wrong', 'tern kelp', false],
  ['nothing', ' ', false],
])('%s', (_label, typed, isMeant) => {
  expect(mayMeanTitle(typed, 'Tern over Shoals')).toBe(isMeant);
});

test('from seven letters on two slips are forgiven', () => {
  expect(mayMeanTitle('chantrelels', 'Chanterelles')).toBe(true);
});

test.each([
  ['tern', 'tern', 0],
  ['tren', 'tern', 1],
  ['', 'tern', 4],
  ['kitten', 'sitting', 3],
  ['ca', 'abc', 3],
])('%s and %s are %i slips apart', (first, second, slips) => {
  expect(slipsBetween(first, second)).toBe(slips);
});

test('a new design takes the first part of its SKU, numbered where that is taken', () => {
  expect(designCodeFrom('TS-10-CI', new Set())).toBe('TS');
  expect(designCodeFrom('TS-10-CI', new Set(['TS', 'TS2']))).toBe('TS3');
});

test('names that differ in capitals and spaces alone are one name', () => {
  expect(sameName(' Sword  fern ')).toBe(sameName('SWORD FERN'));
  expect(sameName('Sword fern')).not.toBe(sameName('Sword ferns'));
});
