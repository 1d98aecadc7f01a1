'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { tellDelayInput } from '@/lib/commissions/input/course-told';
import { commissionRefusalMessage } from '@/lib/commissions/rules/refusals';
import { tellDelay } from '@/lib/commissions/writes/course/tell-delay';
import { sheetHref } from '../../sheet-href';

/** Writes down that they were told of another day. */
export const writeDelay = formAction('commissions.write', tellDelayInput, async (doer, input) => {
  const told = await tellDelay(doer, input);
  if (!told.ok) return refused(commissionRefusalMessage(told.refusal));
  revalidatePath('/', 'layout');
  redirect(sheetHref(told.value.commissionNumber, 'delay'));
});
