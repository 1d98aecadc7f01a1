'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { assemblyInput } from '@/lib/installation/input/assembly/assembly';
import { assemblyRefusalMessage } from '@/lib/installation/rules/assembly/cure';
import { setPieces } from '@/lib/installation/writes/assembly/set';
import { sheetHref } from '../../sheet-href';

/** Writes down that pieces were set on their board. */
export const writeAssembly = formAction('installation.do', assemblyInput, async (doer, input) => {
  const set = await setPieces(doer, input);
  if (!set.ok) return refused(assemblyRefusalMessage(set.refusal));
  revalidatePath('/', 'layout');
  redirect(sheetHref(set.value.commissionNumber, 'assembly'));
});
