import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { centsInput, someCentsInput } from '@/lib/money/input';
import { emptyOr } from './empty-or';

const pictures = z
  .union([z.instanceof(File).transform((file) => [file]), z.array(z.instanceof(File))])
  .prefault([] as File[]);

/** The form that writes damage down: when it was found, what it is, what is asked for it, pictures. */
export const claimInput = z.object({
  requestKey: z.uuid(),
  shipmentId: z.uuid(),
  foundOn: dayInput,
  words: z
    .string()
    .trim()
    .min(1, 'Write what is broken, and which box it was in.')
    .max(2_000, 'At most 2000 characters, please.'),
  asked: someCentsInput.refine((cents) => cents <= 100_000_000_00n, 'That is too much.'),
  pictures,
});

/** The form that says what came of a claim. */
export const claimEventInput = z.object({
  requestKey: z.uuid(),
  claimId: z.uuid(),
  kind: z.enum(['told', 'claimed', 'paid', 'refused', 'withdrawn', 'noted'], {
    error: 'Choose what came of it.',
  }),
  on: dayInput,
  amount: emptyOr(centsInput)
    .transform((cents) => cents ?? 0n)
    .refine((cents) => cents <= 100_000_000_00n, 'That is too much.'),
  words: z.string().trim().max(1_000, 'At most 1000 characters, please.').prefault(''),
});

/** See {@link claimInput}. */
export type ClaimInput = z.output<typeof claimInput>;
/** See {@link claimEventInput}. */
export type ClaimEventInput = z.output<typeof claimEventInput>;
