'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { answer, formAction, refused } from '@/app/form-action';
import { countDrawerInput, pettyCashInput } from '@/lib/drawer/input';
import { drawerRefusalWords } from '@/lib/drawer/rules';
import { countDrawer, notePettyCash } from '@/lib/drawer/writes';

/** Writes the count down; leads to the day's sheet. */
export const count = formAction('counter.close_day', countDrawerInput, async (doer, input) => {
  const counted = await countDrawer(doer, input);
  if (!counted.ok) return refused(drawerRefusalWords(counted.refusal));
  revalidatePath('/', 'layout');
  redirect(`/drawer/${counted.value.number}`);
});

/** Writes small cash down. */
export const noteSmallCash = formAction(
  'counter.close_day',
  pettyCashInput,
  async (doer, input) => {
    const noted = await notePettyCash(doer, input);
    revalidatePath('/drawer');
    return answer(noted, drawerRefusalWords, ({ number }) => ({
      kind: 'done',
      message: `Written down as slip ${number}. Put that number on the paper slip.`,
    }));
  },
);
