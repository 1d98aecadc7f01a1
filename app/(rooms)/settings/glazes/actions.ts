'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { releaseBatchInput, writeBatchInput } from '@/lib/commissions/input/colours/batches';
import { commissionRefusalMessage } from '@/lib/commissions/rules/refusals';
import { writeBatch } from '@/lib/commissions/writes/colours/batches';
import { releaseBatch } from '@/lib/commissions/writes/colours/release';

/** Writes a bucket of glaze down. */
export const keepBatch = formAction('commissions.write', writeBatchInput, async (doer, input) => {
  const kept = await writeBatch(doer, input);
  if (!kept.ok) return refused(commissionRefusalMessage(kept.refusal));
  revalidatePath('/', 'layout');
  redirect('/settings/glazes?done=yes');
});

/** Lets a bucket go that is kept for a commission. */
export const letBatchGo = formAction(
  'commissions.write',
  releaseBatchInput,
  async (doer, input) => {
    const released = await releaseBatch(doer, input);
    if (!released.ok) return refused(commissionRefusalMessage(released.refusal));
    revalidatePath('/', 'layout');
    redirect('/settings/glazes?done=released');
  },
);
