import { z } from 'zod';
import { lengthInput } from '@/lib/units/input';
import { wholeInput } from './whole';

/** How pieces are hung: where their middle is, what fixings must carry, when one looks again. */
export const hangingTermsInput = z.strictObject({
  requestKey: z.uuid(),
  eyeHeightUm: lengthInput.refine(
    (um) => um >= 500_000 && um <= 2_500_000,
    'Write a height from 20 in to 98 in.',
  ),
  hangSafety: wholeInput('times', { least: 2, most: 4 }),
  fixingsLookMonths: wholeInput('months', { least: 1, most: 600 }),
});

/** What {@link hangingTermsInput} gives. */
export type HangingTermsInput = z.output<typeof hangingTermsInput>;
