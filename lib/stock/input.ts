import { z } from 'zod';
import { correctionReasons } from './rules/correction';

/** The longest name of a file that is kept. */
const fileNameMost = 200;

/** A stock list as the form sends it. */
export const showListInput = z.object({
  requestKey: z.uuid(),
  file: z.instanceof(File, { message: 'Choose the file with your stock list first.' }),
});

/** The yes to a list that was looked at, or the wish to look at it once more. */
export const confirmListInput = z.object({
  requestKey: z.uuid(),
  stockListId: z.uuid(),
  planSha256: z.string().regex(/^[0-9a-f]{64}$/),
  /** How many lines were refused when it was looked at. */
  refusedLines: z.coerce.number().int().min(0),
  leaveRefusedOut: z.literal('yes').optional(),
});

/** The wish to look once more at a list whose stock has changed. */
export const lookAgainInput = z.object({ requestKey: z.uuid(), stockListId: z.uuid() });

/** The address of the stock room: what is looked for, which kind, which page. */
export const stockRoomInput = z.object({
  find: z.string().max(80).catch('').default(''),
  kind: z.string().max(20).catch('').default(''),
  page: z.coerce.number().int().min(1).max(10_000).catch(1).default(1),
});

/** The address of a page of many. */
export const pageInput = z.object({
  page: z.coerce.number().int().min(1).max(10_000).catch(1).default(1),
});

/** The name of a file as it is kept: without folders, at most 200 characters. */
export function fileNameFrom(name: string): string {
  return (name.split(/[\\/]/).at(-1) ?? '').slice(-fileNameMost) || 'stock list';
}

/** The most pieces that one line of a form moves. */
const piecesMost = 100_000;

/** That pieces came, broke, are missing, or how many were counted. */
export const correctStockInput = z.object({
  requestKey: z.uuid(),
  skuId: z.uuid(),
  reason: z.enum(correctionReasons, { error: 'Choose what happened.' }),
  pieces: z
    .string()
    .trim()
    .regex(/^\d{1,6}$/, 'Write a whole number of pieces.')
    .transform(Number)
    .refine((pieces) => pieces <= piecesMost, 'That is more than a gallery holds.'),
  /** The number of a piece of an edition, as it is written under it; empty for anything else. */
  number: z.string().trim().max(12, 'Write it as 7, or AP 2.').optional(),
  note: z.string().trim().max(200).default(''),
});

/** See {@link correctStockInput}. */
export type CorrectStockInput = z.output<typeof correctStockInput>;

/** The picture of a piece as the form sends it. */
export const bringPictureInput = z.object({
  requestKey: z.uuid(),
  skuId: z.uuid(),
  picture: z.instanceof(File, { message: 'Choose the picture first.' }),
});
