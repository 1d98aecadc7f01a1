import { apportion } from '@/lib/money/rules/split';
import {
  alignDecimals,
  divideRounded,
  formatDecimal,
  parseDecimal,
} from '@/lib/money/rules/decimal';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { TypedMaterial } from './typed-recipe';

/** One material of a recipe; an addition goes on top of the hundred of the base. */
export type RecipeMaterial = {
  readonly material: string;
  /** Of a hundred parts of the base, a decimal string with at most three places. */
  readonly percent: string;
  readonly isAddition: boolean;
};

/** The most materials of one recipe, additions included. */
export const materialsMost = 24;

/** Why a recipe was not taken. */
export type RecipeRefusal =
  | { code: 'no_base' }
  | { code: 'too_many_materials'; most: number }
  | { code: 'material_twice'; material: string }
  | { code: 'amount_not_above_zero'; material: string }
  | { code: 'too_little_of_it'; material: string }
  | { code: 'more_added_than_base'; material: string };

/** Says in a full sentence why a recipe was not taken. */
export function recipeRefusalMessage(refusal: RecipeRefusal): string {
  switch (refusal.code) {
    case 'no_base':
      return 'Write what the base is made of, one material in each line.';
    case 'too_many_materials':
      return `A recipe here has at most ${refusal.most} materials.`;
    case 'material_twice':
      return `${refusal.material} is there twice. Put it together in one line.`;
    case 'amount_not_above_zero':
      return `Write how much of ${refusal.material} there is, more than nothing.`;
    case 'too_little_of_it':
      return `${refusal.material} comes to less than a thousandth of a hundred parts. Leave it out, or look at its amount.`;
    case 'more_added_than_base':
      return `There is more ${refusal.material} than base. Write it among the base, or look at its amount.`;
  }
}

/** Thousandths of a percent in a hundred. */
const hundred = 100_000n;

/**
 * A recipe in percent, from amounts in any one unit: grams of a bucket, or percentages that do not
 * quite come to a hundred.
 *
 * The base comes to a hundred exactly, by the largest remainder; what is added on top is reckoned
 * on the same base.
 *
 * @returns base first, then additions, each in the order typed, with three places at most; refuses,
 *   in this order: no base, too many, a material twice, an amount of nothing, one that comes to
 *   nothing, an addition above the whole base
 * @source common practice: the base in parts of a hundred, colourants and opacifiers on top
 * @example base 400, 300 and 300 g with 50 g on top // 40, 30, 30, and 5 on top
 */
export function recipeInPercent(
  base: readonly TypedMaterial[],
  additions: readonly TypedMaterial[],
): Result<RecipeMaterial[], RecipeRefusal> {
  const fault = faultOf(base, additions);
  if (fault) return refuse(fault);
  const amounts = [...base, ...additions].map(({ amount }) => parseDecimal(amount));
  const { units } = alignDecimals(amounts.filter((each) => each !== null));
  const ofBase = units.slice(0, base.length);
  const whole = ofBase.reduce((sum, each) => sum + each, 0n);
  const shares = apportion(
    hundred,
    ofBase.map((each) => each * hundred),
    whole,
  ).parts;
  const onTop = units
    .slice(base.length)
    .map((each) => divideRounded(each * hundred, whole, 'half-up'));
  const thousandths = [...shares, ...onTop];
  const materials = [...base, ...additions].map(({ material }, at) => ({
    material,
    thousandths: thousandths[at] ?? 0n,
    isAddition: at >= base.length,
  }));
  const none = materials.find((each) => each.thousandths === 0n);
  if (none) return refuse({ code: 'too_little_of_it', material: none.material });
  const over = materials.find((each) => each.thousandths > hundred);
  if (over) return refuse({ code: 'more_added_than_base', material: over.material });
  return ok(
    materials.map(({ material, isAddition, thousandths: units3 }) => ({
      ...{ material, isAddition },
      percent: formatDecimal({ units: units3, scale: 3 }),
    })),
  );
}

function faultOf(
  base: readonly TypedMaterial[],
  additions: readonly TypedMaterial[],
): RecipeRefusal | null {
  const all = [...base, ...additions];
  if (base.length === 0) return { code: 'no_base' };
  if (all.length > materialsMost) return { code: 'too_many_materials', most: materialsMost };
  const names = all.map(({ material }) => material.toLowerCase());
  const twice = all.find(({ material }, at) => names.indexOf(material.toLowerCase()) < at);
  if (twice) return { code: 'material_twice', material: twice.material };
  const none = all.find(({ amount }) => (parseDecimal(amount)?.units ?? 0n) <= 0n);
  return none ? { code: 'amount_not_above_zero', material: none.material } : null;
}
