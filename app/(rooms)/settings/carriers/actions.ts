'use server';

import { revalidatePath } from 'next/cache';
import { answer, formAction, type RefusalWords } from '@/app/form-action';
import { carrierTermsInput } from '@/lib/sending/input/carriers';
import { sendingRefusalMessage, type AnySendingRefusal } from '@/lib/sending/rules/refusals';
import { keepCarrierTerms } from '@/lib/sending/writes/carriers';

/** Writes down how a carrier reckons from a day on. */
export const keepTerms = formAction('settings.keep', carrierTermsInput, async (doer, input) => {
  const kept = await keepCarrierTerms(doer, input);
  revalidatePath('/', 'layout');
  return answer(kept, words, () => ({
    kind: 'done',
    message: `The terms of “${input.name}” are written down.`,
  }));
});

function words(refusal: AnySendingRefusal): RefusalWords {
  const message = sendingRefusalMessage(refusal);
  if (refusal.code === 'holds_already') return { message, fields: { holdsFromOn: message } };
  if (refusal.code === 'size_without_divisor') return { message, fields: { divisorIn3: message } };
  return message;
}
