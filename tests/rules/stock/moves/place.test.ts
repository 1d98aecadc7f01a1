import { expect, test } from 'vitest';
import {
  decideClosing,
  listedWords,
  placeRefusalMessage,
  type PlaceKnown,
} from '@/lib/stock/rules/moves/place';

const place: PlaceKnown = {
  ...{ name: 'Back room', kind: 'storeroom', isClosed: false, isCounter: false },
  ...{ pieces: 0, openCount: null },
};
const everything: PlaceKnown = {
  ...{ ...place, isClosed: true, isCounter: true, kind: 'consignee' },
  ...{ pieces: 3, openCount: 4 },
};

test('an empty place of our own closes', () => {
  expect(decideClosing(place)).toEqual({ ok: true, value: true });
});

test.each<[string, PlaceKnown, string]>([
  ['place_closed', everything, 'is closed already'],
  ['counters_place', { ...everything, isClosed: false }, 'The counter sells from'],
  ['has_its_paper', { ...everything, isClosed: false, isCounter: false }, 'closes with it'],
  ['not_empty', { ...place, pieces: 1, openCount: 4 }, 'One piece still stands'],
  ['being_counted', { ...place, openCount: 4 }, 'Count 4 of “Back room” is still open'],
])('refuses %s before what comes after it', (code, known, sentence) => {
  const decided = decideClosing(known);
  expect(decided).toMatchObject({ ok: false, refusal: { code } });
  if (!decided.ok) expect(placeRefusalMessage(decided.refusal)).toContain(sentence);
});

test.each([
  [[], 'somebody'],
  [['Wren'], 'Wren'],
  [['Wren', 'Ida', 'Ode'], 'Wren, Ida and Ode'],
  [['1', '2', '3', '4', '5', '6', '7', '8'], '1, 2, 3, 4, 5, 6 and 2 more'],
])('%j reads %s', (words, text) => {
  expect(listedWords(words)).toBe(text);
});
