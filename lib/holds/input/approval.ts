import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { centsInput } from '@/lib/money/input';
import { noteInput } from '../input';

/** The most pictures that go with a slip at once. */
const picturesMost = 8;
const chosenLengthMost = 800;

const pictures = z
  .preprocess(listOf, z.array(z.instanceof(Blob, { error: 'Choose a picture.' })))
  .transform((chosen) => chosen.filter((picture) => picture.size > 0))
  .refine((chosen) => chosen.length <= picturesMost, {
    message: `Bring in at most ${picturesMost} pictures at once.`,
  });

/** Pieces that somebody takes home to try; the pieces as `readChosen` reads them. */
export const giveInput = z.object({
  ...{ requestKey: z.uuid(), collectorId: z.uuid('Say who takes it home.') },
  pieces: z.string().max(chosenLengthMost),
  holdId: z.union([z.uuid(), z.literal('')]).prefault(''),
  ...{ dueOn: dayInput, value: centsInput, condition: noteInput, security: noteInput, pictures },
});

/** See {@link giveInput}. */
export type GiveInput = z.output<typeof giveInput>;

const backName = /^back-(\d{1,2})$/;

/**
 * What comes back of a slip, and whether they keep and pay for it: a field `back-2` says how many
 * came back of the second line; nothing written is none.
 */
export const backInput = z
  .looseObject({
    ...{ requestKey: z.uuid(), approvalId: z.uuid() },
    what: z.enum(['back', 'bought'], { error: 'Say whether it came back or was bought.' }),
    ...{ condition: noteInput, pictures },
  })
  .transform(({ requestKey, approvalId, what, condition, pictures: brought, ...rest }, context) => {
    const comes = Object.entries(rest).flatMap(([name, typed]) => {
      const position = Number(backName.exec(name)?.[1] ?? '0');
      if (position === 0 || typeof typed !== 'string') return [];
      const count = typed.trim();
      if (/^\d{0,3}$/.test(count)) return [{ position, quantity: Number(count) }];
      context.addIssue({ code: 'custom', path: [name], message: 'Write how many, in figures.' });
      return [];
    });
    return { requestKey, approvalId, what, condition, pictures: brought, comes };
  });

/** See {@link backInput}. */
export type BackInput = z.output<typeof backInput>;

function listOf(sent: unknown): unknown[] {
  if (sent === undefined) return [];
  return Array.isArray(sent) ? (sent as unknown[]) : [sent];
}
