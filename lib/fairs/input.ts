import { z } from 'zod';
import { typedPiecesInput } from '@/lib/catalogue/input/typed-pieces';
import { dayInput } from '@/lib/dates/input';
import { centsInput } from '@/lib/money/input';
import { hoursRefusalMessage, readHours } from './rules';

/** A fair lasts at most so many days. */
const daysMost = 60;
/** The most rows that a count sends. */
const rowsMost = 1_000;
const piecesMost = 9_999;

const costInput = z
  .string()
  .trim()
  .transform((text) => (text === '' ? '0' : text))
  .pipe(centsInput);

const hoursInput = z.string().transform((text, context) => {
  const read = readHours(text);
  if (read.ok) return read.value;
  context.addIssue({ code: 'custom', message: hoursRefusalMessage(read.refusal) });
  return z.NEVER;
});

/** A fair as its form sends it: name, town, days, tax place, what it cost, hours worked. */
export const keepFairInput = z
  .object({
    requestKey: z.uuid(),
    /** Null for a new one. */
    fairId: z
      .union([z.literal(''), z.uuid()])
      .default('')
      .transform((id) => (id === '' ? null : id)),
    name: z
      .string()
      .trim()
      .min(1, 'Write the name of the fair.')
      .max(80, 'A name has at most 80 signs.'),
    town: z.string().trim().max(80, 'A town has at most 80 signs.').default(''),
    taxPlaceId: z.uuid({ error: 'Choose the place whose sales tax holds at the fair.' }),
    fromOn: dayInput,
    untilOn: dayInput,
    feeCents: costInput.default(0n),
    travelCents: costInput.default(0n),
    otherCents: costInput.default(0n),
    minutes: hoursInput.default(0),
    note: z.string().trim().max(1_000, 'A note has at most 1,000 signs, please.').default(''),
  })
  .check((context) => {
    const { fromOn, untilOn } = context.value;
    const message =
      untilOn < fromOn
        ? 'The last day comes before the first.'
        : daysApart(fromOn, untilOn) > daysMost
          ? 'A fair lasts at most 60 days.'
          : null;
    if (message === null) return;
    context.issues.push({ code: 'custom', path: ['untilOn'], message, input: untilOn });
  });

function daysApart(fromOn: string, untilOn: string): number {
  return (Date.parse(untilOn) - Date.parse(fromOn)) / 86_400_000;
}

/** See {@link keepFairInput}. */
export type KeepFairInput = z.output<typeof keepFairInput>;

/** Pieces that go to a fair: scanned or written, from one of our places. */
export const takeToFairInput = z.object({
  requestKey: z.uuid(),
  fairId: z.uuid(),
  fromId: z.uuid({ error: 'Choose where they come from.' }),
  pieces: typedPiecesInput,
});

/** See {@link takeToFairInput}. */
export type TakeToFairInput = z.output<typeof takeToFairInput>;

/** The price of a piece at a fair; left empty, it costs there what it costs at home. */
export const fairPriceInput = z.object({
  requestKey: z.uuid(),
  fairId: z.uuid(),
  skuId: z.uuid({ error: 'Choose a piece.' }),
  price: z.union([
    z
      .string()
      .trim()
      .length(0)
      .transform(() => null),
    centsInput,
  ]),
});

/** See {@link fairPriceInput}. */
export type FairPriceInput = z.output<typeof fairPriceInput>;

const pieces = z
  .string()
  .trim()
  .transform((text) => (text === '' ? '0' : text))
  .pipe(z.string().regex(/^\d{1,4}$/, 'Write a whole number of pieces.'))
  .transform(Number)
  .refine((count) => count <= piecesMost);

const countParts = ['seen', 'back', 'broken', 'missing', 'soldUnwritten'] as const;
const rowKey = /^[0-9a-f-]{36}(?:#\d{1,5})?$/;

/**
 * A count as its form sends it: for each row of the take list the fields `seen.KEY`, `back.KEY`,
 * `broken.KEY`, `missing.KEY` and `soldUnwritten.KEY`.
 */
export const countFairInput = z
  .object({
    requestKey: z.uuid(),
    fairId: z.uuid(),
    toId: z.uuid({ error: 'Choose where they go.' }),
  })
  .catchall(z.string().max(20))
  .transform(({ requestKey, fairId, toId, ...fields }, context) => {
    const keys = Object.keys(fields)
      .filter((name) => name.startsWith('seen.'))
      .map((name) => name.slice('seen.'.length))
      .filter((key) => rowKey.test(key));
    if (keys.length > rowsMost) {
      context.addIssue({ code: 'custom', message: 'Those are too many rows for one count.' });
      return z.NEVER;
    }
    const rows = keys.map((key) => {
      const counts = countParts.map((part) => {
        const name = `${part}.${key}`;
        const read = pieces.safeParse(fields[name] ?? '');
        if (read.success) return read.data;
        const message = 'Write a whole number of pieces.';
        context.addIssue({ code: 'custom', path: [name], message });
        return 0;
      });
      const [seen = 0, back = 0, broken = 0, missing = 0, soldUnwritten = 0] = counts;
      return { key, seen, back, broken, missing, soldUnwritten };
    });
    return { requestKey, fairId, toId, rows };
  });

/** See {@link countFairInput}. */
export type CountFairInput = z.output<typeof countFairInput>;

/** The number of a fair in an address. */
export const fairNumberInput = z.coerce.number().int().min(1).max(2_000_000_000);
