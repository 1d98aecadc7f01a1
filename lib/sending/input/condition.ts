import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { conditionMost } from '@/lib/sending/rules/condition';

const pictures = z
  .union([z.instanceof(File).transform((file) => [file]), z.array(z.instanceof(File))])
  .prefault([] as File[]);

/** The form that says how a piece looks: words, and pictures. */
export const conditionInput = z.object({
  requestKey: z.uuid(),
  shipmentId: z.uuid(),
  when: z.enum(['out', 'in', 'hand_over'], { error: 'Choose when it was looked at.' }),
  on: dayInput,
  words: z
    .string()
    .trim()
    .min(1, 'Write how it looks; “nothing to see” is an answer too.')
    .max(2_000, 'At most 2000 characters, please.'),
  pictures,
});

const place = z
  .union([
    z.literal('').transform(() => null),
    z
      .string()
      .regex(/^\d{1,4}$/)
      .transform(Number)
      .refine((at) => at <= 1_000),
  ])
  .prefault('');
const words = z.string().trim().max(400, 'At most 400 characters, please.').prefault('');

/** The form that sets marks on a picture: `spotX1`, `spotY1`, `spotWords1` and so on. */
export const marksInput = z
  .object({ requestKey: z.uuid(), viewId: z.uuid() })
  .catchall(z.unknown())
  .transform((form, context) => {
    const rows = Array.from({ length: conditionMost.marksAtOnce }, (_, at) => {
      const row = z.object({ x: place, y: place, words }).safeParse({
        x: form[`spotX${at + 1}`],
        y: form[`spotY${at + 1}`],
        words: form[`spotWords${at + 1}`],
      });
      if (row.success) return row.data;
      context.addIssue({
        code: 'custom',
        path: [`spotWords${at + 1}`],
        message: 'At most 400 characters, please.',
      });
      return { x: null, y: null, words: '' };
    });
    const { requestKey, viewId } = form;
    return { requestKey, viewId, rows };
  });

/** See {@link conditionInput}. */
export type ConditionInput = z.output<typeof conditionInput>;
/** See {@link marksInput}. */
export type MarksInput = z.output<typeof marksInput>;
