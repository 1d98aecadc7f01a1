import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { centsInput } from '@/lib/money/input';
import { emptyOr } from './empty-or';

const daysInput = z
  .string()
  .trim()
  .regex(/^\d{1,4}$/, 'Write a whole number of days.')
  .transform(Number)
  .refine((days) => days <= 3_650, 'That is more than ten years. Write at most 3650 days.');

/** The form with which the owner writes a carrier's terms down. */
export const carrierTermsInput = z.object({
  requestKey: z.uuid(),
  name: z
    .string()
    .trim()
    .min(1, 'Write a name for it, such as Parcel by road.')
    .max(60, 'At most 60 characters, please.'),
  counts: z.enum(['size', 'scale', 'freight'], { error: 'Choose how it counts.' }),
  divisorIn3: emptyOr(
    z
      .string()
      .trim()
      .regex(/^[1-9]\d{0,3}$/, 'Write the cubic inches that count as a pound, such as 139.')
      .transform(Number),
  ),
  sides: z.enum(['up', 'nearest', 'as_measured']).prefault('up'),
  overIn3: emptyOr(
    z
      .string()
      .trim()
      .regex(/^\d{1,6}$/, 'Write whole cubic inches, such as 1728.')
      .transform(Number),
  ).transform((in3) => in3 ?? 0),
  reportDays: daysInput,
  claimDays: daysInput,
  cover: centsInput.refine((cents) => cents <= 100_000_000_00n, 'That is too much.'),
  holdsFromOn: dayInput,
  source: z.string().trim().max(300, 'At most 300 characters, please.').prefault(''),
});

/** See {@link carrierTermsInput}. */
export type CarrierTermsInput = z.output<typeof carrierTermsInput>;
