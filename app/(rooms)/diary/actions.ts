'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused, type RefusalWords } from '@/app/form-action';
import { bookInput, callOffInput, moveAppointmentInput } from '@/lib/installation/input';
import {
  diaryRefusalMessage,
  refusedField,
  type DiaryRefusal,
} from '@/lib/installation/rules/diary/words';
import { bookAppointment, callOffAppointment, moveAppointment } from '@/lib/installation/writes';
import { getGallery } from '@/lib/platform/settings';

/** Books an appointment, and opens its page. */
export const book = formAction('diary.book', bookInput, async (doer, input) => {
  const booked = await bookAppointment(doer, input);
  if (!booked.ok) return refused(await wordsFor(booked.refusal));
  revalidateDiary();
  redirect(`/diary/${booked.value.id}?done=booked`);
});

/** Moves an appointment to another time or gives it to somebody else. */
export const move = formAction('diary.book', moveAppointmentInput, async (doer, input) => {
  const moved = await moveAppointment(doer, input);
  revalidateDiary();
  if (!moved.ok) return refused(await wordsFor(moved.refusal));
  redirect(`/diary/${moved.value.id}?done=moved`);
});

/** Calls an appointment off. */
export const callOff = formAction('diary.book', callOffInput, async (doer, input) => {
  const called = await callOffAppointment(doer, input);
  revalidateDiary();
  if (!called.ok) return refused(await wordsFor(called.refusal));
  redirect(`/diary/${called.value.id}`);
});

function revalidateDiary(): void {
  revalidatePath('/diary', 'layout');
  revalidatePath('/');
}

async function wordsFor(refusal: DiaryRefusal): Promise<RefusalWords> {
  const { timeZone } = await getGallery();
  const message = diaryRefusalMessage(refusal, timeZone);
  const field = refusedField(refusal);
  return field ? { message, fields: { [field]: fieldWords[field] } } : message;
}

const fieldWords = {
  commissionId: 'Look at this again.',
  leadId: 'Somebody else, or another time.',
  to: 'This must be later than the time above.',
  day: 'Choose a time that is still to come.',
} as const;
