import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { looksLikeCardNumber } from '@/lib/money/rules/card-number';
import { parseDecimal } from '@/lib/money/rules/decimal';
import { orNothing, stateInput } from '@/lib/tax/input';

/** Words that are kept: short enough to be read, and without the number of a card in them. */
function wordsInput(most: number) {
  return z
    .string()
    .trim()
    .max(most, `Keep it to ${most} letters.`)
    .refine((text) => !looksLikeCardNumber(text), {
      message: 'That looks like the number of a card, which is never kept.',
    });
}

/** A resale certificate as it is handed over; the picture of it may be left out. */
export const certificateInput = z
  .strictObject({
    requestKey: z.uuid(),
    collectorId: z.uuid(),
    state: stateInput,
    permitNumber: wordsInput(40).min(1, 'Write the number of their permit.'),
    legalName: wordsInput(120).min(1, 'Write the name as it stands on the certificate.'),
    buys: wordsInput(200).prefault(''),
    fromOn: dayInput,
    untilOn: orNothing(dayInput),
    // A field that was left empty arrives as a file with nothing in it.
    picture: z
      .file()
      .optional()
      .transform((file) => (file && file.size > 0 ? file : undefined)),
  })
  .refine(({ fromOn, untilOn }) => untilOn === null || untilOn >= fromOn, {
    path: ['untilOn'],
    message: 'The last day comes before the first. Look at both again.',
  });

/** What {@link certificateInput} gives. */
export type CertificateInput = z.output<typeof certificateInput>;

/** The certificate that no longer counts. */
export const withdrawInput = z.strictObject({
  requestKey: z.uuid(),
  certificateId: z.uuid(),
});

/** What {@link withdrawInput} gives. */
export type WithdrawInput = z.output<typeof withdrawInput>;

/** What a designer gets from a day on: one of the two ways, or nothing. */
export const tradeTermsInput = z
  .strictObject({
    requestKey: z.uuid(),
    collectorId: z.uuid(),
    way: z.enum(['discount', 'referral_fee', 'nothing'], { error: 'Say what they get.' }),
    percent: orNothing(
      z
        .string()
        .trim()
        .refine(
          isShare,
          'Write a percentage above 0 and below 100, with at most two decimals, such as 15.',
        ),
    ),
    sinceOn: dayInput,
    note: wordsInput(500).prefault(''),
  })
  .refine(({ way, percent }) => way === 'nothing' || percent !== null, {
    path: ['percent'],
    message: 'Write how much, such as 15.',
  });

/** What {@link tradeTermsInput} gives. */
export type TradeTermsInput = z.output<typeof tradeTermsInput>;

function isShare(text: string): boolean {
  const share = parseDecimal(text);
  if (!share || share.units <= 0n || share.scale > 2) return false;
  return share.units < 100n * 10n ** BigInt(share.scale);
}
