import { z } from 'zod';
import { saidLine } from '@/lib/commissions/input/atoms';
import { linkDays } from './link';

/** A letter to the collector, as it was written over. */
export const sendLetterInput = z.strictObject({
  requestKey: z.uuid(),
  commissionId: z.uuid(),
  toName: saidLine('Write to whom it goes.', 120),
  toAddress: z.email('Write a mail address, such as wren@example.org.').max(254),
  subject: saidLine('Write what it is about.', 160),
  words: z.string().trim().min(1, 'Write the letter.').max(8_000, 'Keep it to 8,000 letters.'),
  /** Puts a new address of the page under the words. */
  withAddress: z.enum(['yes', 'no']).prefault('no'),
  days: linkDays,
  /** The collector said no to letters, and asked for this one. */
  allTheSame: z.enum(['yes', 'no']).prefault('no'),
});
/** What {@link sendLetterInput} reads. */
export type SendLetterInput = z.output<typeof sendLetterInput>;
