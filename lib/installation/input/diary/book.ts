import { z } from 'zod';
import { dayInput, timeInput } from '@/lib/dates/input';
import { appointmentKinds } from '@/lib/installation/rules/diary/kinds';
import { crewIds, place, seenSequence, texts, words, wordsOf } from './atoms';

const times = {
  day: dayInput,
  from: timeInput,
  to: timeInput,
  leadId: z.uuid('Choose who leads it.'),
  crewIds,
};

/** A new appointment. */
export const bookInput = z
  .strictObject({
    requestKey: z.uuid(),
    kind: z.enum(appointmentKinds, { message: 'Choose what it is.' }),
    commissionId: z.union([z.literal('').transform(() => null), z.uuid()]).default(null),
    ...times,
    ...place,
    ...texts,
    ...words,
  })
  .transform(wordsOf);
/** What {@link bookInput} reads. */
export type BookInput = z.output<typeof bookInput>;

/** Another time for an appointment; `seenSequence` is how it stood when the form was drawn. */
export const moveAppointmentInput = z
  .strictObject({
    requestKey: z.uuid(),
    appointmentId: z.uuid(),
    seenSequence,
    ...times,
    ...place,
    whyMoved: z.string().trim().max(300, 'Say it in fewer words.').default(''),
    ...words,
  })
  .transform(wordsOf);
/** What {@link moveAppointmentInput} reads. */
export type MoveAppointmentInput = z.output<typeof moveAppointmentInput>;

/** What is told of an appointment in words: who lets us in, what is made ready, what if it storms. */
export const tellMoreInput = z.strictObject({
  requestKey: z.uuid(),
  appointmentId: z.uuid(),
  seenSequence,
  ...texts,
});
/** What {@link tellMoreInput} reads. */
export type TellMoreInput = z.output<typeof tellMoreInput>;

/** Calling an appointment off. */
export const callOffInput = z.strictObject({
  requestKey: z.uuid(),
  appointmentId: z.uuid(),
  seenSequence,
  why: z
    .string()
    .trim()
    .min(3, 'Say why, so that nobody has to ask.')
    .max(300, 'Say it in fewer words.'),
});
/** What {@link callOffInput} reads. */
export type CallOffInput = z.output<typeof callOffInput>;
