import { z } from 'zod';
import { saidLine } from '@/lib/commissions/input/atoms';
import { drawingMost } from '@/lib/commissions/input/signature';
import { dayInput } from '@/lib/dates/input';
import { workItemKeys } from '@/lib/installation/rules/work/items';
import { saidKeys } from '@/lib/installation/rules/work/ticks';
import { mostG } from '@/lib/units/rules';

/** What every entry of a device says: its own key, whose it is, and when, by the device's clock. */
const kept = {
  id: z.uuid(),
  appointmentId: z.uuid(),
  /** Who was signed in on the device. */
  madeById: z.uuid(),
  at: z.iso.datetime().transform((text) => new Date(text)),
};

const words = z.string().trim().max(1_000, 'Keep it to 1,000 letters.').prefault('');

/** The most letters of what stands above a signature. */
const readMost = 12_000;

const entries = [
  z.strictObject({
    ...kept,
    did: z.literal('tick'),
    item: z.enum([...workItemKeys, ...saidKeys, 'note']),
    isDone: z.boolean(),
    words,
  }),
  z.strictObject({
    ...kept,
    did: z.literal('weigh'),
    weightG: z.int().positive('A weight has to be more than zero.').max(mostG),
    words,
  }),
  z.strictObject({
    ...kept,
    did: z.literal('picture'),
    of: z.enum(['fixings', 'in_place']),
    words,
  }),
  z.strictObject({
    ...kept,
    did: z.literal('snag'),
    words: saidLine('Say what is to be put right.', 600),
    mendById: z.uuid('Choose who puts it right.'),
    mendByOn: dayInput,
  }),
  z.strictObject({
    ...kept,
    did: z.literal('sign'),
    signedName: saidLine('Write your name, as you sign.', 120),
    signedCapacity: z.string().trim().max(120, 'Keep it to 120 letters.').prefault(''),
    signedAs: z.enum(['typed', 'drawn']),
    drawing: z.string().max(drawingMost).prefault(''),
    parts: z.int().positive().max(9_999).nullable(),
    fixings: words,
    careGiven: z.boolean(),
    remarks: z.string().trim().max(4_000, 'Keep it to 4,000 letters.').prefault(''),
    /** The day that stood above the signature. */
    readOn: dayInput,
    /** Word for word what stood above it. */
    read: z.string().min(1).max(readMost),
  }),
] as const;

/** What a device kept of a work order, and sends once there is a line. */
export const workEntryInput = z.discriminatedUnion('did', entries);

/** What {@link workEntryInput} reads. */
export type WorkEntry = z.output<typeof workEntryInput>;

/** One of them by what was done. */
export type WorkEntryOf<Did extends WorkEntry['did']> = Extract<WorkEntry, { did: Did }>;

/** An entry as it is kept on the device and sent. */
export type WorkEntrySent = z.input<typeof workEntryInput>;
