'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { mergeInput, setApartInput } from '@/lib/collectors/input/merge';
import { mergeRefusalMessage } from '@/lib/collectors/rules/merge';
import { mergeCollectors, setApart } from '@/lib/collectors/writes/merge';

/** Finds two entries to be one; leads to the kept one. */
export const merge = formAction('collectors.merge', mergeInput, async (doer, input) => {
  const merged = await mergeCollectors(doer, input);
  if (!merged.ok) return refused(mergeRefusalMessage(merged.refusal));
  revalidatePath('/collectors', 'layout');
  redirect(`/collectors/${merged.value}`);
});

/** Sets two apart again; leads to the one that stands for itself now. */
export const apart = formAction('collectors.merge', setApartInput, async (doer, input) => {
  const done = await setApart(doer, input);
  if (!done.ok) return refused(mergeRefusalMessage(done.refusal));
  revalidatePath('/collectors', 'layout');
  redirect(`/collectors/${done.value}`);
});
