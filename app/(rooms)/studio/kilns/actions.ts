'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import {
  closeKilnInput,
  keepKilnInput,
  noteCareInput,
  reopenKilnInput,
  retireKilnInput,
} from '@/lib/studio/input/kilns';
import { kilnRefusalMessage, type KilnRefusal } from '@/lib/studio/rules/kilns/keeping';
import { moveRefusalMessage, type AnyRefusal } from '@/lib/studio/rules/refusals';
import {
  closeKiln,
  keepKiln,
  noteCare,
  reopenKiln,
  retireKiln,
} from '@/lib/studio/writes/kilns/keep';

/** Writes a kiln down, or changes what is known of one; leads to its page. */
export const sendKiln = formAction('studio.keep', keepKilnInput, async (doer, input) => {
  const kept = await keepKiln(doer, input);
  if (!kept.ok) return refused(words(kept.refusal));
  return told(kept.value.id, 'kept');
});

/** Writes down what was changed or mended in a kiln. */
export const sendCare = formAction('studio.keep', noteCareInput, async (doer, input) => {
  const noted = await noteCare(doer, input);
  if (!noted.ok) return refused(words(noted.refusal));
  return told(noted.value.kilnId, 'cared');
});

/** Writes down days on which a kiln stands still. */
export const sendClosed = formAction('studio.keep', closeKilnInput, async (doer, input) => {
  const closed = await closeKiln(doer, input);
  if (!closed.ok) return refused(words(closed.refusal));
  return told(closed.value.kilnId, 'closed');
});

/** Takes such days back. */
export const sendReopened = formAction('studio.keep', reopenKilnInput, async (doer, input) => {
  const reopened = await reopenKiln(doer, input);
  if (!reopened.ok) return refused(words(reopened.refusal));
  return told(reopened.value.kilnId, 'reopened');
});

/** Puts a kiln out of use, or back into it. */
export const sendRetired = formAction('studio.keep', retireKilnInput, async (doer, input) => {
  const retired = await retireKiln(doer, input);
  if (!retired.ok) return refused(words(retired.refusal));
  return told(retired.value.id, input.isRetired ? 'retired' : 'used');
});

function told(kilnId: string, done: string): never {
  revalidatePath('/studio', 'layout');
  redirect(`/studio/kilns/${kilnId}?done=${done}`);
}

function words(refusal: KilnRefusal | AnyRefusal): string {
  if (refusal.code === 'not_allowed' || refusal.code === 'key_used_for_something_else') {
    return moveRefusalMessage(refusal);
  }
  return kilnRefusalMessage(refusal);
}
