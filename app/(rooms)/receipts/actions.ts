'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { answer, formAction, refused } from '@/app/form-action';
import { strikeOutInput, takeBackInput } from '@/lib/returns/input';
import { returnRefusalWords } from '@/lib/returns/rules/refusals';
import { strikeOut, takeBack } from '@/lib/returns/writes';
import { keepProofInput } from '@/lib/sales/input/proof';
import { proofRefusalWords } from '@/lib/sales/rules/proof';
import { keepProof } from '@/lib/sales/writes/keep-proof';

/** Takes pieces back; leads to the paper that says so. */
export const bringBack = formAction('counter.give_back', takeBackInput, async (doer, input) => {
  const taken = await takeBack(doer, input);
  if (!taken.ok) return refused(returnRefusalWords(taken.refusal));
  revalidatePath('/', 'layout');
  redirect(`/receipts/returns/${taken.value.number}`);
});

/** Strikes out a sale of today; leads to the paper that says so. */
export const strikeSaleOut = formAction(
  'counter.give_back',
  strikeOutInput,
  async (doer, input) => {
    const struck = await strikeOut(doer, input);
    if (!struck.ok) return refused(returnRefusalWords(struck.refusal));
    revalidatePath('/', 'layout');
    redirect(`/receipts/returns/${struck.value.number}`);
  },
);

/** Keeps the carrier's slip of a sale that was sent. */
export const keepCarrierSlip = formAction('counter.sell', keepProofInput, async (doer, input) => {
  const { picture, ...slip } = input;
  const bytes = picture ? new Uint8Array(await picture.arrayBuffer()) : null;
  const kept = await keepProof(doer, { ...slip, bytes });
  revalidatePath('/receipts', 'layout');
  return answer(kept, proofRefusalWords, () => ({
    kind: 'done',
    message: 'The carrier’s slip is kept with the receipt.',
  }));
});
