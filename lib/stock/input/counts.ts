import { z } from 'zod';
import { differenceWhys, type DifferenceWhy } from '../rules/moves/count';

/** The most of one piece that a count takes. */
export const countedMost = 100_000;

/** The form that begins a count. */
export const beginCountInput = z.object({
  requestKey: z.uuid(),
  placeId: z.uuid({ error: 'Choose the place that is counted.' }),
  how: z.enum(['all', 'part'], { error: 'Say whether all of it is counted, or a part.' }),
});

/** One scan: a SKU or a barcode; for an edition with its number behind it, `CODE 7`. */
export const scanInput = z.object({
  requestKey: z.uuid(),
  countId: z.uuid(),
  code: z
    .string()
    .trim()
    .min(1, 'Scan a piece, or type its number.')
    .max(80, 'That is longer than any code of ours.'),
});

/** How many of a piece there are in all, instead of scanning each. */
export const setCountedInput = z.object({
  requestKey: z.uuid(),
  countId: z.uuid(),
  skuId: z.uuid(),
  counted: z
    .string()
    .trim()
    .regex(/^\d{1,6}$/, 'Write a whole number of pieces.')
    .transform(Number)
    .refine((pieces) => pieces <= countedMost, 'That is more than a gallery holds.'),
});

/** That an edition's number was counted by mistake. */
export const unseeNumberInput = z.object({
  requestKey: z.uuid(),
  countId: z.uuid(),
  skuId: z.uuid(),
  number: z.coerce.number().int().min(1).max(10_000),
});

/** The form that leaves a count without booking it. */
export const leaveCountInput = z.object({ requestKey: z.uuid(), countId: z.uuid() });

const why = z.enum(
  differenceWhys.map((each) => each.why),
  { error: 'Choose one of these.' },
);

const bookForm = z.looseObject({
  requestKey: z.uuid(),
  countId: z.uuid(),
  /** The differences as they were shown, so that exactly those are booked. */
  shownSha256: z.string().regex(/^[0-9a-f]{64}$/),
  /** For every difference that has no reason of its own. */
  whyForAll: z.union([why, z.literal('')]).prefault(''),
});

/** The form that books a count: `why.<SKU id>` for each difference. */
export const bookCountInput = bookForm.transform((form, context) => {
  const whys = new Map<string, DifferenceWhy>();
  for (const [name, said] of Object.entries(form)) {
    if (!name.startsWith('why.') || said === '') continue;
    const read = why.safeParse(said);
    if (!read.success) {
      context.addIssue({ code: 'custom', path: [name], message: 'Choose one of these.' });
      continue;
    }
    whys.set(name.slice('why.'.length), read.data);
  }
  const { requestKey, countId, shownSha256, whyForAll } = form;
  return { requestKey, countId, shownSha256, whyForAll, whys: Object.fromEntries(whys) };
});

/** See {@link beginCountInput}. */
export type BeginCountInput = z.output<typeof beginCountInput>;
/** See {@link scanInput}. */
export type ScanInput = z.output<typeof scanInput>;
/** See {@link setCountedInput}. */
export type SetCountedInput = z.output<typeof setCountedInput>;
/** See {@link unseeNumberInput}. */
export type UnseeNumberInput = z.output<typeof unseeNumberInput>;
/** See {@link leaveCountInput}. */
export type LeaveCountInput = z.output<typeof leaveCountInput>;
/** See {@link bookCountInput}. */
export type BookCountInput = z.output<typeof bookCountInput>;
