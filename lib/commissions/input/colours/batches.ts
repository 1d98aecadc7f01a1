import { z } from 'zod';
import { known, saidLine } from '@/lib/commissions/input/atoms';
import { dayInput } from '@/lib/dates/input';
import { weightInput } from '@/lib/units/input';

/** The form that writes a bucket of glaze down. */
export const writeBatchInput = z
  .strictObject({
    requestKey: z.uuid(),
    number: saidLine('Write the number on its label.', 40),
    /** Its name; may stay empty where it is one of the book. */
    glaze: z.string().trim().max(120, 'Keep it to 120 letters.').prefault(''),
    /** The glaze of the book, and the recipe where that is known: `id` or `id/id`. */
    inBook: known(
      z.string().regex(/^[0-9a-f-]{36}(\/[0-9a-f-]{36})?$/, 'Choose the glaze once more.'),
    ),
    mixedOn: dayInput,
    weightG: known(weightInput),
    note: z.string().trim().max(600, 'Keep it to 600 letters.').prefault(''),
  })
  .refine(({ glaze, inBook }) => glaze !== '' || inBook !== null, {
    path: ['glaze'],
    message: 'Write which glaze it is, or choose one of the book.',
  })
  .transform(({ inBook, ...batch }) => {
    const [glazeId = null, recipeId = null] = inBook?.split('/') ?? [];
    return { ...batch, glazeId, recipeId };
  });

/** What writing a bucket down takes. */
export type WriteBatchInput = z.output<typeof writeBatchInput>;

/** The form that lets a bucket go which is kept for a commission. */
export const releaseBatchInput = z.strictObject({
  requestKey: z.uuid(),
  batchId: z.uuid({ error: 'Choose the bucket.' }),
  why: saidLine('Say why, in a few words.', 600).min(3, 'Say why, in a few words.'),
});

/** What letting a bucket go takes. */
export type ReleaseBatchInput = z.output<typeof releaseBatchInput>;
