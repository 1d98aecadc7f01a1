import { describe, expect, test } from 'vitest';
import { placeCautions, type PlaceFacts } from '@/lib/commissions/rules/enquiry/cautions';
import { frostCautions } from '@/lib/commissions/rules/enquiry/frost';
import { placesNamed } from '@/lib/commissions/rules/enquiry/places';

/** A small one on brick indoors: nothing to mind. */
const small: PlaceFacts = {
  ...{ widthUm: 254_000, heightUm: 254_000, depthUm: 30_000 },
  ...{ exposure: 'indoors', wall: 'brick', room: null, freezes: null, sun: null },
  ...{ forFood: null, body: null },
};
const dense = { absorptionPercent: '0.4', frostTested: true };

function told(facts: Partial<PlaceFacts>): string {
  return placeCautions({ ...small, ...facts }, 'in').join('\n');
}

test('a small one indoors needs no caution, whatever else is not known', () => {
  expect(told({})).toBe('');
});

test.each<[string, Partial<PlaceFacts>, string]>([
  ['outdoors and nobody knows of frost', { exposure: 'outdoors', body: dense }, 'Find out whether'],
  ['outdoors and no clay body', { exposure: 'outdoors', freezes: true }, 'No clay body is chosen'],
  ['under cover and no clay body', { exposure: 'under_cover', freezes: true }, 'No clay body'],
  ['outdoors without frost', { exposure: 'outdoors', freezes: false }, 'do not rust'],
  ['food', { forFood: true }, 'not for food'],
  ['full sun', { sun: 'full' }, 'full sun'],
  ['over the bed', { room: 'Bedroom, over the bed' }, 'sit or lie below'],
  ['above a sofa', { room: 'above a long sofa' }, 'sit or lie below'],
  ['behind the range', { room: 'Kitchen, behind the range' }, 'Steam and grease'],
  ['5 in deep in a hall', { room: 'Hall', depthUm: 127_000 }, 'Deeper than 4 in in a passage'],
  ['heavy on an unknown wall', { widthUm: 1_524_000, heightUm: 914_400, wall: null }, 'find out'],
])('%s is told', (_label, facts, words) => {
  expect(told(facts)).toContain(words);
});

test.each<[string, Partial<PlaceFacts>]>([
  ['some sun', { sun: 'some' }],
  ['food that never touches it', { forFood: false }],
  ['4 in deep in a hall', { room: 'Hall', depthUm: 101_600 }],
  ['a hall, and nobody knows how deep', { room: 'Hall', depthUm: null }],
  ['5 in deep in a room', { room: 'Sitting room', depthUm: 127_000 }],
  ['a bedroom, and no word of what is below', { room: 'Bedroom, north wall' }],
  ['frost, for a piece indoors', { freezes: true, body: { ...dense, absorptionPercent: '12' } }],
])('%s needs no caution', (_label, facts) => {
  expect(told(facts)).toBe('');
});

describe('frost', () => {
  test('is not spoken of while nobody knows where it will live', () => {
    expect(frostCautions({ exposure: null, freezes: true, body: null })).toEqual([]);
  });
  test('where it never freezes, the body does not matter', () => {
    const body = { absorptionPercent: '12', frostTested: false };
    expect(frostCautions({ exposure: 'under_cover', freezes: false, body })).toEqual([]);
  });
  test('the worst comes first', () => {
    const body = { absorptionPercent: '12', frostTested: null };
    const [first, second] = frostCautions({ exposure: 'outdoors', freezes: null, body });
    expect(first).toMatch(/^Do not hang it in frost/);
    expect(second).toContain('ask the maker of the clay');
  });
});

test.each([
  ['', []],
  ['Bathroom', ['steam']],
  ['Stairs', ['passage']],
  ['Challenge room', []],
  ['over the kitchen table', ['below', 'steam']],
])('the room "%s" names %j', (room, named) => {
  expect([...placesNamed(room)].sort()).toEqual(named);
});
