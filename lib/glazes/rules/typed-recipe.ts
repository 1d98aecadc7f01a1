import { parseDecimal } from '@/lib/money/rules/decimal';
import { ok, refuse, type Result } from '@/lib/platform/result';

/** A material as it was typed: its name, and how much of it as a decimal string. */
export type TypedMaterial = { readonly material: string; readonly amount: string };

/** The longest name of a material, in letters. */
export const materialLettersMost = 80;

/** Why a typed recipe was not read; `line` counts from 1. */
export type TypedRecipeRefusal =
  | { code: 'line_without_amount'; line: number }
  | { code: 'line_without_material'; line: number }
  | { code: 'material_too_long'; line: number; most: number };

/** Says in a full sentence why a typed recipe was not read. */
export function typedRecipeRefusalMessage(refusal: TypedRecipeRefusal): string {
  switch (refusal.code) {
    case 'line_without_amount':
      return `Line ${refusal.line} has no amount at its end. Write it as: Silica 22.5`;
    case 'line_without_material':
      return `Line ${refusal.line} does not say which material it is.`;
    case 'material_too_long':
      return `Line ${refusal.line}: keep the name of a material to ${refusal.most} letters.`;
  }
}

/**
 * Reads a recipe as it stands in a notebook: one material in each line, its amount at the end.
 *
 * Empty lines count for nothing; `%` or `g` after the amount, and dots or a colon before it, may
 * stand there.
 *
 * @returns in the order typed, each material with single spaces; refuses the first line that does
 *   not read
 * @example readTypedRecipe('Silica 22.5\nWhiting: 20 %') // 22.5 of silica, 20 of whiting
 */
export function readTypedRecipe(text: string): Result<TypedMaterial[], TypedRecipeRefusal> {
  const read: TypedMaterial[] = [];
  for (const [at, written] of text.split(/\r?\n/).entries()) {
    const typed = written.trim();
    if (typed === '') continue;
    const line = at + 1;
    const [, before = '', amount = ''] = /^(.*?)(\d+(?:\.\d+)?)\s*(?:%|g)?$/.exec(typed) ?? [];
    if (!parseDecimal(amount)) return refuse({ code: 'line_without_amount', line });
    const material = before
      .replace(/[\s.:…–-]+$/, '')
      .replaceAll(/\s+/g, ' ')
      .trim();
    if (material === '') return refuse({ code: 'line_without_material', line });
    if (material.length > materialLettersMost) {
      return refuse({ code: 'material_too_long', line, most: materialLettersMost });
    }
    read.push({ material, amount });
  }
  return ok(read);
}

/** A recipe as one would type it again. */
export function recipeAsTyped(
  materials: readonly { material: string; percent: string; isAddition: boolean }[],
  which: 'base' | 'additions',
): string {
  return materials
    .filter(({ isAddition }) => isAddition === (which === 'additions'))
    .map(({ material, percent }) => `${material} ${percent}`)
    .join('\n');
}
