'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import {
  bookInput,
  callOffInput,
  moveAppointmentInput,
  tellMoreInput,
} from '@/lib/installation/input';
import {
  bookAppointment,
  callOffAppointment,
  moveAppointment,
  tellMore,
} from '@/lib/installation/writes';
import { wordsFor } from '@/app/diary-words';

/** Books an appointment, and opens its page. */
export const book = formAction('diary.book', bookInput, async (doer, input) => {
  const booked = await bookAppointment(doer, input);
  if (!booked.ok) return refused(await wordsFor(booked.refusal, doer.actor));
  revalidateDiary();
  redirect(`/diary/${booked.value.id}?done=booked`);
});

/** Moves an appointment to another time or place, or gives it to other people. */
export const move = formAction('diary.book', moveAppointmentInput, async (doer, input) => {
  const moved = await moveAppointment(doer, input);
  revalidateDiary();
  if (!moved.ok) return refused(await wordsFor(moved.refusal, doer.actor));
  redirect(`/diary/${moved.value.id}?done=moved`);
});

/** Writes down what is told of an appointment besides its time. */
export const tellOfIt = formAction('diary.book', tellMoreInput, async (doer, input) => {
  const told = await tellMore(doer, input);
  revalidateDiary();
  if (!told.ok) return refused(await wordsFor(told.refusal, doer.actor));
  redirect(`/diary/${told.value.id}?done=told`);
});

/** Calls an appointment off. */
export const callOff = formAction('diary.book', callOffInput, async (doer, input) => {
  const called = await callOffAppointment(doer, input);
  revalidateDiary();
  if (!called.ok) return refused(await wordsFor(called.refusal, doer.actor));
  redirect(`/diary/${called.value.id}`);
});

function revalidateDiary(): void {
  revalidatePath('/diary', 'layout');
  revalidatePath('/');
}
