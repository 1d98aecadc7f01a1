'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { lossRefusalMessage, moveRefusalMessage } from '@/lib/studio/rules/refusals';
import {
  drawPartsInput,
  glazePartsInput,
  losePartsInput,
  movePartsInput,
} from '@/lib/studio/input/parts';
import {
  isPartsRefusal,
  drawRefusalMessage,
  partsRefusalMessage,
} from '@/lib/studio/rules/parts/words';
import { drawParts } from '@/lib/studio/writes/parts/draw';
import { glazeParts } from '@/lib/studio/writes/parts/glaze';
import { loseParts, movePartsOn, type PartsMoved } from '@/lib/studio/writes/parts/move';

/** Keeps the numbered drawing, and shows the map of it. */
export const saveDrawing = formAction('studio.keep', drawPartsInput, async (doer, input) => {
  const drawn = await drawParts(doer, input);
  if (drawn.ok) {
    revalidatePath('/studio', 'layout');
    redirect(`/studio/${drawn.value.jobNumber}/parts`);
  }
  // The page then knows what somebody else drew, and asks which of the two is to stay.
  if (drawn.refusal.code === 'drawn_meanwhile') revalidatePath('/studio', 'layout');
  return refused(drawRefusalMessage(drawn.refusal));
});

/** Moves chosen parts on, each to its next step. */
export const moveChosenOn = formAction('studio.move', movePartsInput, async (doer, input) => {
  const moved = await movePartsOn(doer, input);
  if (moved.ok) return toldAt(moved.value);
  const { refusal } = moved;
  return refused(
    isPartsRefusal(refusal) ? partsRefusalMessage(refusal) : moveRefusalMessage(refusal),
  );
});

/** Writes chosen parts down as lost. */
export const loseChosen = formAction('studio.move', losePartsInput, async (doer, input) => {
  const lost = await loseParts(doer, input);
  if (lost.ok) return toldAt(lost.value);
  const { refusal } = lost;
  return refused(
    isPartsRefusal(refusal) ? partsRefusalMessage(refusal) : lossRefusalMessage(refusal),
  );
});

/** Writes down coats of glaze on chosen parts. */
export const glazeChosen = formAction('studio.move', glazePartsInput, async (doer, input) => {
  const laid = await glazeParts(doer, input);
  if (!laid.ok) return refused(partsRefusalMessage(laid.refusal));
  revalidatePath('/studio', 'layout');
  const { parts, coats, bucket } = laid.value;
  const message = `${coats === 1 ? '1 coat' : `${coats} coats`} from bucket ${bucket} written down for ${parts === 1 ? '1 part' : `${parts} parts`}.`;
  return { kind: 'done', message };
});

function toldAt({ moves }: PartsMoved): never {
  revalidatePath('/studio', 'layout');
  const [first] = moves;
  const ids = moves.map(({ undoId }) => undoId).join('-');
  redirect(`/studio/${first?.jobNumber ?? ''}/parts?moved=${ids}`);
}
