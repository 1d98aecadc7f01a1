import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';

const text = (most: number) =>
  z.string().trim().max(most, `At most ${most} characters, please.`).prefault('');

const happened = { requestKey: z.uuid(), shipmentId: z.uuid(), on: dayInput, words: text(1_000) };

/** The longest drawing that is taken in, as the text that a browser makes of it. */
const drawingMost = 2_000_000;

/** The form that says what became of a shipment. Which fields count depends on what happened. */
export const wayInput = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('packed'), ...happened }),
  z.object({ kind: z.literal('sent'), ...happened, tracking: text(80) }),
  z.object({ kind: z.literal('arrived'), ...happened, takenBy: text(120) }),
  z.object({
    kind: z.literal('fetched'),
    ...happened,
    signedName: z
      .string()
      .trim()
      .min(1, 'Write who fetched it.')
      .max(120, 'At most 120 characters, please.'),
    signedCapacity: text(120),
    signedAs: z.enum(['typed', 'drawn', 'on_paper']).prefault('typed'),
    drawing: z
      .string()
      .max(drawingMost, 'The drawing is too large. Clear it and sign again.')
      .prefault(''),
  }),
  z.object({
    kind: z.literal('called_off'),
    ...happened,
    words: z.string().trim().min(1, 'Write why.').max(1_000, 'At most 1000 characters, please.'),
  }),
  z.object({
    kind: z.literal('noted'),
    ...happened,
    words: z
      .string()
      .trim()
      .min(1, 'Write what there is to note.')
      .max(1_000, 'At most 1000 characters, please.'),
    tracking: text(80),
  }),
]);

/** See {@link wayInput}. */
export type WayInput = z.output<typeof wayInput>;
