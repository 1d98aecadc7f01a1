import { z } from 'zod';
import { looksLikeCardNumber } from '@/lib/money/rules/card-number';
import { collectorKinds } from './rules';

const nameLengthMost = 120;
const lineLengthMost = 160;
const noteLengthMost = 2_000;

/** A line that may be left empty: null is "not known yet". */
function lineInput(most: number) {
  return z
    .string()
    .trim()
    .max(most, `Keep it to ${most} letters.`)
    .transform((text) => (text === '' ? null : text))
    .prefault('');
}

/** A collector's name, as they say and spell it. */
export const collectorName = z
  .string()
  .trim()
  .min(1, 'Write the name.')
  .max(nameLengthMost, `Keep the name to ${nameLengthMost} letters.`);

/** A mail address and a telephone; either may be left empty. */
export const reachFields = {
  email: lineInput(lineLengthMost).refine(looksLikeMail, {
    message: 'A mail address has one @ with something on both sides.',
  }),
  phone: lineInput(40),
};

/** Who a collector is and how to reach them; all but the name may be left empty. */
export const collectorFields = z.strictObject({
  kind: z.enum(collectorKinds, { error: 'Say what kind of collector this is.' }).prefault('person'),
  name: collectorName,
  ...reachFields,
  street: lineInput(lineLengthMost),
  city: lineInput(80),
  state: lineInput(40),
  postcode: lineInput(16),
  note: z
    .string()
    .trim()
    .max(noteLengthMost, 'Keep the note to 2,000 letters.')
    .refine((text) => !looksLikeCardNumber(text), {
      message: 'That looks like the number of a card, which is never kept.',
    })
    .prefault(''),
});

/** The form that adds a collector, or changes the one whose id it carries. */
export const keepCollectorInput = collectorFields.extend({
  requestKey: z.uuid(),
  firm: lineInput(120),
  collectorId: z
    .union([z.uuid(), z.literal('')])
    .transform((id) => (id === '' ? null : id))
    .prefault(''),
});

/** What a collector's page is made from. */
export type CollectorFields = z.output<typeof collectorFields>;

/** What {@link keepCollectorInput} gives. */
export type KeepCollectorInput = z.output<typeof keepCollectorInput>;

function looksLikeMail(text: string | null): boolean {
  return text === null || /^[^\s@]+@[^\s@]+\.[^\s@]+$/.test(text);
}
