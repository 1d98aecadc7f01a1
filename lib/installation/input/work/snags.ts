import { z } from 'zod';
import { saidLine } from '@/lib/commissions/input/atoms';
import { dayInput } from '@/lib/dates/input';

/** The form that writes down what is still to be put right. */
export const writeSnagInput = z.strictObject({
  requestKey: z.uuid(),
  commissionId: z.uuid(),
  words: saidLine('Say what is to be put right.', 600),
  mendById: z.uuid('Choose who puts it right.'),
  mendByOn: dayInput,
});

/** What {@link writeSnagInput} reads. */
export type WriteSnagInput = z.output<typeof writeSnagInput>;

/** The form that says that a snag was put right. */
export const mendSnagInput = z.strictObject({
  requestKey: z.uuid(),
  snagId: z.uuid(),
  words: z.string().trim().max(600, 'Keep it to 600 letters.').prefault(''),
  on: dayInput,
});

/** What {@link mendSnagInput} reads. */
export type MendSnagInput = z.output<typeof mendSnagInput>;
