import { z } from 'zod';
import { known, saidLine } from '@/lib/commissions/input/atoms';
import { dayInput } from '@/lib/dates/input';
import { weightInput } from '@/lib/units/input';

/** The form that writes a bucket of glaze down. */
export const writeBatchInput = z.strictObject({
  requestKey: z.uuid(),
  number: saidLine('Write the number on its label.', 40),
  glaze: saidLine('Write which glaze it is.', 120),
  mixedOn: dayInput,
  weightG: known(weightInput),
  note: z.string().trim().max(600, 'Keep it to 600 letters.').prefault(''),
});

/** What writing a bucket down takes. */
export type WriteBatchInput = z.output<typeof writeBatchInput>;

/** The form that lets a bucket go which is kept for a commission. */
export const releaseBatchInput = z.strictObject({
  requestKey: z.uuid(),
  batchId: z.uuid({ error: 'Choose the bucket.' }),
  why: saidLine('Say why, in a few words.', 600).min(3, 'Say why, in a few words.'),
});

/** What letting a bucket go takes. */
export type ReleaseBatchInput = z.output<typeof releaseBatchInput>;
