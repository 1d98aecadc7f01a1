import { z } from 'zod';
import { centsInput, percentInput } from '@/lib/money/input';

const linesMost = 100;
const reasonMost = 300;

const reason = z
  .string()
  .transform((text) => text.replace(/\s+/g, ' ').trim())
  .refine((text) => text.length > 0, 'Say why it came back, in a few words.')
  .refine((text) => text.length <= reasonMost, `Keep it to ${reasonMost} letters, please.`);

const lineId = z.uuid();

/** How many of a line come back; empty is none. */
const piecesInput = z
  .string()
  .trim()
  .regex(/^\d{0,5}$/, 'Write a whole number of pieces.')
  .transform(Number);

const places = ['shelf', 'second', 'broken', 'nothing'] as const;
const placeInput = z.enum(places, { error: 'Say what becomes of it.' });
const flawInput = z
  .string()
  .transform((text) => text.replace(/\s+/g, ' ').trim())
  .refine((text) => text.length <= 120, 'Say it in fewer words: they stand on the tag.');
const numberInput = z
  .union([z.string(), z.array(z.string()).max(linesMost)])
  .transform((chosen) => [chosen].flat().map(Number));

/**
 * What is brought back, as the page of a receipt sends it: fields named by line, `pieces.ID`,
 * `to.ID`, `flaw.ID`, `number.ID`, and by tender, `refund.ID`.
 */
export const takeBackInput = z
  .object({
    requestKey: z.uuid(),
    saleNumber: z
      .string()
      .regex(/^[1-9]\d{0,8}$/)
      .transform(Number),
    kind: z.enum(['returned', 'exchanged'], { error: 'Say whether it is exchanged.' }),
    how: z.enum(['same_way', 'store_credit'], { error: 'Say how the money goes back.' }),
    feePercent: percentInput.default('0'),
    reason,
  })
  .catchall(z.union([z.string(), z.array(z.string())]))
  .transform((form, context) => {
    const { requestKey, saleNumber, kind, how, feePercent, reason: why, ...rest } = form;
    const fields = readFields(rest, context);
    return { requestKey, saleNumber, kind, how, feePercent, reason: why, ...fields };
  });

/** See {@link takeBackInput}. */
export type TakeBackInput = z.output<typeof takeBackInput>;

/** A sale of today that is struck out. */
export const strikeOutInput = z.object({
  requestKey: z.uuid(),
  saleNumber: z
    .string()
    .regex(/^[1-9]\d{0,8}$/)
    .transform(Number),
  reason,
});

/** See {@link strikeOutInput}. */
export type StrikeOutInput = z.output<typeof strikeOutInput>;

type Fields = Record<string, string | string[]>;
type Context = z.core.$RefinementCtx;

function readFields(fields: Fields, context: Context) {
  const ids = new Set(
    Object.keys(fields).flatMap((name) => (name.startsWith('pieces.') ? [name.slice(7)] : [])),
  );
  const lines = [...ids].slice(0, linesMost).flatMap((id) => {
    if (!lineId.safeParse(id).success) return [];
    const pieces = readField(piecesInput, `pieces.${id}`, { fields, context, otherwise: 0 });
    const numbers = readField(numberInput, `number.${id}`, { fields, context, otherwise: [] });
    const to = readField(placeInput, `to.${id}`, { fields, context, otherwise: 'nothing' });
    const flaw = readField(flawInput, `flaw.${id}`, { fields, context, otherwise: '' });
    const count = numbers.length > 0 ? numbers.length : pieces;
    return count === 0 ? [] : [{ lineId: id, pieces: count, numbers, to, flaw }];
  });
  const refunds = Object.keys(fields).flatMap((name) => {
    if (!name.startsWith('refund.') || fields[name] === '') return [];
    const amountCents = readField(centsInput, name, { fields, context, otherwise: 0n });
    return [{ tenderId: name.slice(7), amountCents }];
  });
  return { lines, refunds };
}

function readField<Schema extends z.ZodType>(
  schema: Schema,
  name: string,
  from: { fields: Fields; context: Context; otherwise: z.output<Schema> },
): z.output<Schema> {
  if (!(name in from.fields)) return from.otherwise;
  const read = schema.safeParse(from.fields[name]);
  if (read.success) return read.data;
  const message = read.error.issues[0]?.message ?? 'Please look at this again.';
  from.context.addIssue({ code: 'custom', path: [name], message });
  return from.otherwise;
}
