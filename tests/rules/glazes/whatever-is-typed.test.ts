import { fc, test } from '@fast-check/vitest';
import { expect } from 'vitest';
import { batchWeights } from '@/lib/glazes/rules/batch';
import { recipeInPercent, type RecipeMaterial } from '@/lib/glazes/rules/recipe';
import { readTypedRecipe, recipeAsTyped } from '@/lib/glazes/rules/typed-recipe';
import { alignDecimals, formatDecimal, parseDecimal } from '@/lib/money/rules/decimal';

const amounts = fc.array(fc.integer({ min: 50, max: 99_999 }), { minLength: 1, maxLength: 10 });
const typed = (units: readonly number[], word: string) =>
  units.map((each, at) => ({
    material: `${word} ${at}`,
    amount: formatDecimal({ units: BigInt(each), scale: 2 }),
  }));
const sum = (texts: readonly string[]): string => {
  const { units, scale } = alignDecimals(texts.flatMap((text) => parseDecimal(text) ?? []));
  return formatDecimal({ units: units.reduce((all, each) => all + each, 0n), scale });
};
const recipeOf = (base: readonly number[], onTop: readonly number[]): RecipeMaterial[] => {
  const whole = base.reduce((all, each) => all + each, 0);
  const added = onTop.map((each) => Math.max(50, Math.floor((each * whole) / 1_000_000)));
  const read = recipeInPercent(typed(base, 'base'), typed(added, 'on top'));
  return read.ok ? read.value : [];
};

test.prop([amounts, amounts])('a base comes to a hundred, to the thousandth', (base, onTop) => {
  const recipe = recipeOf(base, onTop);
  fc.pre(recipe.length > 0);
  const ofBase = recipe.filter(({ isAddition }) => !isAddition);
  expect(sum(ofBase.map(({ percent }) => percent))).toBe('100');
});

test.prop([amounts, amounts, fc.integer({ min: 10, max: 200_000 })])(
  'a bucket comes to its dry weight, to the gram',
  (base, onTop, dryG) => {
    const recipe = recipeOf(base, onTop);
    fc.pre(recipe.length > 0);
    const batch = batchWeights(recipe, dryG);
    const materials = batch.ok ? batch.value.materials : [];
    expect(sum(materials.map(({ grams }) => grams))).toBe(`${dryG}`);
    expect(materials.at(-1)?.sumG).toBe(`${dryG}`);
  },
);

test.prop([amounts, amounts])('a recipe that is typed again is the same', (base, onTop) => {
  const recipe = recipeOf(base, onTop);
  fc.pre(recipe.length > 0);
  const again = [recipeAsTyped(recipe, 'base'), recipeAsTyped(recipe, 'additions')].map((text) => {
    const read = readTypedRecipe(text);
    return read.ok ? read.value : [];
  });
  const twice = recipeInPercent(again[0] ?? [], again[1] ?? []);
  expect(twice.ok && twice.value).toEqual(recipe);
});
