import { z } from 'zod';
import { known, saidLine } from '@/lib/commissions/input/atoms';
import { dayInput } from '@/lib/dates/input';

/** The form that says how a look after a piece went. */
export const careDoneInput = z.strictObject({
  requestKey: z.uuid(),
  afterCareId: z.uuid(),
  words: saidLine('Say how it went, in a few words.', 1_000),
  on: dayInput,
  /** The visit on which it was done; empty for a call. */
  appointmentId: known(z.uuid()),
});

/** What {@link careDoneInput} reads. */
export type CareDoneInput = z.output<typeof careDoneInput>;
