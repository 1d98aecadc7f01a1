import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { noteInput } from '@/lib/holds/input';
import { centsInput, someCentsInput } from '@/lib/money/input';

/** The most payments after the down payment. */
const paymentsMost = 12;
const chosenLengthMost = 800;

/** A whole number of payments, from one to twelve. */
const paymentsInput = z
  .string()
  .trim()
  .regex(/^\d{1,2}$/, 'Write a whole number of payments, from 1 to 12.')
  .transform(Number)
  .refine((payments) => payments >= 1 && payments <= paymentsMost, {
    message: `From 1 to ${paymentsMost} payments.`,
  });

/** Nothing typed is no discount. */
const discountInput = z.preprocess(
  (typed) => (typed === '' ? '0' : typed),
  centsInput.prefault('0'),
);

/** A layaway as the form sends it; the pieces as `readChosen` reads them. */
export const beginLayawayInput = z.object({
  ...{ requestKey: z.uuid(), collectorId: z.uuid('Say for whom it is put away.') },
  pieces: z.string().max(chosenLengthMost),
  holdId: z.union([z.uuid(), z.literal('')]).prefault(''),
  ...{ discount: discountInput, discountReason: noteInput },
  ...{ down: centsInput, payments: paymentsInput, finalOn: dayInput },
  /** What the page said before tax, so that nobody signs for another price. */
  shownNet: centsInput,
});

/** See {@link beginLayawayInput}. */
export type BeginLayawayInput = z.output<typeof beginLayawayInput>;

/** A payment on its way to the counter. */
export const payLayawayInput = z.object({
  ...{ requestKey: z.uuid(), layawayId: z.uuid(), amount: someCentsInput },
});

/** A layaway that is handed over, for the total that the page showed. */
export const handOverInput = z.object({
  ...{ requestKey: z.uuid(), layawayId: z.uuid(), shownTotal: centsInput },
});

/** See {@link handOverInput}. */
export type HandOverInput = z.output<typeof handOverInput>;

/** A layaway that is cancelled: what stays here, why, and how the rest goes back. */
export const cancelLayawayInput = z.object({
  ...{ requestKey: z.uuid(), layawayId: z.uuid() },
  keep: z.preprocess((typed) => (typed === '' ? '0' : typed), centsInput.prefault('0')),
  why: noteInput.refine((text) => text !== '', 'Say why, in a few words.'),
  how: z.enum(['same_way', 'store_credit'], { error: 'Choose how the money goes back.' }),
});

/** See {@link cancelLayawayInput}. */
export type CancelLayawayInput = z.output<typeof cancelLayawayInput>;
