import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { WriteRecipeInput } from '../input';
import type { GlazeRefusal } from '../rules';
import { recipeInPercent, type RecipeMaterial } from '../rules/recipe';
import { inTheBook, tellOfGlaze } from './once';

/** A version of a recipe that was written. */
export type RecipeWritten = { glazeId: string; recipeId: string; version: number };

/** A recipe as it was typed. */
export type RecipeToWrite = Omit<WriteRecipeInput, 'requestKey'>;

/**
 * Writes another version of a glaze's recipe; those before it stay. It is not for food until it is
 * tested itself.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, an unknown glaze, a
 *   recipe that is none, one that is the latest version as it stands
 */
export async function writeRecipe(
  doer: Doer,
  { requestKey: key, ...input }: WriteRecipeInput,
): Promise<Result<RecipeWritten, GlazeRefusal>> {
  const command = { name: 'writeRecipe', key, input, pictures: {} };
  return inTheBook(doer, command, (tx) => writeRecipeStep(tx, doer, input));
}

/** The step of {@link writeRecipe}: joins the caller's transaction, asks nobody for leave. */
export async function writeRecipeStep(
  tx: Tx,
  doer: Doer,
  { glazeId, base, additions, note }: RecipeToWrite,
): Promise<Result<RecipeWritten, GlazeRefusal>> {
  const glaze = await tx.glaze.findUnique({
    where: { id: glazeId },
    select: {
      name: true,
      recipes: {
        select: {
          version: true,
          materials: {
            select: { material: true, percent: true, isAddition: true },
            orderBy: { position: 'asc' },
          },
        },
        orderBy: { version: 'desc' },
        take: 1,
      },
    },
  });
  if (!glaze) return refuse({ code: 'unknown_glaze' });
  const read = recipeInPercent(base, additions);
  if (!read.ok) return refuse({ code: 'recipe_not_taken', recipe: read.refusal });
  const [latest] = glaze.recipes;
  const before = latest?.materials.map(({ percent, ...each }) => ({
    ...each,
    percent: percent.toString(),
  }));
  if (latest && before && isSame(before, read.value)) {
    return refuse({ code: 'recipe_is_the_same', version: latest.version });
  }
  const version = (latest?.version ?? 0) + 1;
  const { id: recipeId } = await tx.glazeRecipe.create({
    data: {
      ...{ glazeId, version, note, staffId: doer.actor.id, at: doer.at },
      materials: { create: read.value.map((each, at) => ({ ...each, position: at + 1 })) },
    },
    select: { id: true },
  });
  const materials = read.value.map(
    ({ material, percent, isAddition }) => `${isAddition ? '+ ' : ''}${material} ${percent}`,
  );
  const did = `wrote version ${version} of a recipe`;
  await tellOfGlaze(tx, doer, { did, glazeId, facts: { name: glaze.name, version, materials } });
  return ok({ glazeId, recipeId, version });
}

function isSame(before: readonly RecipeMaterial[], after: readonly RecipeMaterial[]): boolean {
  const line = ({ material, percent, isAddition }: RecipeMaterial) =>
    `${material} ${percent} ${isAddition ? 'added' : ''}`;
  return before.map(line).join('\n') === after.map(line).join('\n');
}
