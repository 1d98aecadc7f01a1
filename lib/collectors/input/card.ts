import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { looksLikeCardNumber } from '@/lib/money/rules/card-number';
import { collectorName, reachFields } from '../input';
import { tellsACode } from '../rules/card';
import { consentHows, consentKinds } from '../rules/consent';

/** Words that are kept: no number of a card, no code of a door. */
function words(most: number) {
  return z
    .string()
    .trim()
    .max(most, `Keep it to ${most} letters.`)
    .refine((text) => !looksLikeCardNumber(text), {
      message: 'That looks like the number of a card, which is never kept.',
    })
    .refine((text) => !tellsACode(text), {
      message: 'Codes of doors and alarms go on the work order alone, never into the address book.',
    });
}

const maybeWords = (most: number) => words(most).prefault('');
const oneOrNew = z
  .union([z.uuid(), z.literal('')])
  .transform((id) => (id === '' ? null : id))
  .prefault('');

/** Whose card it is, and the key that makes the form happen once. */
const ofCollector = { requestKey: z.uuid(), collectorId: z.uuid() };

/** Somebody of a household or a firm, new or changed. */
export const personInput = z.strictObject({
  ...ofCollector,
  personId: oneOrNew,
  name: collectorName,
  said: maybeWords(120),
  part: maybeWords(80),
  email: reachFields.email,
  phone: reachFields.phone,
  reach: maybeWords(200),
});

/** What {@link personInput} gives. */
export type PersonInput = z.output<typeof personInput>;

/** A further address, new or changed. */
export const addressInput = z.strictObject({
  ...ofCollector,
  addressId: oneOrNew,
  label: words(60).min(1, 'Say what it is to them, such as “the house by the water”.'),
  street: words(160).min(1, 'Write the street.'),
  city: words(80).min(1, 'Write the town.'),
  state: maybeWords(40),
  postcode: maybeWords(16),
  note: maybeWords(500),
});

/** What {@link addressInput} gives. */
export type AddressInput = z.output<typeof addressInput>;

/** A yes or a no, as it was heard. */
export const consentInput = z.strictObject({
  ...ofCollector,
  to: z.enum(consentKinds, { error: 'Say what it was about.' }),
  said: z.enum(['yes', 'no'], { error: 'Say whether it was a yes or a no.' }),
  how: z.enum(consentHows, { error: 'Say how it was said.' }),
  saidOn: dayInput,
});

/** What {@link consentInput} gives. */
export type ConsentInput = z.output<typeof consentInput>;

/** Something to remember, new or changed. */
export const noteInput = z.strictObject({
  ...ofCollector,
  noteId: oneOrNew,
  words: words(2_000).min(1, 'Write what is to be remembered.'),
});

/** What {@link noteInput} gives. */
export type NoteInput = z.output<typeof noteInput>;

/** Where a piece of theirs hangs: one bought here, one commissioned, or one told of. */
export const ownedInput = z
  .strictObject({
    ...ofCollector,
    ownedId: oneOrNew,
    saleLineId: oneOrNew,
    commissionId: oneOrNew,
    title: maybeWords(160),
    addressId: oneOrNew,
    hangs: maybeWords(200),
    note: maybeWords(500),
  })
  .refine(
    ({ saleLineId, commissionId, title }) =>
      saleLineId !== null || commissionId !== null || title !== '',
    { path: ['title'], message: 'Write what the piece is called, or what it looks like.' },
  );

/** What {@link ownedInput} gives. */
export type OwnedInput = z.output<typeof ownedInput>;

/** What of a card may be taken off it. */
export const cardParts = ['person', 'address', 'note', 'owned'] as const;

/** The one thing of a card that is taken off it. */
export const takeOffInput = z.strictObject({
  ...ofCollector,
  part: z.enum(cardParts),
  partId: z.uuid(),
});

/** What {@link takeOffInput} gives. */
export type TakeOffInput = z.output<typeof takeOffInput>;
