'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction } from '@/app/form-action';
import {
  addGlazeInput,
  addTileInput,
  changeGlazeInput,
  tellTileInput,
  writeProofInput,
  writeRecipeInput,
} from '@/lib/glazes/input';
import { addGlaze, changeGlaze } from '@/lib/glazes/writes/glazes';
import { writeProof } from '@/lib/glazes/writes/proofs';
import { writeRecipe } from '@/lib/glazes/writes/recipes';
import { addTile, tellTile } from '@/lib/glazes/writes/tiles';
import { notInTheBook } from './told';

/** Writes a glaze into the book. */
export const add = formAction('studio.keep', addGlazeInput, async (doer, input) => {
  const added = await addGlaze(doer, input);
  if (!added.ok) return notInTheBook(added.refusal);
  revalidatePath('/studio/glazes', 'layout');
  redirect(`/studio/glazes/${added.value.glazeId}?done=added`);
});

/** Changes what is known of a glaze. */
export const change = formAction('studio.keep', changeGlazeInput, async (doer, input) => {
  const changed = await changeGlaze(doer, input);
  if (!changed.ok) return notInTheBook(changed.refusal);
  revalidatePath('/studio/glazes', 'layout');
  redirect(`/studio/glazes/${changed.value.glazeId}?done=changed`);
});

/** Writes another version of a recipe. */
export const keepRecipe = formAction('studio.keep', writeRecipeInput, async (doer, input) => {
  const written = await writeRecipe(doer, input);
  if (!written.ok) return notInTheBook(written.refusal);
  revalidatePath('/studio/glazes', 'layout');
  redirect(`/studio/glazes/${written.value.glazeId}?done=recipe`);
});

/** Writes a laboratory's test down. */
export const keepProof = formAction('studio.keep', writeProofInput, async (doer, input) => {
  const written = await writeProof(doer, input);
  if (!written.ok) return notInTheBook(written.refusal);
  revalidatePath('/studio/glazes', 'layout');
  const done = written.value.isWithin ? 'within' : 'beyond';
  redirect(`/studio/glazes/${written.value.glazeId}?done=${done}`);
});

/** Writes a test tile down. */
export const keepTile = formAction('studio.keep', addTileInput, async (doer, input) => {
  const added = await addTile(doer, input);
  if (!added.ok) return notInTheBook(added.refusal);
  revalidatePath('/studio/glazes', 'layout');
  redirect(`/studio/glazes/tiles/${added.value.number}?done=added`);
});

/** Says what became of a test tile. */
export const tellOfTile = formAction('studio.keep', tellTileInput, async (doer, input) => {
  const told = await tellTile(doer, input);
  if (!told.ok) return notInTheBook(told.refusal);
  revalidatePath('/studio/glazes', 'layout');
  redirect(`/studio/glazes/tiles/${told.value.number}?done=told`);
});
