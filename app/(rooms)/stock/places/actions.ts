'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { answer, formAction, refused } from '@/app/form-action';
import {
  addPlaceInput,
  closePlaceInput,
  movePiecesInput,
  renamePlaceInput,
} from '@/lib/stock/input/places';
import { moveRefusalMessage } from '@/lib/stock/rules/moves/move';
import { placeRefusalMessage } from '@/lib/stock/rules/moves/place';
import { movePieces } from '@/lib/stock/writes/move';
import { addPlace, closePlace, renamePlace } from '@/lib/stock/writes/places';

/** Adds a place, and leads there. */
export const addOnePlace = formAction('stock.move', addPlaceInput, async (doer, input) => {
  const added = await addPlace(doer, input);
  if (!added.ok) {
    const message = placeRefusalMessage(added.refusal);
    return refused({ message, fields: { name: message } });
  }
  revalidatePath('/stock', 'layout');
  redirect(`/stock/places/${added.value.placeId}`);
});

/** Gives a place another name. */
export const renameThePlace = formAction('stock.move', renamePlaceInput, async (doer, input) => {
  const renamed = await renamePlace(doer, input);
  revalidatePath('/stock', 'layout');
  return answer(renamed, placeRefusalMessage, () => ({ kind: 'done', message: 'Written down.' }));
});

/** Closes a place where nothing stands any more. */
export const closeThePlace = formAction('stock.move', closePlaceInput, async (doer, input) => {
  const closed = await closePlace(doer, input);
  revalidatePath('/stock', 'layout');
  return answer(closed, placeRefusalMessage, () => ({ kind: 'done', message: 'It is closed.' }));
});

/** Moves what lies ready, and leads to its paper. */
export const moveThem = formAction('stock.move', movePiecesInput, async (doer, input) => {
  const moved = await movePieces(doer, input);
  revalidatePath('/stock', 'layout');
  if (!moved.ok) return refused(moveRefusalMessage(moved.refusal));
  redirect(`/stock/places/moves/${moved.value.number}`);
});
