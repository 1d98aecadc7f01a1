'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { answer, formAction, refused } from '@/app/form-action';
import { addMouldInput, recordCastsInput, retireMouldInput } from '@/lib/catalogue/input/moulds';
import { castsWords, mouldRefusalMessage } from '@/lib/catalogue/rules/moulds';
import { addMould, recordCasts, retireMould } from '@/lib/catalogue/writes/moulds';

/** Writes a mould down. */
export const add = formAction('catalogue.keep', addMouldInput, async (doer, input) => {
  const added = await addMould(doer, input);
  if (!added.ok) {
    const message = mouldRefusalMessage(added.refusal);
    if (added.refusal.code === 'mould_code_taken')
      return refused({ message, fields: { code: message } });
    return refused(message);
  }
  revalidatePath('/moulds', 'layout');
  redirect(`/moulds/${added.value.code}`);
});

/** Writes down what was cast. */
export const cast = formAction('stock.move', recordCastsInput, async (doer, input) => {
  const recorded = await recordCasts(doer, input);
  revalidatePath('/moulds', 'layout');
  return answer(recorded, mouldRefusalMessage, () => ({
    kind: 'done',
    message: `Written down: ${castsWords(input.casts)}.`,
  }));
});

/** Takes a mould out of use. */
export const retire = formAction('catalogue.keep', retireMouldInput, async (doer, input) => {
  const retired = await retireMould(doer, input);
  revalidatePath('/moulds', 'layout');
  return answer(retired, mouldRefusalMessage, ({ code }) => ({
    kind: 'done',
    message: `${code} is retired.`,
  }));
});
