import { z } from 'zod';
import { lengthInput } from '@/lib/units/input';

const size = z.union([z.literal('').transform(() => null), lengthInput]).default(null);

/** Something of which a day is asked, from an address. */
export const askDayInput = z.object({
  routeId: z.uuid('Choose how it is made.'),
  pieces: z
    .string()
    .trim()
    .regex(/^[1-9]\d{0,2}$|^1000$/, 'Write how many pieces, from 1 to 1000.')
    .transform(Number),
  widthUm: size,
  heightUm: size,
  depthUm: size,
  answersFirst: z
    .enum(['yes', 'no'])
    .default('no')
    .transform((answer) => answer === 'yes'),
});
/** What {@link askDayInput} reads. */
export type AskDayInput = z.output<typeof askDayInput>;

/** The day that was looked up, kept with a commission's proposal. */
export const keepAskedInput = askDayInput.extend({
  requestKey: z.uuid(),
  commissionId: z.uuid(),
});
/** What {@link keepAskedInput} reads. */
export type KeepAskedInput = z.output<typeof keepAskedInput>;
