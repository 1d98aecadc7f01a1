import { expect, test } from 'vitest';
import { batchRefusalMessage, batchWeights } from '@/lib/glazes/rules/batch';
import { hazardsOf } from '@/lib/glazes/rules/hazards';
import {
  materialsMost,
  recipeInPercent,
  recipeRefusalMessage,
  type RecipeMaterial,
  type RecipeRefusal,
} from '@/lib/glazes/rules/recipe';
import {
  readTypedRecipe,
  recipeAsTyped,
  typedRecipeRefusalMessage,
  type TypedMaterial,
  type TypedRecipeRefusal,
} from '@/lib/glazes/rules/typed-recipe';

const of = (lines: string): TypedMaterial[] => {
  const read = readTypedRecipe(lines);
  if (!read.ok) throw new Error(typedRecipeRefusalMessage(read.refusal));
  return read.value;
};
const percents = (base: string, additions = '') => {
  const read = recipeInPercent(of(base), of(additions));
  return read.ok ? read.value.map(({ percent }) => percent) : read.refusal.code;
};

test('a recipe reads as it stands in a notebook', () => {
  expect(of('Silica 22.5\n\n  China  clay: 20 %\r\nFrit A-12 … 30g\nFeldspar40')).toEqual([
    { material: 'Silica', amount: '22.5' },
    { material: 'China clay', amount: '20' },
    { material: 'Frit A-12', amount: '30' },
    { material: 'Feldspar', amount: '40' },
  ]);
});

test.each<[string, TypedRecipeRefusal, RegExp]>([
  ['Silica 20\nWhiting', { code: 'line_without_amount', line: 2 }, /Line 2 has no amount/],
  ['\n22.5', { code: 'line_without_material', line: 2 }, /does not say which/],
  [`${'a'.repeat(81)} 5`, { code: 'material_too_long', line: 1, most: 80 }, /80 letters/],
])('%j is not read', (text, refusal, words) => {
  expect(readTypedRecipe(text)).toEqual({ ok: false, refusal });
  expect(typedRecipeRefusalMessage(refusal)).toMatch(words);
});

test('grams and percentages come to the same hundred, with additions on top', () => {
  expect(percents('Feldspar 400\nSilica 300\nWhiting 300', 'Red iron oxide 50')).toEqual([
    ...['40', '30', '30', '5'],
  ]);
  expect(percents('Feldspar 40\nSilica 30\nWhiting 30', 'Red iron oxide 5')).toEqual([
    ...['40', '30', '30', '5'],
  ]);
});

test('what does not come to a hundred evenly still does, to the thousandth', () => {
  expect(percents('A 1\nB 1\nC 1')).toEqual(['33.334', '33.333', '33.333']);
  expect(percents('A 49.9\nB 30\nC 20')).toEqual(['49.95', '30.03', '20.02']);
});

const many = Array.from({ length: materialsMost + 1 }, (_each, at) => `M${at} 1`).join('\n');
const wrong: { typed: [string, string?]; refusal: RecipeRefusal; words: RegExp }[] = [
  { typed: [''], refusal: { code: 'no_base' }, words: /one material in each line/ },
  {
    typed: [many],
    refusal: { code: 'too_many_materials', most: materialsMost },
    words: /at most 24/,
  },
  {
    typed: ['Talc 2', 'talc 1'],
    refusal: { code: 'material_twice', material: 'talc' },
    words: /there twice/,
  },
  {
    typed: ['Talc 0\nClay 5'],
    refusal: { code: 'amount_not_above_zero', material: 'Talc' },
    words: /more than nothing/,
  },
  {
    typed: ['Talc 1000000\nClay 1'],
    refusal: { code: 'too_little_of_it', material: 'Clay' },
    words: /Leave it out/,
  },
  {
    typed: ['Talc 10', 'Zircon 11'],
    refusal: { code: 'more_added_than_base', material: 'Zircon' },
    words: /more Zircon than base/,
  },
];
test.each(wrong)('$refusal.code', ({ typed: [base, additions = ''], refusal, words }) => {
  expect(recipeInPercent(of(base), of(additions))).toEqual({ ok: false, refusal });
  expect(recipeRefusalMessage(refusal)).toMatch(words);
});

const celadon: RecipeMaterial[] = [
  { material: 'Feldspar', percent: '60', isAddition: false },
  { material: 'Whiting', percent: '40', isAddition: false },
  { material: 'Red iron oxide', percent: '5', isAddition: true },
];
const weighed = (dryG: number, materials = celadon) => {
  const batch = batchWeights(materials, dryG);
  return batch.ok ? batch.value : batch.refusal;
};

test('a bucket is weighed out so that its weights add up to what was asked', () => {
  expect(weighed(2_100)).toMatchObject({
    stepG: '0.1',
    materials: [
      { grams: '1200', sumG: '1200' },
      { grams: '800', sumG: '2000' },
      { grams: '100', sumG: '2100' },
    ],
    tooLittle: [],
  });
});

test.each([
  [100, '0.01', ['57.14', '38.1', '4.76']],
  [1_000, '0.1', ['571.4', '381', '47.6']],
  [20_000, '1', ['11429', '7619', '952']],
])('%d g are weighed to %s g', (dryG, stepG, grams) => {
  const batch = weighed(dryG);
  expect(batch).toMatchObject({ stepG, materials: grams.map((each) => ({ grams: each })) });
  expect(grams.reduce((sum, each) => sum + Math.round(Number(each) * 100), 0)).toBe(dryG * 100);
});

test('what a scale cannot show is named; a weight that is none is refused', () => {
  const trace = [...celadon, { material: 'Cobalt', percent: '0.003', isAddition: true }];
  expect(weighed(10_000, trace)).toMatchObject({ tooLittle: ['Cobalt'] });
  for (const dryG of [9, 1.5, 200_001, Number.NaN]) {
    expect(weighed(dryG)).toEqual({ code: 'weight_out_of_range', mostG: 200_000 });
  }
  expect(weighed(100, [])).toEqual({ code: 'no_recipe' });
  expect(batchRefusalMessage({ code: 'no_recipe' })).toMatch(/recipe down first/);
  expect(batchRefusalMessage({ code: 'weight_out_of_range', mostG: 200_000 })).toMatch(/200 kg/);
});

test('what to mind is told by the names of the materials, the worst first', () => {
  const told = hazardsOf([
    'Silica',
    'Barium carbonate',
    'Manganese dioxide',
    'Ball clay',
    'Whiting',
  ]);
  expect(told.map(({ key, materials }) => [key, materials])).toEqual([
    ['barium', ['Barium carbonate']],
    ['manganese', ['Manganese dioxide']],
    ['silica', ['Silica', 'Ball clay']],
  ]);
  expect(hazardsOf(['Whiting', 'Dolomite'])).toEqual([]);
  expect(hazardsOf(['Lead bisilicate frit', 'Cadmium red stain']).map(({ key }) => key)).toEqual([
    ...['lead', 'cadmium', 'stain'],
  ]);
});

test('a recipe is typed again as it stands', () => {
  expect(recipeAsTyped(celadon, 'base')).toBe('Feldspar 60\nWhiting 40');
  expect(recipeAsTyped(celadon, 'additions')).toBe('Red iron oxide 5');
});
