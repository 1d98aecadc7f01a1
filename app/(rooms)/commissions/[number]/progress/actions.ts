'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { keepProgressInput, shareProgressInput } from '@/lib/commissions/input/course-told';
import { commissionRefusalMessage } from '@/lib/commissions/rules/refusals';
import { keepProgress, shareProgress } from '@/lib/commissions/writes/course/progress';
import { sheetHref } from '../../sheet-href';

/** Remembers something of the making. */
export const keepIt = formAction('commissions.write', keepProgressInput, async (doer, input) => {
  const kept = await keepProgress(doer, input);
  if (!kept.ok) return refused(commissionRefusalMessage(kept.refusal));
  revalidatePath('/', 'layout');
  redirect(sheetHref(kept.value.commissionNumber, 'progress'));
});

/** Shows something to the collector, or no longer. */
export const showIt = formAction('commissions.write', shareProgressInput, async (doer, input) => {
  const shown = await shareProgress(doer, input);
  if (!shown.ok) return refused(commissionRefusalMessage(shown.refusal));
  revalidatePath('/', 'layout');
  redirect(`/commissions/${shown.value.commissionNumber}#progress`);
});
