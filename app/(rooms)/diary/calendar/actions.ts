'use server';

import { revalidatePath } from 'next/cache';
import { headers } from 'next/headers';
import { formAction, refused } from '@/app/form-action';
import { originOf } from '@/app/origin';
import { makeFeedInput, withdrawFeedInput } from '@/lib/installation/input/calendar/feed';
import { anyFeedRefusalMessage } from '@/lib/installation/rules/calendar/feed';
import { makeFeed, withdrawFeed } from '@/lib/installation/writes/calendar/feed';

/** Makes an address of a calendar; it is shown in the answer, and never again. */
export const openCalendar = formAction('diary.see', makeFeedInput, async (doer, input) => {
  const made = await makeFeed(doer, input);
  if (!made.ok) return refused(anyFeedRefusalMessage(made.refusal));
  revalidatePath('/diary/calendar');
  const { secret } = made.value;
  if (secret === null) {
    return { kind: 'done', message: 'It was made before, and shown then. Make another one.' };
  }
  const href = `${originOf(await headers())}/calendar/${secret}.ics`;
  return { kind: 'done', message: 'It is made, and shown only this once.', href };
});

/** Withdraws an address of a calendar for good. */
export const shutCalendar = formAction('diary.see', withdrawFeedInput, async (doer, input) => {
  const shut = await withdrawFeed(doer, input);
  revalidatePath('/diary/calendar');
  if (!shut.ok) return refused(anyFeedRefusalMessage(shut.refusal));
  return { kind: 'done', message: 'It is withdrawn, and opens nothing from now on.' };
});
