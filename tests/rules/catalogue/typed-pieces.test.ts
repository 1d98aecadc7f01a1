import { expect, test } from 'vitest';
import {
  readTypedPieces,
  typedPiecesMessage,
  type TypedPiecesRefusal,
} from '@/lib/catalogue/rules/typed-pieces';

const read: readonly (readonly [string, string, unknown])[] = [
  ['a tag as the scanner sends it', 'TS-10-CI\n', [['TS-10-CI', null, 1]]],
  ['small letters', ' ts-10-ci ', [['TS-10-CI', null, 1]]],
  ['a count behind it', 'TS-10-CI 3', [['TS-10-CI', null, 3]]],
  ['a count with a cross', 'TS-10-CI × 12', [['TS-10-CI', null, 12]]],
  ['a barcode and a count', '2000000000015 x2', [['2000000000015', null, 2]]],
  ['the number of an edition', 'FN-12-TK#4', [['FN-12-TK', 4, 1]]],
  ['two numbers of one edition', 'FN-12#4\nFN-12#5', [['FN-12', 4, 1]].concat([['FN-12', 5, 1]])],
  ['the same tag scanned three times', 'AB-1\nAB-1\nAB-1', [['AB-1', null, 3]]],
  [
    'Windows lines and empty ones',
    'AB-1\r\n\r\nAB-2 2\r\n',
    [
      ['AB-1', null, 1],
      ['AB-2', null, 2],
    ],
  ],
];

test.each(read)('reads %s', (_label, text, pieces) => {
  const typed = readTypedPieces(text);
  const found = typed.ok
    ? typed.value.map(({ code, number, quantity }) => [code, number, quantity])
    : typed.refusal;
  expect(found).toEqual(pieces);
});

const refused: Record<TypedPiecesRefusal['code'], string> = {
  nothing_typed: ' \n \n',
  too_many_lines: 'AB-1\n'.repeat(301),
  not_a_piece: 'AB-1\nthe blue one',
  too_many_of_one: 'AB-1 1000',
  number_twice: 'AB-1#4\nAB-1#4',
};

test.each(Object.entries(refused))('refuses %s and says so', (code, text) => {
  const typed = readTypedPieces(text);
  expect(typed).toMatchObject({ ok: false, refusal: { code } });
  if (!typed.ok) expect(typedPiecesMessage(typed.refusal)).toMatch(/\.$/);
});

test.each([
  'AB-1 0',
  'AB-1 -2',
  'AB-1#0',
  'AB-1#2 3',
  '🦦🦦🦦',
  'AB--1',
  '<b>AB-1</b>',
  'AB-1 500\nAB-1 500',
])('%j is no line of a list', (text) => {
  expect(readTypedPieces(text).ok).toBe(false);
});
