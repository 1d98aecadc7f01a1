import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { lossCauses } from '@/lib/studio/rules/jobs/losing';

/** The most pieces that travel as one job. */
export const jobPiecesMax = 2_000;

const pieces = z
  .string()
  .trim()
  .regex(/^\d{1,5}$/, 'Write how many pieces, such as 24.')
  .transform(Number)
  .refine((count) => count >= 1 && count <= jobPiecesMax, {
    message: `A job has between 1 and ${jobPiecesMax} pieces.`,
  });

/** A position of a route, from an address or a form. */
export const positionInput = z
  .string()
  .regex(/^\d{1,2}$/, 'Choose a step of the route.')
  .transform(Number);

/** Pieces going on to the next step, from the studio's page. */
export const moveJobInput = z.strictObject({
  requestKey: z.uuid(),
  jobId: z.uuid(),
  fromPosition: positionInput,
  pieces,
  partIds: z.array(z.uuid()).max(jobPiecesMax).optional(),
});
/** What {@link moveJobInput} reads. */
export type MoveJobInput = z.output<typeof moveJobInput>;

/** Pieces that were lost. */
export const losePiecesInput = moveJobInput.extend({
  cause: z.enum(lossCauses, { message: 'Say why.' }),
  note: z.string().trim().max(300, 'Say it in fewer words.').default(''),
});
/** What {@link losePiecesInput} reads. */
export type LosePiecesInput = z.output<typeof losePiecesInput>;

/** Spare pieces that are begun besides. */
export const beginAnewInput = z.strictObject({ requestKey: z.uuid(), jobId: z.uuid(), pieces });
/** What {@link beginAnewInput} reads. */
export type BeginAnewInput = z.output<typeof beginAnewInput>;

/** Taking a move back. */
export const undoMoveInput = z.strictObject({
  requestKey: z.uuid(),
  moveId: z.string().regex(/^\d{1,18}$/, 'That move is not in the studio’s list.'),
});
/** What {@link undoMoveInput} reads. */
export type UndoMoveInput = z.output<typeof undoMoveInput>;

/** A job of the studio's own: pieces for stock, or something that is only tried. */
export const openJobInput = z.strictObject({
  requestKey: z.uuid(),
  title: z
    .string()
    .trim()
    .min(2, 'Write what is made, such as Tern over Shoals, 10 × 10.')
    .max(120, 'Say it in fewer words.'),
  routeId: z.uuid('Choose how it is made.'),
  wanted: pieces,
  pieces,
  skuId: z.union([z.literal('').transform(() => null), z.uuid()]).default(null),
  neededOn: z.union([z.literal('').transform(() => null), dayInput]).default(null),
});
/** What {@link openJobInput} reads. */
export type OpenJobInput = z.output<typeof openJobInput>;

/** The id of a route, from an address or a form. */
export const routeIdInput = z.uuid();

/** The number of a job, from an address. */
export const jobNumberInput = z
  .string()
  .regex(/^[1-9]\d{0,8}$/)
  .transform(Number);
