import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';

const emptyIsNull = z.literal('').transform(() => null);

/** The carrier's slip of a sale that was sent. */
export const keepProofInput = z.object({
  requestKey: z.uuid(),
  saleNumber: z
    .string()
    .regex(/^[1-9]\d{0,8}$/)
    .transform(Number),
  carrier: z
    .string()
    .trim()
    .min(1, 'Write who carried it: a carrier, or our own van.')
    .max(60, 'At most 60 characters, please.'),
  number: z.string().trim().max(60, 'At most 60 characters, please.').default(''),
  sentOn: dayInput,
  arrivedOn: z.union([emptyIsNull, dayInput]).default(null),
  picture: z.instanceof(File).optional(),
});

/** See {@link keepProofInput}. */
export type KeepProofInput = z.output<typeof keepProofInput>;
