'use server';

import { revalidatePath } from 'next/cache';
import { answer, formAction } from '@/app/form-action';
import {
  addAbsenceInput,
  keepHoursInput,
  keepWayInput,
  withdrawAbsenceInput,
} from '@/lib/installation/input/crew/crew';
import { lastsWords } from '@/lib/installation/rules/crew/hours';
import { crewRefusalMessage } from '@/lib/installation/rules/crew/refusals';
import {
  addAbsence,
  keepHours,
  keepWay,
  withdrawAbsence,
} from '@/lib/installation/writes/crew/crew';

/** Keeps when somebody works. */
export const keepTheirHours = formAction('staff.keep', keepHoursInput, async (doer, input) => {
  const kept = await keepHours(doer, input);
  revalidatePath('/diary', 'layout');
  return answer(kept, crewRefusalMessage, () => ({ kind: 'done', message: 'The hours are kept.' }));
});

/** Writes down that somebody is away. */
export const writeAbsence = formAction('diary.book', addAbsenceInput, async (doer, input) => {
  const added = await addAbsence(doer, input);
  revalidatePath('/diary', 'layout');
  return answer(added, crewRefusalMessage, () => ({
    kind: 'done',
    message: 'It is written down.',
  }));
});

/** Takes an absence back. */
export const takeAbsenceBack = formAction(
  'diary.book',
  withdrawAbsenceInput,
  async (doer, input) => {
    const taken = await withdrawAbsence(doer, input);
    revalidatePath('/diary', 'layout');
    return answer(taken, crewRefusalMessage, () => ({
      kind: 'done',
      message: 'It is taken back.',
    }));
  },
);

/** Keeps how long the way between two places takes. */
export const keepTheWay = formAction('diary.book', keepWayInput, async (doer, input) => {
  const kept = await keepWay(doer, input);
  revalidatePath('/diary', 'layout');
  return answer(kept, crewRefusalMessage, ({ minutes }) => ({
    kind: 'done',
    message: `The way is kept: ${lastsWords(minutes)}.`,
  }));
});
