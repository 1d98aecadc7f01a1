'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { answer, formAction, refused } from '@/app/form-action';
import {
  addMouldInput,
  changeMouldInput,
  lookAtMouldInput,
  recordCastsInput,
  retireMouldInput,
} from '@/lib/catalogue/input/moulds';
import { castsWords, mouldRefusalMessage, type MouldRefusal } from '@/lib/catalogue/rules/moulds';
import { changeMould, lookAtMould } from '@/lib/catalogue/writes/mould-care';
import { addMould, recordCasts, retireMould } from '@/lib/catalogue/writes/moulds';

const fieldOf: Partial<Record<MouldRefusal['code'], string>> = {
  mould_code_taken: 'code',
  unknown_source: 'fromId',
  source_of_another_design: 'fromId',
  not_made_from_that: 'fromId',
  made_from_itself: 'fromId',
};

/** Writes a mould down. */
export const add = formAction('catalogue.keep', addMouldInput, async (doer, input) => {
  const added = await addMould(doer, input);
  if (!added.ok) {
    const message = mouldRefusalMessage(added.refusal);
    const field = fieldOf[added.refusal.code];
    return refused(field === undefined ? message : { message, fields: { [field]: message } });
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

/** Writes down how the face of a mould looked. */
export const look = formAction('stock.move', lookAtMouldInput, async (doer, input) => {
  const looked = await lookAtMould(doer, input);
  revalidatePath('/moulds', 'layout');
  return answer(looked, mouldRefusalMessage, ({ code }) => ({
    kind: 'done',
    message: `Written down how ${code} looks.`,
  }));
});

/** Changes what is known of a mould beside its casts. */
export const change = formAction('catalogue.keep', changeMouldInput, async (doer, input) => {
  const changed = await changeMould(doer, input);
  if (!changed.ok) {
    const message = mouldRefusalMessage(changed.refusal);
    const field = fieldOf[changed.refusal.code];
    return refused(field === undefined ? message : { message, fields: { [field]: message } });
  }
  revalidatePath('/moulds', 'layout');
  return { kind: 'done', message: `What is known of ${changed.value.code} is kept.` };
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
