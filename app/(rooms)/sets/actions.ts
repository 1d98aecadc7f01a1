'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { endSetInput, keepSetInput } from '@/lib/catalogue/input/sets';
import { setRefusalField, setRefusalMessage } from '@/lib/catalogue/rules/sets';
import { endSet, keepSet } from '@/lib/catalogue/writes/sets';

/** Puts a set together, or changes the one whose id the form carries. */
export const keep = formAction('catalogue.keep', keepSetInput, async (doer, input) => {
  const kept = await keepSet(doer, input);
  if (!kept.ok) {
    const message = setRefusalMessage(kept.refusal);
    const field = setRefusalField(kept.refusal);
    return refused(field ? { message, fields: { [field]: message } } : message);
  }
  revalidatePath('/sets', 'layout');
  redirect(`/sets/${kept.value.code}`);
});

/** No longer offers a set. */
export const end = formAction('catalogue.keep', endSetInput, async (doer, input) => {
  const ended = await endSet(doer, input);
  if (!ended.ok) return refused(setRefusalMessage(ended.refusal));
  revalidatePath('/sets', 'layout');
  redirect('/sets');
});
