'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { answer, formAction, refused } from '@/app/form-action';
import { counterTermsInput } from '@/lib/access/input/counter-terms';
import { endRateInput, galleryInput, newRateInput } from '@/lib/access/input/set-up';
import { settingsRefusalMessage } from '@/lib/access/rules/set-up';
import { keepCounterTerms } from '@/lib/access/writes/counter-terms';
import { keepGallery } from '@/lib/access/writes/set-up';
import {
  keepRate,
  keepTaxPlace,
  keepTaxState,
  keepTreatment,
  stopRate,
} from '@/lib/access/writes/tax';
import { formatDay } from '@/lib/dates/rules';
import { taxPlaceInput, taxStateInput, treatmentInput } from '@/lib/tax/input';
import { treatedKindWords } from '@/lib/tax/rules/treatment-days';

/** Keeps how the gallery works. */
export const keepSettings = formAction('settings.keep', galleryInput, async (doer, input) => {
  const kept = await keepGallery(doer, input);
  revalidatePath('/', 'layout');
  return answer(kept, settingsRefusalMessage, () => ({
    kind: 'done',
    message: 'Kept. Papers printed from now on say it this way.',
  }));
});

/** Keeps what holds at the counter. */
export const keepTerms = formAction('settings.keep', counterTermsInput, async (doer, input) => {
  const kept = await keepCounterTerms(doer, input);
  revalidatePath('/', 'layout');
  return answer(kept, settingsRefusalMessage, () => ({
    kind: 'done',
    message: 'Kept. It holds from the next slip on.',
  }));
});

/** Adds a place with rates of its own and leads to it, or gives one another name. */
export const keepPlace = formAction('settings.keep', taxPlaceInput, async (doer, input) => {
  const kept = await keepTaxPlace(doer, input);
  if (!kept.ok) {
    const message = settingsRefusalMessage(kept.refusal);
    return refused({
      message,
      fields: kept.refusal.code === 'place_is_there' ? { name: message } : {},
    });
  }
  revalidatePath('/settings/tax', 'layout');
  if (input.placeId === null) redirect(`/settings/tax/${kept.value}`);
  return { kind: 'done', message: 'Kept. Receipts made before keep their tax.' };
});

/** Lets a tax rate hold at a place from a day on. */
export const addTaxRate = formAction('settings.keep', newRateInput, async (doer, input) => {
  const added = await keepRate(doer, input);
  revalidatePath('/settings/tax', 'layout');
  return answer(added, settingsRefusalMessage, (authority) => ({
    kind: 'done',
    message: `${authority}: ${input.ratePercent} % from ${formatDay(input.fromOn, 'short')}.`,
  }));
});

/** Ends a tax rate on a day. */
export const endTaxRate = formAction('settings.keep', endRateInput, async (doer, input) => {
  const ended = await stopRate(doer, input);
  revalidatePath('/settings/tax', 'layout');
  return answer(ended, settingsRefusalMessage, (authority) => ({
    kind: 'done',
    message: `${authority} takes nothing from ${formatDay(input.untilOn, 'short')} on.`,
  }));
});

/** Keeps what a state says about one kind of line from a day on. */
export const addTreatment = formAction('settings.keep', treatmentInput, async (doer, input) => {
  const kept = await keepTreatment(doer, input);
  revalidatePath('/settings/tax', 'layout');
  return answer(kept, settingsRefusalMessage, (state) => ({
    kind: 'done',
    message: `Kept for ${state}: ${treatedKindWords[input.kind].toLowerCase()}, from ${formatDay(input.fromOn, 'short')}.`,
  }));
});

/** Keeps since when the gallery collects in a state, and from how much it must. */
export const keepState = formAction('settings.keep', taxStateInput, async (doer, input) => {
  const kept = await keepTaxState(doer, input);
  revalidatePath('/settings/tax', 'layout');
  return answer(kept, settingsRefusalMessage, (state) => ({
    kind: 'done',
    message: `Kept for ${state}.`,
  }));
});
