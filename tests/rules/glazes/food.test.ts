import { expect, test } from 'vitest';
import type { LeachTest } from '@/lib/clay/rules/leach';
import { addGlazeInput, addTileInput, dryWeightInput, writeProofInput } from '@/lib/glazes/input';
import { glazeRefusalField, glazeRefusalMessage, type GlazeRefusal } from '@/lib/glazes/rules';
import { foodShort, foodWord, limitWords, wareKinds } from '@/lib/glazes/rules/food';
import { cones } from '@/lib/studio/rules/kilns/cones';

const today = '2026-11-20';
const tested = (over: Partial<LeachTest> & { lead?: string } = {}): LeachTest => ({
  ...{ laboratory: 'Fenwick Water', testedOn: '2026-05-03', ware: 'cup_or_mug' },
  readings: Array.from({ length: 6 }, () => ({ lead: over.lead ?? '0.02', cadmium: '0.02' })),
  ...over,
});

test('without a test of its own a recipe is not for food', () => {
  const told = foodWord([], today);
  expect(told).toMatchObject({ use: 'not_tested', on: [] });
  expect(told.words).toMatch(/no laboratory has tested this recipe/);
  expect(foodShort(told)).toBe('not for food');
});

test('a test within the limits says on which ware, when and by whom', () => {
  const told = foodWord([tested()], today);
  expect(told).toEqual({
    use: 'proven',
    words: 'for food on cups and mugs: tested 3 May 2026 by Fenwick Water',
    on: ['cup_or_mug'],
  });
  expect(foodShort(told)).toBe('for food');
});

test('one kind of ware beyond the limits speaks against all of them', () => {
  const told = foodWord([tested(), tested({ ware: 'pitcher', lead: '0.6' })], today);
  expect(told).toMatchObject({ use: 'not_within', on: [] });
  expect(told.words).toMatch(/more came out of pitchers than is allowed, tested 3 May 2026/);
});

test('the latest test decides, and one of too few pieces or of a day to come decides nothing', () => {
  const bad = tested({ lead: '0.6' });
  const good = tested({ testedOn: '2026-09-01' });
  const both = foodWord([good, bad, tested({ ware: 'flatware', testedOn: '2026-11-01' })], today);
  expect(both.use).toBe('proven');
  expect(both.words).toMatch(/cups and mugs: tested 1 Sep 2026/);
  expect(foodWord([good, tested({ testedOn: '2026-10-01', lead: '0.6' })], today).use).toBe(
    'not_within',
  );
  expect(foodWord([tested({ readings: [{ lead: '0', cadmium: '0' }] })], today).use).toBe(
    'not_tested',
  );
  expect(foodWord([tested({ testedOn: '2027-01-01' })], today).use).toBe('not_tested');
});

test('the limits of each ware are told in words', () => {
  expect(wareKinds.map(limitWords)).toEqual([
    'Flat ware: lead 3.0 mg/L on average, cadmium 0.5 mg/L on average.',
    'Small bowls: lead 2.0 mg/L in each, cadmium 0.5 mg/L in each.',
    'Large bowls: lead 1.0 mg/L in each, cadmium 0.25 mg/L in each.',
    'Cups and mugs: lead 0.5 mg/L in each, cadmium 0.5 mg/L in each.',
    'Pitchers: lead 0.5 mg/L in each, cadmium 0.25 mg/L in each.',
  ]);
});

const key = '0d9c5a86-2f0e-4b7c-9a51-1f6f3f1f6a10';
const glaze = {
  ...{ requestKey: key, name: 'Fog over iron', cone: '6', coats: '3', note: '' },
  ...{ lab: '62.4, -7.1 9.8', base: 'Feldspar 60\nWhiting 40', additions: '' },
};

test('a form of a glaze reads its cone, its colour and its recipe', () => {
  expect(addGlazeInput.parse(glaze)).toMatchObject({
    ...{ cone: '6', coats: 3, lab: ['62.4', '-7.1', '9.8'] },
    base: [
      { material: 'Feldspar', amount: '60' },
      { material: 'Whiting', amount: '40' },
    ],
  });
  expect(addGlazeInput.parse({ ...glaze, lab: ' ', base: '' })).toMatchObject({
    lab: null,
    base: [],
  });
});

test.each([
  ['cone', '60', /Choose a cone/],
  ['coats', '21', /1 to 20/],
  ['coats', '0', /1 to 20/],
  ['lab', '101 0 0', /L\* goes from 0 to 100/],
  ['lab', 'green', /three figures/],
  ['base', 'Feldspar', /Line 1 has no amount/],
  ['name', ' ', /Give the glaze a name/],
])('%s %j is told at its field', (field, typed, words) => {
  const read = addGlazeInput.safeParse({ ...glaze, [field]: typed });
  expect(read.error?.issues[0]).toMatchObject({ path: [field] });
  expect(read.error?.issues[0]?.message).toMatch(words);
});

test('every cone of the kilns can be chosen, and none besides', () => {
  const shape = addTileInput.shape.cone;
  expect(cones.filter((cone) => !shape.safeParse(cone).success)).toEqual([]);
  for (const none of ['00', '023', '15', '6.5', 'six', ' ']) {
    expect(shape.safeParse(none).success).toBe(false);
  }
});

test('what a laboratory found reads one after another, as many for both metals', () => {
  const proof = {
    ...{ requestKey: key, glazeId: key, recipeId: key, testedOn: '2026-05-03' },
    ...{ laboratory: 'Fenwick Water', reportNumber: 'FW-118', ware: 'cup_or_mug' },
    ...{ lead: '0.12, < 0.02 0.1', cadmium: '<0.02 <0.02 <0.02' },
  };
  expect(writeProofInput.parse(proof)).toMatchObject({ lead: ['0.12', '<0.02', '0.1'] });
  const faults = [{ cadmium: '0.1' }, { lead: 'none' }, { lead: ' ' }].map((over) => {
    const read = writeProofInput.safeParse({ ...proof, ...over });
    return read.error?.issues[0]?.message ?? '';
  });
  expect(faults[0]).toMatch(/as many for cadmium/);
  expect(faults[1]).toMatch(/mg in a litre/);
  expect(faults[2]).toMatch(/on each piece/);
});

test('a weight in the address is whole grams', () => {
  expect(dryWeightInput.parse(' 5000 ')).toBe(5_000);
  expect(dryWeightInput.safeParse('5 kg').success).toBe(false);
});

const sentences: Record<GlazeRefusal['code'], [object, RegExp, string?]> = {
  not_allowed: [{ permission: 'studio.move' }, /does not let you/],
  key_used_for_something_else: [{}, /Load it again/],
  picture_not_kept: [{ picture: { code: 'picture_empty' } }, /nothing in this file/],
  unknown_glaze: [{}, /not in the book/],
  glaze_name_taken: [{ name: 'Fog' }, /Fog is in the book already/, 'name'],
  recipe_not_taken: [{ recipe: { code: 'no_base' } }, /what the base is made of/, 'base'],
  recipe_is_the_same: [{ version: 2 }, /version 2 as it stands/, 'base'],
  unknown_recipe: [{}, /one of this glaze’s recipes/, 'recipeId'],
  test_not_taken: [
    { test: { code: 'too_few_tested', tested: 3, wanted: 6 } },
    /for 6 pieces; 3 were tested/,
    'lead',
  ],
  unknown_body: [{}, /clay body/, 'bodyId'],
  unknown_firing: [{}, /not in the log/, 'firingId'],
  firing_of_another_cone: [{ cone: '04' }, /went to cone 04/, 'firingId'],
  unknown_tile: [{}, /not in the book/],
  day_to_come: [{ on: '2026-12-01' }, /1 Dec 2026 is still to come/],
};
test.each(Object.entries(sentences))('%s is told', (code, [facts, words, field]) => {
  const refusal = { code, ...facts } as GlazeRefusal;
  expect(glazeRefusalMessage(refusal)).toMatch(words);
  expect(glazeRefusalField(refusal)).toBe(field);
});
