import { expect, test } from 'vitest';
import { storyParts, storySentence, type StoryMovement } from '@/lib/stock/rules/moves/story';

const movement: StoryMovement = {
  ...{ quantity: 4, reason: 'made', place: 'Gallery floor', isHere: true, editionNumber: null },
  ...{ staff: 'Oriel Fenn', note: '', sale: null, returned: null, move: null, count: null },
  ...{ stockListId: null, grade: 'first' },
};
const sale = { number: 1042, channel: 'counter', to: 'Hanne Ostrow' } as const;
const fair = { place: 'Back room', isHere: false };
const returned = { number: 3, saleNumber: 1042, from: 'Hanne Ostrow' };

test.each<[string, Partial<StoryMovement>, string]>([
  ['made', {}, '4 came from the studio (Oriel).'],
  ['made elsewhere', fair, '4 came from the studio (Oriel), at Back room.'],
  ['opening', { quantity: 1, reason: 'opening' }, '1 was here when the list began.'],
  [
    'from a list',
    { reason: 'opening', stockListId: 'l' },
    '4 were here when the list began, from a list.',
  ],
  [
    'sold',
    { quantity: -1, reason: 'sold', sale },
    '1 sold at the counter on receipt 1042 to Hanne Ostrow.',
  ],
  [
    'sold by another gallery, which keeps its buyers to itself',
    { quantity: -1, reason: 'sold', place: 'Saltgrass', sale: { ...sale, channel: 'consigned' } },
    '1 sold by Saltgrass on receipt 1042.',
  ],
  ['sold to nobody by name', { quantity: -2, reason: 'sold' }, '2 sold.'],
  [
    'moved',
    { quantity: -2, reason: 'moved', move: { number: 12, to: 'Alder Fair' } },
    '2 moved from Gallery floor to Alder Fair, move 12.',
  ],
  [
    'returned as a second',
    { quantity: 1, reason: 'returned', returned, grade: 'second' },
    '1 came back from Hanne Ostrow, as a second, sold on receipt 1042.',
  ],
  ['second', { quantity: -1, reason: 'second' }, '1 was found to be a second.'],
  ['came as second', { quantity: 2, reason: 'second' }, '2 came as seconds.'],
  [
    'fewer',
    { quantity: -2, reason: 'counted', count: 5 },
    '2 fewer counted than thought, count 5.',
  ],
  ['more', { quantity: 1, reason: 'counted' }, '1 more counted than thought.'],
  [
    'broken',
    { quantity: -1, reason: 'broken', note: 'fell off its hook' },
    '1 broke: fell off its hook.',
  ],
  ['missing', { quantity: -1, reason: 'missing' }, '1 missing.'],
  [
    'found',
    { quantity: 1, reason: 'missing', note: 'Behind the crate!' },
    '1 found again: Behind the crate!',
  ],
  [
    'numbered',
    { quantity: -1, reason: 'sold', editionNumber: 7, sale },
    'Number 7 sold at the counter on receipt 1042 to Hanne Ostrow.',
  ],
])('%s reads as a sentence', (_label, over, sentence) => {
  expect(storySentence({ ...movement, ...over })).toBe(sentence);
});

test('a sentence names its paper, so that a page can lead there', () => {
  const parts = storyParts({ ...movement, quantity: -1, reason: 'sold', sale });
  expect(parts.find((part) => part.paper !== null)).toEqual({
    words: 'receipt 1042',
    paper: { kind: 'receipt', number: 1042 },
  });
});
