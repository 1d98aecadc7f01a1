import { expect, test } from 'vitest';
import { raiseInput, raiseWishInput, tickTagsInput } from '@/lib/catalogue/input/prices';
import {
  priceRefusalMessage,
  raisedPriceCents,
  type PriceRefusal,
} from '@/lib/catalogue/rules/prices';

// From memory and by hand: 138.00 × 1.045 = 144.21.
test.each([
  ['to the whole dollar', [13_800n, '4.5', 'whole'], 14_400n],
  ['to .00 or .50, half a step up', [13_800n, '4.547', 'half'], 14_450n],
  ['to the cent', [13_800n, '4.5', 'cent'], 14_421n],
  ['to five dollars', [13_800n, '4.5', 'five'], 14_500n],
  ['down', [13_800n, '-10', 'whole'], 12_400n],
  ['down to no less than one step', [40n, '-90', 'whole'], 100n],
  ['of nothing', [0n, '50', 'five'], 0n],
  ['to no more than can be written', [999_999_999_999n, '900', 'cent'], 999_999_999_999n],
] as const)('a price is raised %s', (_label, [cents, percent, step], raised) => {
  expect(raisedPriceCents(cents, percent, step)).toBe(raised);
});

test.each([
  ['a sign and a per cent sign', '+4.5 %', '4.5'],
  ['a true minus', '−10', '-10'],
  ['the most', '900', '900'],
  ['the least', '-90', '-90'],
])('a percentage is read with %s', (_label, text, read) => {
  expect(raiseInput.parse(text)).toBe(read);
});

test.each([
  ['nought', '0'],
  ['words', 'ten'],
  ['too little', '-90.1'],
  ['too much', '901'],
])('a percentage of %s is asked again', (_label, text) => {
  expect(raiseInput.safeParse(text).success).toBe(false);
});

test('an address that was bent means all pieces, never other ones', () => {
  const bent = { kind: 'vase', designId: 'x', size: '1 OR 1=1', percent: '5', step: 'ten' };
  expect(raiseWishInput.parse(bent)).toEqual({
    ...{ kind: null, designId: null, size: null, percent: '5', step: 'whole' },
  });
});

test('one ticked tag is a list of one, and none is told', () => {
  const requestKey = '0199aaaa-0000-4000-8000-000000000001';
  expect(tickTagsInput.parse({ requestKey, skuIds: requestKey }).skuIds).toEqual([requestKey]);
  const none = tickTagsInput.safeParse({ requestKey });
  expect(none.error?.issues[0]?.message).toBe('Tick the tags that are written.');
});

const sentences: Record<PriceRefusal['code'], [object, RegExp]> = {
  not_allowed: [{ permission: 'catalogue.price' }, /Owner can/],
  key_used_for_something_else: [{}, /Load it again/],
  unknown_piece: [{}, /not in the catalogue/],
  in_the_past: [{ todayOn: '2026-11-25' }, /from today/],
  same_price: [{}, /already/],
  no_pieces_meant: [{}, /No price would change/],
  too_many_pieces: [{ most: 5_000 }, /More than 5,000/],
  prices_moved: [{}, /Look once more/],
  holds_already: [{}, /holds already/],
};
test.each(Object.entries(sentences))('%s is told in a sentence', (code, [facts, words]) => {
  expect(priceRefusalMessage({ code, ...facts } as PriceRefusal)).toMatch(words);
});
