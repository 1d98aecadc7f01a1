import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';

const feesMost = 50;

/** The referral fees that are paid out together, and how. */
export const payFeesInput = z.strictObject({
  requestKey: z.uuid(),
  collectorId: z.uuid(),
  feeIds: z.preprocess(
    (chosen) => (typeof chosen === 'string' ? [chosen] : chosen),
    z
      .array(z.uuid(), { error: 'Choose at least one fee.' })
      .min(1, 'Choose at least one fee.')
      .max(feesMost, `Pay at most ${feesMost} at a time.`),
  ),
  how: z.enum(['cheque', 'bank_transfer', 'cash'], { error: 'Say how it is paid.' }),
  paidOn: dayInput,
});

/** What {@link payFeesInput} gives. */
export type PayFeesInput = z.output<typeof payFeesInput>;
