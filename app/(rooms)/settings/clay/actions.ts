'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { enquiryWords } from '@/app/(rooms)/commissions/asking/enquiry-words';
import { formAction, refused } from '@/app/form-action';
import { keepBodyInput } from '@/lib/commissions/input/enquiry/body';
import { keepBody } from '@/lib/commissions/writes/enquiry/body';

/** Writes a clay body down, or changes what is known of one; leads back to the list. */
export const keepClay = formAction('catalogue.keep', keepBodyInput, async (doer, input) => {
  const kept = await keepBody(doer, input);
  if (!kept.ok) return refused(enquiryWords(kept.refusal));
  revalidatePath('/', 'layout');
  redirect(`/settings/clay?done=${input.bodyId === null ? 'added' : 'changed'}`);
});
