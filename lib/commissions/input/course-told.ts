import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { weightInput } from '@/lib/units/input';
import { clocks } from '@/lib/commissions/rules/facts';
import { progressKinds } from '@/lib/commissions/rules/course/progress';
import { known, saidLine } from './atoms';

const requestKey = z.uuid();
const commissionId = z.uuid();

/** The form of a notice of delay: to which day, on whose clock, why, and how it was told. */
export const tellDelayInput = z.strictObject({
  requestKey,
  commissionId,
  toOn: dayInput,
  clock: z.enum(clocks, { error: 'Say on whose clock the days run.' }),
  why: saidLine('Say why, in a few words.', 600).min(3, 'Say why, in a few words.'),
  toldHow: saidLine('Say how they were told, such as by letter.', 160),
  toldOn: dayInput,
});

/** What a notice of delay takes. */
export type TellDelayInput = z.output<typeof tellDelayInput>;

const shortLine = z.string().trim().max(120, 'Keep it to 120 letters.').prefault('');

/** The form by which something is remembered of the making; what its kind needs has to be there. */
export const keepProgressInput = z
  .strictObject({
    requestKey,
    commissionId,
    kind: z.enum(progressKinds, { error: 'Say what it is.' }),
    words: z.string().trim().max(1_000, 'Keep it to 1,000 letters.').prefault(''),
    on: dayInput,
    picture: z.instanceof(Blob, { error: 'Choose the picture.' }).optional(),
    weightG: known(weightInput),
    firing: shortLine,
    batchId: known(z.uuid()),
    shared: z.enum(['yes', 'no']).prefault('no'),
  })
  .superRefine((said, context) => {
    const fault = (path: string, message: string) =>
      context.addIssue({ code: 'custom', path: [path], message });
    if (said.kind === 'picture' && !said.picture) fault('picture', 'Choose the picture.');
    if (said.kind === 'weight' && said.weightG === null) fault('weightG', 'Write the weight.');
    if (said.kind === 'firing' && said.firing === '')
      fault('firing', 'Write the number in the firing log.');
    if (said.kind === 'glaze_batch' && said.batchId === null) fault('batchId', 'Choose a bucket.');
    const needsWords = said.kind === 'note' || said.kind === 'fixing';
    if (needsWords && said.words === '') fault('words', 'Write it down, in a few words.');
  });

/** What remembering something takes. */
export type KeepProgressInput = z.output<typeof keepProgressInput>;

/** The form that shows something to the collector, or no longer. */
export const shareProgressInput = z.strictObject({
  requestKey,
  commissionId,
  progressId: z.uuid(),
  shared: z.enum(['yes', 'no']),
});

/** What showing it, or not, takes. */
export type ShareProgressInput = z.output<typeof shareProgressInput>;
