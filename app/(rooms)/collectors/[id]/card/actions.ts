'use server';

import { revalidatePath } from 'next/cache';
import { answer, formAction } from '@/app/form-action';
import {
  addressInput,
  consentInput,
  noteInput,
  ownedInput,
  personInput,
  takeOffInput,
} from '@/lib/collectors/input/card';
import { cardRefusalMessage } from '@/lib/collectors/rules/card';
import {
  keepAddress,
  keepNote,
  keepPerson,
  sayConsent,
  takeOff,
} from '@/lib/collectors/writes/card';
import { keepOwned } from '@/lib/collectors/writes/owned';

/** Writes down somebody of a household or a firm, or changes what is known of them. */
export const keepTheirPerson = formAction('collectors.write', personInput, async (doer, input) => {
  const kept = await keepPerson(doer, input);
  revalidatePath('/collectors', 'layout');
  return answer(kept, cardRefusalMessage, () => ({ kind: 'done', message: 'Written down.' }));
});

/** Writes down a further address, or changes one. */
export const keepTheirAddress = formAction(
  'collectors.write',
  addressInput,
  async (doer, input) => {
    const kept = await keepAddress(doer, input);
    revalidatePath('/collectors', 'layout');
    return answer(kept, cardRefusalMessage, () => ({ kind: 'done', message: 'Written down.' }));
  },
);

/** Writes down a yes or a no, as it was heard. */
export const keepConsent = formAction('collectors.write', consentInput, async (doer, input) => {
  const said = await sayConsent(doer, input);
  revalidatePath('/collectors', 'layout');
  return answer(said, cardRefusalMessage, () => ({ kind: 'done', message: 'Written down.' }));
});

/** Writes down something to remember, or changes it. */
export const keepTheirNote = formAction('collectors.write', noteInput, async (doer, input) => {
  const kept = await keepNote(doer, input);
  revalidatePath('/collectors', 'layout');
  return answer(kept, cardRefusalMessage, () => ({ kind: 'done', message: 'Written down.' }));
});

/** Writes down where a piece of theirs hangs. */
export const keepPlace = formAction('collectors.write', ownedInput, async (doer, input) => {
  const kept = await keepOwned(doer, input);
  revalidatePath('/collectors', 'layout');
  return answer(kept, cardRefusalMessage, () => ({ kind: 'done', message: 'Written down.' }));
});

/** Takes somebody, an address, a note or a place off the card. */
export const takeOffCard = formAction('collectors.write', takeOffInput, async (doer, input) => {
  const taken = await takeOff(doer, input);
  revalidatePath('/collectors', 'layout');
  return answer(taken, cardRefusalMessage, () => ({ kind: 'done', message: 'Taken off.' }));
});
