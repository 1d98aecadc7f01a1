'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { keepCollectorInput } from '@/lib/collectors/input';
import { collectorRefusalMessage } from '@/lib/collectors/rules';
import { keepCollector } from '@/lib/collectors/writes';

/** Adds a collector, or changes the one whose id the form carries; leads to their page. */
export const keep = formAction('collectors.write', keepCollectorInput, async (doer, input) => {
  const kept = await keepCollector(doer, input);
  if (!kept.ok) return refused(collectorRefusalMessage(kept.refusal));
  revalidatePath('/collectors', 'layout');
  redirect(`/collectors/${kept.value.collectorId}`);
});
