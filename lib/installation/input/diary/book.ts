import { z } from 'zod';
import { dayInput, timeInput } from '@/lib/dates/input';
import { appointmentKinds } from '@/lib/installation/rules';

const address = z
  .string()
  .trim()
  .min(3, 'Write where it is, so that the van finds it.')
  .max(200, 'Say it in fewer words.');

const times = {
  day: dayInput,
  from: timeInput,
  to: timeInput,
  leadId: z.uuid('Choose who leads it.'),
};

const seenSequence = z
  .string()
  .regex(/^\d{1,6}$/)
  .transform(Number);

/** A new appointment. */
export const bookInput = z.strictObject({
  requestKey: z.uuid(),
  kind: z.enum(appointmentKinds, { message: 'Choose what it is.' }),
  commissionId: z.union([z.literal('').transform(() => null), z.uuid()]).default(null),
  ...times,
  address,
  note: z.string().trim().max(1_000, 'Say it in fewer words.').default(''),
});
/** What {@link bookInput} reads. */
export type BookInput = z.output<typeof bookInput>;

/** Another time for an appointment; `seenSequence` is how it stood when the form was drawn. */
export const moveAppointmentInput = z.strictObject({
  requestKey: z.uuid(),
  appointmentId: z.uuid(),
  seenSequence,
  ...times,
});
/** What {@link moveAppointmentInput} reads. */
export type MoveAppointmentInput = z.output<typeof moveAppointmentInput>;

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
