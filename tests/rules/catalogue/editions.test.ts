import { expect, test } from 'vitest';
import { editionNumberWords, numbersWords, readEditionNumber } from '@/lib/catalogue/rules/edition';
import {
  decideNumbered,
  numberArrivals,
  numberMessage,
  type EditionRefusal,
  type NumberRefusal,
} from '@/lib/stock/rules/marks/numbers';

const fifty = { size: 50, artistProofs: 3 };

test.each([
  ['the first', 1, '1/50'],
  ['the last', 50, '50/50'],
  ['the first proof', 51, 'AP 1/3'],
  ['the last proof', 53, 'AP 3/3'],
])('%s of an edition is written as under the piece, and read again', (_label, number, words) => {
  expect(editionNumberWords(number, fifty)).toBe(words);
  expect(readEditionNumber(words, fifty)).toBe(number);
});

test.each([
  ['a bare number', '7', 7],
  ['a proof in small letters', 'ap2', 52],
  ['nought', '0', null],
  ['beyond the edition', '51', null],
  ['beyond the proofs', 'AP 4', null],
  ['another edition’s size', '7/40', null],
  ['words', 'seven', null],
  ['nothing', '', null],
])('%s', (_label, text, number) => {
  expect(readEditionNumber(text, fifty)).toBe(number);
});

test('numbers that follow one another are drawn together, the proofs apart', () => {
  expect(numbersWords([1, 2, 3, 7, 50, 51, 52], fifty)).toBe('1–3, 7, 50, AP 1–AP 2');
  expect(numbersWords([], fifty)).toBe('');
});

const edition = { skuId: 'heron', code: 'HERON-W-AS', size: 5, artistProofs: 1, lastNumber: 2 };
const comes = (quantity: number, editionNumber?: number) => ({
  ...{ skuId: 'heron', quantity },
  ...(editionNumber === undefined ? {} : { editionNumber }),
});

test('pieces that come get the next numbers, one line each, also in two goes of one paper', () => {
  const other = { skuId: 'fern', quantity: 9 };
  const numbered = numberArrivals([comes(1), other, comes(2)], [edition]);
  expect(numbered).toEqual({ ok: true, value: [comes(1, 3), other, comes(1, 4), comes(1, 5)] });
});

test('a number that was named stays, and nothing changes where there is no edition', () => {
  expect(numberArrivals([comes(1, 6), comes(-1, 2)], [edition])).toEqual({
    ok: true,
    value: [comes(1, 6), comes(-1, 2)],
  });
  expect(numberArrivals([comes(9)], [])).toEqual({ ok: true, value: [comes(9)] });
});

test('an edition never grows, and nothing of it leaves without its number', () => {
  expect(numberArrivals([comes(2), comes(2)], [edition])).toEqual({
    ok: false,
    refusal: { code: 'beyond_edition', sku: 'HERON-W-AS', size: 5, came: 4, wanted: 2 },
  });
  expect(numberArrivals([comes(-1)], [edition])).toEqual({
    ok: false,
    refusal: { code: 'which_number', sku: 'HERON-W-AS' },
  });
});

const named = { sku: 'HERON-W-AS', number: 2, isHere: true, hasCome: true };
test.each([
  ['goes without its number', ['broken', -1], { ...named, number: null }, 'which_number'],
  ['is counted without numbers', ['counted', 1], { ...named, number: null }, 'which_number'],
  ['is counted by one number', ['counted', 1], named, 'which_number'],
  ['goes twice under one number', ['broken', -2], named, 'one_number_at_a_time'],
  ['goes and is not here', ['missing', -1], { ...named, isHere: false }, 'number_not_here'],
  ['comes under a number that was given', ['made', 1], named, 'number_came_before'],
] as const)('a numbered piece that %s is refused', (_label, [reason, quantity], known, code) => {
  expect(decideNumbered({ reason, quantity }, known)).toMatchObject({
    ok: false,
    refusal: { code },
  });
});

test('a numbered piece breaks by its number and comes by one that is free', () => {
  expect(decideNumbered({ reason: 'broken', quantity: -1 }, named).ok).toBe(true);
  const free = { ...named, isHere: false, hasCome: false };
  expect(decideNumbered({ reason: 'made', quantity: 1 }, free).ok).toBe(true);
  expect(decideNumbered({ reason: 'made', quantity: 4 }, { ...free, number: null }).ok).toBe(true);
});

const heron = { sku: 'HERON-W-AS', size: 50 };
const sentences: Record<(EditionRefusal | NumberRefusal)['code'], [object, RegExp]> = {
  beyond_edition: [{ ...heron, came: 31, wanted: 40 }, /edition of 50, and 31 have come: 19 more/],
  which_number: [{ sku: 'HERON-W-AS' }, /say which number it is/],
  no_such_number: [{}, /no such number/],
  one_number_at_a_time: [{}, /one number, one piece/],
  number_not_here: [{}, /not here/],
  number_came_before: [{}, /given once/],
};
test.each(Object.entries(sentences))('%s is told in a sentence', (code, [facts, words]) => {
  const refusal = { code, ...facts } as EditionRefusal | NumberRefusal;
  expect(numberMessage(refusal)).toMatch(words);
});

test('a full edition says that all have come', () => {
  const full = { code: 'beyond_edition', ...heron, came: 50, wanted: 1 } as const;
  expect(numberMessage(full)).toBe('All 50 of the edition HERON-W-AS have come. No other follows.');
});
