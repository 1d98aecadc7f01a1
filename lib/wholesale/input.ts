import { z } from 'zod';
import { typedPiecesInput } from '@/lib/catalogue/input/typed-pieces';
import { dayInput } from '@/lib/dates/input';
import { centsInput, percentInput } from '@/lib/money/input';
import { parseDecimal } from '@/lib/money/rules/decimal';

const netDaysMost = 365;
const noteMost = 1_000;

const dayOrNone = z.union([
  z
    .string()
    .trim()
    .length(0)
    .transform(() => null),
  dayInput,
]);

const netDays = z
  .string()
  .trim()
  .regex(/^\d{1,3}$/, 'Write a whole number of days; 0 means that it is paid before it leaves.')
  .transform(Number)
  .refine((days) => days <= netDaysMost, `At most ${netDaysMost} days.`);

const pricePercent = percentInput
  .refine((text) => (parseDecimal(text)?.units ?? 0n) > 0n, 'Write more than 0.')
  .refine((text) => (parseDecimal(text)?.scale ?? 0) <= 2, 'At most two figures after the point.');

/** A shop's order as its form sends it; the id of the order when it is changed. */
export const keepOrderInput = z.object({
  requestKey: z.uuid(),
  orderId: z
    .union([z.literal(''), z.uuid()])
    .default('')
    .transform((id) => (id === '' ? null : id)),
  shopId: z.uuid({ error: 'Choose the shop.' }),
  pieces: typedPiecesInput,
  pricePercent,
  netDays,
  shipOn: dayOrNone.default(null),
  theirNumber: z.string().trim().max(40, 'Their number has at most 40 signs.').default(''),
  terms: z.string().trim().max(noteMost, 'The terms have at most 1,000 signs, please.').default(''),
});

/** See {@link keepOrderInput}. */
export type KeepOrderInput = z.output<typeof keepOrderInput>;

/** An order that leaves: from where, freight at what it cost, and money that came first. */
export const shipOrderInput = z.object({
  requestKey: z.uuid(),
  orderId: z.uuid(),
  fromId: z.uuid({ error: 'Choose where they come from.' }),
  freight: z
    .string()
    .trim()
    .transform((text) => (text === '' ? '0' : text))
    .pipe(centsInput)
    .default(0n),
  paidBy: z.enum(['', 'cheque', 'bank_transfer', 'card', 'cash']).default(''),
  reference: z.string().trim().max(60, 'A reference has at most 60 signs.').default(''),
});

/** See {@link shipOrderInput}. */
export type ShipOrderInput = z.output<typeof shipOrderInput>;

/** An order that ends without leaving, and why. */
export const cancelOrderInput = z.object({
  requestKey: z.uuid(),
  orderId: z.uuid(),
  why: z.string().trim().min(1, 'Say why, in a few words.').max(400, 'At most 400 signs, please.'),
});

/** See {@link cancelOrderInput}. */
export type CancelOrderInput = z.output<typeof cancelOrderInput>;

/** A promise that no other shop of a town gets our pieces; without an end it holds on. */
export const promiseTownInput = z
  .object({
    requestKey: z.uuid(),
    shopId: z.uuid(),
    town: z.string().trim().min(1, 'Write the town.').max(80, 'A town has at most 80 signs.'),
    state: z.string().trim().min(1, 'Write the state.').max(40, 'A state has at most 40 signs.'),
    fromOn: dayInput,
    untilOn: dayOrNone.default(null),
  })
  .refine(({ fromOn, untilOn }) => untilOn === null || untilOn > fromOn, {
    path: ['untilOn'],
    message: 'The promise ends after it begins.',
  });

/** See {@link promiseTownInput}. */
export type PromiseTownInput = z.output<typeof promiseTownInput>;

/** A promise that ends today. */
export const endPromiseInput = z.object({ requestKey: z.uuid(), promiseId: z.uuid() });

/** See {@link endPromiseInput}. */
export type EndPromiseInput = z.output<typeof endPromiseInput>;

/** The number of an order in an address. */
export const orderNumberInput = z.coerce.number().int().min(1).max(2_000_000_000);
