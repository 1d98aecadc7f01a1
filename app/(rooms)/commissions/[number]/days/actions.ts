'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { offerDaysInput, withdrawDaysInput } from '@/lib/installation/input/offers/days';
import { offersRefusalMessage } from '@/lib/installation/rules/offers/refusals';
import { offerDays, withdrawDays } from '@/lib/installation/writes/offers/days';
import { sheetHref } from '../../sheet-href';
import { offerWords } from '@/app/diary-words';

/** Offers days from which the collector chooses on their page. */
export const offerTheDays = formAction('diary.book', offerDaysInput, async (doer, input) => {
  const offered = await offerDays(doer, input);
  if (!offered.ok) return refused(await offerWords(offered.refusal, doer.actor));
  revalidatePath('/', 'layout');
  redirect(sheetHref(offered.value.commissionNumber, 'days'));
});

/** Takes the offered days back. */
export const takeDaysBack = formAction('diary.book', withdrawDaysInput, async (doer, input) => {
  const taken = await withdrawDays(doer, input);
  if (!taken.ok) return refused(offersRefusalMessage(taken.refusal));
  revalidatePath('/', 'layout');
  return { kind: 'done', message: 'These days are no longer offered.' };
});
