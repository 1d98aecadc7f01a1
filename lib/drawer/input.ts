import { z } from 'zod';
import { centsInput, someCentsInput } from '@/lib/money/input';
import { notesAndCoins, type PiecesOfMoney } from './rules';

const piecesMost = 9_999;

const piecesInput = z
  .string()
  .trim()
  .regex(/^\d{0,4}$/, `Write a whole number of pieces, at most ${piecesMost}.`)
  .transform(Number)
  .default(0);

const pieceFields = Object.fromEntries(
  notesAndCoins.map(({ cents }) => [pieceField(cents), piecesInput]),
);

/** The name of the field that counts one note or coin. */
export function pieceField(cents: number): string {
  return `pieces${cents}`;
}

const shortText = z
  .string()
  .transform((text) => text.replace(/\s+/g, ' ').trim())
  .refine((text) => text.length <= 200, 'Keep it to 200 letters, please.');

const emptyIsNull = z.literal('').transform(() => null);

/** The drawer as it was counted. */
export const countDrawerInput = z
  .object({
    requestKey: z.uuid(),
    shown: z
      .string()
      .regex(/^-?\d{1,15}$/)
      .transform(BigInt),
    float: centsInput,
    reason: shortText.default(''),
    cardTotal: z.union([emptyIsNull, centsInput]).default(null),
  })
  .catchall(z.string())
  .transform((form, context) => {
    const { requestKey, shown, float, reason, cardTotal, ...rest } = form;
    const read = z.object(pieceFields).safeParse(rest);
    if (!read.success) {
      for (const { path, message } of read.error.issues) {
        context.addIssue({ code: 'custom', path, message });
      }
      return z.NEVER;
    }
    const typed = Object.keys(pieceFields).some((name) => (rest[name] ?? '').trim() !== '');
    if (!typed) {
      const message = 'Count the drawer first; write 0 if there is nothing in it.';
      context.addIssue({ code: 'custom', path: [pieceField(10_000)], message });
      return z.NEVER;
    }
    const pieces: PiecesOfMoney = Object.fromEntries(
      notesAndCoins
        .map(({ cents }): [string, number] => [String(cents), read.data[pieceField(cents)] ?? 0])
        .filter(([, count]) => count > 0),
    );
    const counted = { pieces, reason, floatCents: float, cardTotalCents: cardTotal };
    return { requestKey, shownCents: shown, ...counted };
  });

/** See {@link countDrawerInput}. */
export type CountDrawerInput = z.output<typeof countDrawerInput>;

/** Cash taken out of the drawer for something small, or put in. */
export const pettyCashInput = z.object({
  requestKey: z.uuid(),
  way: z.enum(['out', 'in'], { error: 'Say whether it was taken out or put in.' }),
  amount: someCentsInput,
  what: shortText.refine((text) => text.length > 0, 'Say what it is for, such as stamps.'),
});

/** See {@link pettyCashInput}. */
export type PettyCashInput = z.output<typeof pettyCashInput>;
