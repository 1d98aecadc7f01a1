import { z } from 'zod';
import { fileKinds } from './rules/plan';

/** A file as the form sends it. */
export const lookAtFileInput = z.object({
  requestKey: z.uuid(),
  kind: z.enum(fileKinds),
  file: z.instanceof(File, { message: 'Choose the file first.' }),
});

/** The yes to a file that was looked at. */
export const bringInInput = z.object({
  requestKey: z.uuid(),
  loadId: z.uuid(),
  planSha256: z.string().regex(/^[0-9a-f]{64}$/),
  /** How many lines were refused when it was looked at. */
  refusedLines: z.coerce.number().int().min(0),
  leaveRefusedOut: z.literal('yes').optional(),
});

/** The wish to stop a file that is being brought in. */
export const stopLoadInput = z.object({ requestKey: z.uuid(), loadId: z.uuid() });

/** The page of a file's lines, from its address. */
export const linesPageInput = z.object({
  page: z.coerce.number().int().min(1).max(10_000).catch(1).default(1),
});
