'use server';

import { revalidatePath } from 'next/cache';
import { answer, formAction } from '@/app/form-action';
import { keepCodesInput } from '@/lib/installation/input/work/codes';
import { workRefusalMessage } from '@/lib/installation/rules/work/refusals';
import { keepCodes } from '@/lib/installation/writes/work/codes';
import { getGallery } from '@/lib/platform/settings';

/** Keeps the codes of doors and alarms for one day. */
export const keepDoorCodes = formAction('installation.do', keepCodesInput, async (doer, input) => {
  const kept = await keepCodes(doer, input);
  const { timeZone } = await getGallery();
  revalidatePath('/diary', 'layout');
  return answer(
    kept,
    (refusal) => workRefusalMessage(refusal, timeZone),
    () => ({ kind: 'done', message: input.codes === '' ? 'Struck out.' : 'Kept for this day.' }),
  );
});
