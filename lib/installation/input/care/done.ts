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

/** The form that sets the looks after a piece that was handed over without a work order. */
export const setLooksInput = z.strictObject({
  requestKey: z.uuid(),
  commissionId: z.uuid(),
  /** Whether it was hung, or taken along. */
  hangs: z.enum(['yes', 'no'], { error: 'Say whether it was hung.' }),
});

/** What {@link setLooksInput} reads. */
export type SetLooksInput = z.output<typeof setLooksInput>;
