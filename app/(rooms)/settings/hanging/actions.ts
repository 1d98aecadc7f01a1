'use server';

import { revalidatePath } from 'next/cache';
import { answer, formAction } from '@/app/form-action';
import { hangingTermsInput } from '@/lib/access/input/hanging';
import { settingsRefusalMessage } from '@/lib/access/rules/set-up';
import { keepHangingTerms } from '@/lib/access/writes/hanging';

/** Keeps how pieces are hung. */
export const keepHanging = formAction('settings.keep', hangingTermsInput, async (doer, input) => {
  const kept = await keepHangingTerms(doer, input);
  revalidatePath('/', 'layout');
  return answer(kept, settingsRefusalMessage, () => ({
    kind: 'done',
    message: 'Kept. It holds for plans and hangings from now on.',
  }));
});
