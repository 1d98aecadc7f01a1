import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { centsInput } from '@/lib/money/input';
import { techniques } from '@/lib/studio/rules/routes';
import type { signHandOverInput } from './agreement/hand-over';
import { known, saidLine } from './atoms';

const requestKey = z.uuid();
const commissionId = z.uuid();

const why = saidLine('Say why, in a few words.', 600).min(3, 'Say why, in a few words.');

/** The form by which the owner lets the making begin. */
export const letMakingBeginInput = z.strictObject({ requestKey, commissionId, why });

/** The form that ends a commission early. */
export const endCommissionInput = z.strictObject({
  requestKey,
  commissionId,
  why,
  endedOn: dayInput,
  /** What stays, when it is not what the agreement says; empty for that. */
  ownFeeCents: known(centsInput).optional(),
  /** What becomes of the pieces already made. */
  fate: z.string().trim().max(600, 'Keep it to 600 letters.').optional(),
});

const partsMost = 2_000;

const parts = z
  .string()
  .trim()
  .regex(/^\d{1,4}$/, 'Write how many parts, in figures.')
  .transform((text) => Number(text))
  .refine((count) => count >= 1 && count <= partsMost, {
    message: `From 1 to ${partsMost} parts.`,
  });

/** The form that opens the job of a commission. */
export const openCommissionJobInput = z.strictObject({
  requestKey,
  commissionId,
  technique: z.enum(techniques, {
    error: 'Say how it is made.',
  }),
  /** How many the picture has, and how many are begun with the spare ones. */
  wanted: z.union([z.literal('').transform(() => undefined), parts]).optional(),
  pieces: parts,
  neededOn: known(dayInput),
});

/** What letting the making begin takes. */
export type LetMakingBeginInput = z.output<typeof letMakingBeginInput>;

/** What ending a commission takes. */
export type EndCommissionInput = z.output<typeof endCommissionInput>;

/** What handing over takes. */
export type HandOverInput = Omit<HandOverForm, 'sign' | 'remarks' | 'evenIfOwed'> &
  Partial<Pick<HandOverForm, 'sign' | 'remarks' | 'evenIfOwed'>>;
type HandOverForm = z.output<typeof signHandOverInput>;

/** What opening its job takes. */
export type OpenCommissionJobInput = z.output<typeof openCommissionJobInput>;
