'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { keepAskedInput } from '@/lib/studio/input/asked';
import { keepAskedRefusalMessage } from '@/lib/studio/rules/forecast/telling/refusals';
import { keepAskedDay } from '@/lib/studio/writes/forecast/keep-asked';

/** Keeps the day that was looked up with the commission's proposal, and goes on to write it. */
export const keepDay = formAction('commissions.propose', keepAskedInput, async (doer, input) => {
  const kept = await keepAskedDay(doer, input);
  if (!kept.ok) return refused(keepAskedRefusalMessage(kept.refusal));
  revalidatePath('/', 'layout');
  redirect(`/commissions/${kept.value.commissionNumber}/proposal/new`);
});
