'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { keepTileWallInput } from '@/lib/installation/input/tiles/wall';
import { tileWallRefusalMessage } from '@/lib/installation/rules/tiles/refusals';
import { keepTileWall } from '@/lib/installation/writes/tiles/keep';

/** Keeps a wall with its tiles, and opens its page. */
export const keepWall = formAction('installation.do', keepTileWallInput, async (doer, input) => {
  const kept = await keepTileWall(doer, input);
  if (!kept.ok) return refused(tileWallRefusalMessage(kept.refusal));
  revalidatePath('/', 'layout');
  redirect(`/tiles-on-wall/${kept.value.number}?done=kept`);
});
