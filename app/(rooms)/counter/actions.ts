'use server';
import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { counterInput } from '@/lib/sales/input';
import { sellAtCounter } from '@/lib/sales/writes';
import { whyNotSold } from './why-not-sold';

/** Takes the money for the slip; leads back to the counter, where the change stands. */
export const sell = formAction('counter.sell', counterInput, async (doer, input) => {
  const sold = await sellAtCounter(doer, input);
  if (!sold.ok) return refused(whyNotSold(sold.refusal));
  revalidatePath('/', 'layout');
  redirect(`/counter?sold=${sold.value.number}`);
});
