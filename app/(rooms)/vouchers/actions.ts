'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { openStoreCreditInput } from '@/lib/vouchers/input';
import { creditRefusalMessage } from '@/lib/vouchers/rules';
import { openStoreCredit } from '@/lib/vouchers/writes/open-store-credit';

/** Gives a store credit by hand; leads to its page, with the number to hand over. */
export const giveCredit = formAction(
  'counter.discount_beyond',
  openStoreCreditInput,
  async (doer, input) => {
    const opened = await openStoreCredit(doer, input);
    if (!opened.ok) return refused(creditRefusalMessage(opened.refusal));
    revalidatePath('/vouchers');
    redirect(`/vouchers/${opened.value.code}`);
  },
);
