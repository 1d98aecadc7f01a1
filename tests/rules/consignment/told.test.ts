import { expect, test } from 'vitest';
import { readTold } from '@/lib/consignment/rules/told';

const there = [
  { sku: 'FT-06-CI', numbers: [] },
  { sku: 'HR-14-MO', numbers: [3, 7] },
  { sku: 'OW-10-MO', numbers: [12] },
];
const line = (sku: string, quantity = 1, number: number | null = null) => ({
  ...{ sku, quantity, number },
});

test.each([
  ['one on each line', 'FT-06-CI\nHR-14-MO 7', [line('FT-06-CI'), line('HR-14-MO', 1, 7)]],
  ['in small letters, parted by commas', 'ft-06-ci, ft-06-ci', [line('FT-06-CI', 2)]],
  ['with how many', 'FT-06-CI x3; ft-06-ci 2', [line('FT-06-CI', 5)]],
  [
    'with a sign before the number',
    'HR-14-MO #3\nHR-14-MO no. 7',
    [line('HR-14-MO', 1, 3), line('HR-14-MO', 1, 7)],
  ],
  ['the only number there is meant', 'OW-10-MO', [line('OW-10-MO', 1, 12)]],
])('piece numbers %s are found', (_label, text, matched) => {
  expect(readTold(text, there)).toEqual({ matched, unmatched: [] });
});

test.each([
  ['a piece nobody knows', 'NO-1-X'],
  ['an edition without its number', 'HR-14-MO'],
  ['a number that is not there', 'HR-14-MO 9'],
  ['a number of what has none', 'FT-06-CI #9'],
  ['none of it', 'FT-06-CI x0'],
  ['words', 'the blue one 🐚'],
])('%s is told as it was written', (_label, text) => {
  expect(readTold(`FT-06-CI\n${text}`, there)).toEqual({
    ...{ matched: [line('FT-06-CI')], unmatched: [text] },
  });
});

test('a list without end is read to sixty lines, and no further than it may be long', () => {
  const many = Array.from({ length: 90 }, (_, at) => ({ sku: `AB-${at + 100}`, numbers: [] }));
  const { matched, unmatched } = readTold(many.map((each) => each.sku).join('\n'), many);
  expect([matched.length, unmatched.length]).toEqual([60, 30]);
});
