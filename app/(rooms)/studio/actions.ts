'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { formAction, refused } from '@/app/form-action';
import {
  beginAnewInput,
  losePiecesInput,
  moveJobInput,
  openJobInput,
  undoMoveInput,
} from '@/lib/studio/input';
import {
  lossRefusalMessage,
  moveRefusalMessage,
  openJobRefusalMessage,
  undoRefusalMessage,
} from '@/lib/studio/rules/refusals';
import { beginMore, loseJobPieces, moveJobOn, openStudioJob, undoMove } from '@/lib/studio/writes';

/** Where the form stands; one comes back to it. */
const backTo = z.enum(['bench', 'job', 'parts']);

/** Moves pieces on to the next step, and comes back to where they stand now. */
export const moveOn = formAction(
  'studio.move',
  moveJobInput.extend({ backTo }),
  async (doer, { backTo: place, ...input }) => {
    const moved = await moveJobOn(doer, input);
    // A refusal is told where the touch was; a fresh page would take that place away.
    if (!moved.ok) return refused(moveRefusalMessage(moved.refusal));
    revalidatePath('/studio', 'layout');
    redirect(toldAt(place, moved.value));
  },
);

/** Writes pieces down as lost, and comes back to their job. */
export const lose = formAction('studio.move', losePiecesInput, async (doer, input) => {
  const lost = await loseJobPieces(doer, input);
  if (!lost.ok) return refused(lossRefusalMessage(lost.refusal));
  revalidatePath('/studio', 'layout');
  redirect(toldAt('job', lost.value));
});

/** Begins spare pieces besides, and comes back to their job. */
export const beginSpare = formAction('studio.move', beginAnewInput, async (doer, input) => {
  const begun = await beginMore(doer, input);
  if (!begun.ok) return refused(lossRefusalMessage(begun.refusal));
  revalidatePath('/studio', 'layout');
  redirect(toldAt('job', begun.value));
});

/** Takes a move back, and comes back to where the pieces stand again. */
export const takeBack = formAction(
  'studio.move',
  undoMoveInput.extend({ backTo }),
  async (doer, { backTo: place, ...input }) => {
    const back = await undoMove(doer, input);
    if (!back.ok) return refused(undoRefusalMessage(back.refusal));
    revalidatePath('/studio', 'layout');
    redirect(toldAt(place, back.value));
  },
);

/** Opens a job of the studio's own. */
export const openJob = formAction('studio.move', openJobInput, async (doer, input) => {
  const opened = await openStudioJob(doer, input);
  if (!opened.ok) return refused(openJobRefusalMessage(opened.refusal));
  revalidatePath('/studio', 'layout');
  redirect(`/studio/${opened.value.number}`);
});

type Told = { undoId: string; jobNumber: number; toPosition: number };

function toldAt(place: z.infer<typeof backTo>, { undoId, jobNumber, toPosition }: Told): string {
  if (place === 'parts') return `/studio/${jobNumber}/parts?moved=${undoId}`;
  if (place === 'job') return `/studio/${jobNumber}?moved=${undoId}`;
  return `/studio?moved=${undoId}#job-${jobNumber}-${toPosition}`;
}
