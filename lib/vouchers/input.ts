import { z } from 'zod';
import { someCentsInput } from '@/lib/money/input';

/** The address of the list: what is looked for, and the month whose roll is shown. */
export const creditsInput = z.object({
  find: z.string().max(80).catch('').default(''),
  month: z.string().max(10).catch('').default(''),
});

/** A store credit that the owner opens by hand. */
export const openStoreCreditInput = z.object({
  requestKey: z.uuid(),
  collectorId: z
    .union([z.literal(''), z.uuid()])
    .default('')
    .transform((id) => (id === '' ? null : id)),
  amount: someCentsInput,
  why: z
    .string()
    .trim()
    .min(1, 'Write why it is given, so that it is understood a year later.')
    .max(200, 'At most 200 characters, please.'),
});

/** See {@link openStoreCreditInput}. */
export type OpenStoreCreditInput = z.output<typeof openStoreCreditInput>;
