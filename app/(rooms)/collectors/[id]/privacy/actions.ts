'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { eraseInput } from '@/lib/collectors/input/erase';
import { eraseRefusalMessage } from '@/lib/collectors/rules/erase';
import { eraseCollector } from '@/lib/collectors/writes/erase';

/** Strikes out what is known of somebody; leads to what is left of them. */
export const strikeOut = formAction('collectors.erase', eraseInput, async (doer, input) => {
  const erased = await eraseCollector(doer, input);
  if (!erased.ok) {
    const message = eraseRefusalMessage(erased.refusal);
    const isName = erased.refusal.code === 'name_does_not_fit';
    return refused({ message, fields: isName ? { typed: message } : {} });
  }
  revalidatePath('/', 'layout');
  redirect(`/collectors/${input.collectorId}`);
});
