import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { centsInput } from '@/lib/money/input';
import { noteInput } from '../input';

/** The most pictures that go with a slip at once. */
const picturesMost = 8;
const chosenLengthMost = 800;
const linesMost = 20;

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

const count = z
  .string()
  .trim()
  .regex(/^\d{0,3}$/, 'Write how many came back, in figures.')
  .transform((text) => Number(text === '' ? '0' : text));
const position = z
  .string()
  .regex(/^\d{1,2}$/)
  .transform(Number);

/** What comes back of a slip: how many of each line, and whether they keep and pay for them. */
export const backInput = z
  .object({
    ...{ requestKey: z.uuid(), approvalId: z.uuid() },
    position: z.preprocess(listOf, z.array(position).max(linesMost)),
    back: z.preprocess(listOf, z.array(count).max(linesMost)),
    what: z.enum(['back', 'bought'], { error: 'Say whether it came back or was bought.' }),
    ...{ condition: noteInput, pictures },
  })
  .refine(({ position: at, back }) => at.length === back.length, {
    path: [''],
    error: 'This page is older than the slip. Load it again, please.',
  });

/** See {@link backInput}. */
export type BackInput = z.output<typeof backInput>;

function listOf(sent: unknown): unknown[] {
  if (sent === undefined) return [];
  return Array.isArray(sent) ? (sent as unknown[]) : [sent];
}
