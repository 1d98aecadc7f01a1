'use server';

import { revalidatePath } from 'next/cache';
import { answer, formAction } from '@/app/form-action';
import { endRateInput, galleryInput, newRateInput } from '@/lib/access/input/set-up';
import { settingsRefusalMessage } from '@/lib/access/rules/set-up';
import { keepGallery, keepRate, stopRate } from '@/lib/access/writes/set-up';
import { formatDay } from '@/lib/dates/rules';

/** Keeps how the gallery works. */
export const keepSettings = formAction('settings.keep', galleryInput, async (doer, input) => {
  const kept = await keepGallery(doer, input);
  revalidatePath('/', 'layout');
  return answer(kept, settingsRefusalMessage, () => ({
    kind: 'done',
    message: 'Kept. Papers printed from now on say it this way.',
  }));
});

/** Lets a tax rate hold from a day on. */
export const addTaxRate = formAction('settings.keep', newRateInput, async (doer, input) => {
  const added = await keepRate(doer, input);
  revalidatePath('/settings');
  return answer(added, settingsRefusalMessage, (authority) => ({
    kind: 'done',
    message: `${authority}: ${input.ratePercent} % from ${formatDay(input.fromOn, 'short')}.`,
  }));
});

/** Ends a tax rate on a day. */
export const endTaxRate = formAction('settings.keep', endRateInput, async (doer, input) => {
  const ended = await stopRate(doer, input);
  revalidatePath('/settings');
  return answer(ended, settingsRefusalMessage, (authority) => ({
    kind: 'done',
    message: `${authority} takes nothing from ${formatDay(input.untilOn, 'short')} on.`,
  }));
});
