import { z } from 'zod';
import { dayInput, timeInput } from '@/lib/dates/input';
import { looksLikeCardNumber } from '@/lib/money/rules/card-number';

/** The longest note that is kept, in characters. */
const noteMost = 500;
const nameMost = 120;
/** The most pieces of one SKU that one hold keeps back. */
const piecesMost = 999;

/** Free text that may be left empty; what looks like a card's number is questioned. */
export const noteInput = z
  .string()
  .trim()
  .max(noteMost, `Keep it to ${noteMost} letters.`)
  .refine((text) => !looksLikeCardNumber(text), {
    message: 'This looks like the number of a payment card, which is never kept. Leave it out.',
  })
  .prefault('');

/** The id of something that may be left out: null for none. */
export const maybeId = z
  .union([z.uuid(), z.literal('')])
  .transform((id) => (id === '' ? null : id))
  .prefault('');

/** How many pieces, as it is typed: from one to 999. */
export const piecesInput = z
  .string()
  .trim()
  .regex(/^\d{1,3}$/, 'Write a whole number of pieces, at most 999.')
  .transform(Number)
  .refine((pieces) => pieces >= 1 && pieces <= piecesMost, 'Write how many pieces; at least one.');

/** The number of an edition, or nothing for any other piece. */
export const editionNumberInput = z
  .string()
  .trim()
  .regex(/^\d{0,4}$/, 'Write the number of the edition, such as 12.')
  .transform((text) => (text === '' ? null : Number(text)))
  .refine((number) => number !== 0, 'The numbers of an edition begin at 1.')
  .prefault('');

const who = {
  collectorId: maybeId,
  forWhom: z.string().trim().max(nameMost, `Keep the name to ${nameMost} letters.`).prefault(''),
  phone: z.string().trim().max(40, 'Keep the telephone number to 40 letters.').prefault(''),
};

type Who = { collectorId: string | null; forWhom: string };

const somebody = (said: Who) => said.collectorId !== null || said.forWhom !== '';
const nobodyWords = { path: ['forWhom'], error: 'Write for whom, or find them by a few letters.' };

/** A hold as the form sends it. */
export const holdInput = z
  .object({
    ...{ requestKey: z.uuid(), skuId: z.uuid(), placeId: z.uuid(), ...who },
    ...{ quantity: piecesInput, editionNumber: editionNumberInput },
    ...{ untilOn: dayInput, untilTime: timeInput, note: noteInput },
  })
  .refine(somebody, nobodyWords);

/** See {@link holdInput}. */
export type HoldInput = z.output<typeof holdInput>;

/** A touch on one hold: it was called about, or it is let go, or goes onto a slip. */
export const holdTouchInput = z.object({ requestKey: z.uuid(), holdId: z.uuid() });

/** See {@link holdTouchInput}. */
export type HoldTouchInput = z.output<typeof holdTouchInput>;

/** A hold that is made longer, until a day and an hour. */
export const holdLongerInput = holdTouchInput.extend({ untilOn: dayInput, untilTime: timeInput });

/** See {@link holdLongerInput}. */
export type HoldLongerInput = z.output<typeof holdLongerInput>;

/** Somebody who waits for a piece: second in line, or to be told when it is back. */
export const waitInput = z
  .object({
    ...{ requestKey: z.uuid(), skuId: z.uuid(), ...who, note: noteInput },
    what: z.enum(['second_in_line', 'back_again'], { error: 'Choose what they wait for.' }),
  })
  .refine(somebody, nobodyWords);

/** See {@link waitInput}. */
export type WaitInput = z.output<typeof waitInput>;

/** A touch on somebody who waits. */
export const waitingTouchInput = z.object({ requestKey: z.uuid(), waitingId: z.uuid() });

/** See {@link waitingTouchInput}. */
export type WaitingTouchInput = z.output<typeof waitingTouchInput>;

/** A touch on a piece that was sold and still hangs here. */
export const collectedInput = z.object({ requestKey: z.uuid(), saleLineId: z.uuid() });

/** See {@link collectedInput}. */
export type CollectedInput = z.output<typeof collectedInput>;
