import { expect, test } from 'vitest';
import { foodCaution, foodUseWords, mayBeAskedForFood } from '@/lib/catalogue/rules/food-use';
import {
  comesFrom,
  editionOnMould,
  mouldKinds,
  mouldRefusalMessage,
  mouldStanding,
  mouldWarning,
  type MouldCounts,
  type MouldRefusal,
} from '@/lib/catalogue/rules/moulds';
import { setRefusalField, setRefusalMessage, type SetRefusal } from '@/lib/catalogue/rules/sets';
import { pieceRefusalMessage, type PieceRefusal } from '@/lib/catalogue/rules/pieces';

const mould: MouldCounts = {
  ...{ kind: 'working', lifeCasts: 100, begunWith: 60, castsSince: 0, retiredOn: null, face: null },
};

test.each([
  ['one cast before it wears', 19, { soFar: 79, left: 21, wear: 'good' }, /^$/],
  ['at 80 in a hundred', 20, { soFar: 80, left: 20, wear: 'wearing' }, /20 casts left/],
  ['one cast left', 39, { soFar: 99, left: 1, wear: 'wearing' }, /1 cast left/],
  ['at its end', 40, { soFar: 100, left: 0, wear: 'worn' }, /all the casts/],
  ['beyond its end', 55, { soFar: 115, left: 0, wear: 'worn' }, /all the casts/],
] as const)('a mould %s', (_label, castsSince, standing, words) => {
  const now = mouldStanding({ ...mould, castsSince });
  expect(now).toEqual(standing);
  expect(mouldWarning(now)).toMatch(words);
});

test('a retired mould has nothing left, however few it gave', () => {
  const now = mouldStanding({ ...mould, retiredOn: '2026-05-01' });
  expect(now).toEqual({ soFar: 60, left: 0, wear: 'retired' });
  expect(mouldWarning(now)).toMatch(/Retired/);
});

test.each([
  ['a sharp one', { face: 'sharp' }, 40, 'good', /^$/],
  ['a softening one', { face: 'softening' }, 40, 'softening', /softening: hardly all of the 40/],
  ['a softening one at its end', { face: 'softening', castsSince: 40 }, 0, 'worn', /all the casts/],
  ['a worn one', { face: 'worn' }, 0, 'worn_face', /nothing more is promised/],
  ['a broken one', { face: 'broken' }, 0, 'broken', /It is broken/],
  ['a model', { kind: 'model' }, 0, 'not_cast', /Moulds are made from it/],
  ['a broken master', { kind: 'master', face: 'broken' }, 0, 'broken', /It is broken/],
  [
    'a broken one that is retired',
    { face: 'broken', retiredOn: '2026-05-01' },
    0,
    'retired',
    /Ret/,
  ],
] as const)('%s promises what it can give', (...[, over, left, wear, words]) => {
  const now = mouldStanding({ ...mould, ...over });
  expect(now).toMatchObject({ left, wear });
  expect(mouldWarning(now)).toMatch(words);
});

test('what a mould is made from: a master from a model, a working one from either', () => {
  const pairs = mouldKinds.flatMap((own) =>
    mouldKinds.filter((from) => comesFrom(own, from)).map((from) => `${own} from ${from}`),
  );
  expect(pairs).toEqual([
    ...['model from model', 'model from master'],
    ...['master from model', 'working from model', 'working from master'],
  ]);
});

test('an edition of 50 from a mould with 31 casts left is told, one that lasts is not', () => {
  expect(editionOnMould({ pieces: 50, came: 0 }, 31)).toBe(
    'An edition of 50 with 50 still to come, from a mould with 31 casts left.',
  );
  expect(editionOnMould({ pieces: 50, came: 19 }, 31)).toBe('');
});

test('what one may eat from answers, and a proven glaze needs no caution', () => {
  expect(mayBeAskedForFood('relief_tile')).toBe(false);
  expect(foodCaution({ kind: 'relief_tile', foodUse: 'decorative_only' })).toBe('');
  expect(foodCaution({ kind: 'platter', foodUse: 'proven' })).toBe('');
  expect(foodCaution({ kind: 'platter', foodUse: 'not_proven' })).toMatch(/leach test/);
  expect(foodCaution({ kind: 'bowl', foodUse: 'decorative_only' })).toMatch(/mark the base/);
  expect(foodUseWords('not_proven')).toBe('not for food use');
});

const mouldSentences: Record<MouldRefusal['code'], [object, RegExp]> = {
  not_allowed: [{ permission: 'catalogue.keep' }, /does not let you/],
  key_used_for_something_else: [{}, /Load it again/],
  unknown_design: [{}, /not in the catalogue/],
  mould_code_taken: [{}, /of its own/],
  unknown_mould: [{}, /not in the list/],
  retired_already: [{ retiredOn: '2026-05-01' }, /was retired on/],
  day_to_come: [{}, /still to come/],
  before_it_was_made: [{ madeOn: '2026-05-01' }, /after that day/],
  unknown_source: [{}, /was made from is not in the list/],
  source_of_another_design: [{ from: 'FERN-P' }, /FERN-P gives another design/],
  not_made_from_that: [{ from: 'FERN-M1' }, /cannot be made from FERN-M1/],
  made_from_itself: [{ from: 'FERN-P' }, /FERN-P was itself made from this one/],
  not_cast_from: [{ kind: 'master' }, /a master mould: moulds are made from it/],
  mould_is_broken: [{}, /If it was mended, look at its face/],
};
test.each(Object.entries(mouldSentences))('of a mould, %s is told', (code, [facts, words]) => {
  expect(mouldRefusalMessage({ code, ...facts } as MouldRefusal)).toMatch(words);
});

const setSentences: Record<SetRefusal['code'], [object, RegExp, string | null]> = {
  not_allowed: [{ permission: 'catalogue.keep' }, /does not let you/, null],
  key_used_for_something_else: [{}, /Load it again/, null],
  unknown_set: [{}, /not kept any more/, null],
  code_of_a_piece: [{ taken: 'TERN-10' }, /SKU of a piece/, 'code'],
  code_of_a_set: [{ taken: 'TIDE-SET' }, /another set/, 'code'],
  unknown_code: [{ typed: 'TERN-99' }, /TERN-99 is not in/, 'members'],
  too_few_pieces: [{}, /at least two/, 'members'],
  second_in_a_set: [{ sku: 'TERN-10-S' }, /a set is of firsts/, 'members'],
};
test.each(Object.entries(setSentences))('of a set, %s is told', (code, [facts, words, field]) => {
  const refusal = { code, ...facts } as SetRefusal;
  expect(setRefusalMessage(refusal)).toMatch(words);
  expect(setRefusalField(refusal)).toBe(field);
});

const pieceSentences: Record<PieceRefusal['code'], [object, RegExp]> = {
  not_allowed: [{ permission: 'catalogue.keep' }, /does not let you/],
  key_used_for_something_else: [{}, /Load it again/],
  unknown_piece: [{}, /not in the catalogue/],
  unknown_colourway: [{}, /not in the catalogue/],
  flaw_needed: [{}, /what is wrong/],
  sku_taken: [{ sku: 'TERN-10' }, /TERN-10 is in use/],
  gtin_taken: [{ sku: 'TERN-10' }, /on TERN-10 already/],
};
test.each(Object.entries(pieceSentences))('of a piece, %s is told', (code, [facts, words]) => {
  expect(pieceRefusalMessage({ code, ...facts } as PieceRefusal)).toMatch(words);
});
