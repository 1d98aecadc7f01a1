import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';

/** The most lines on one slip, the most of one piece on it, and the longest words. */
export const slipMost = { lines: 60, quantity: 999, words: 120, note: 500 } as const;

const cents = z
  .string()
  .regex(/^\d{1,12}$/)
  .transform(BigInt);
const quantity = z.number().int().min(1).max(slipMost.quantity);
const words = z.string().max(slipMost.words);
const note = z.string().max(slipMost.note);

const discount = z.discriminatedUnion('way', [
  z.object({ way: z.literal('percent'), percent: z.string(), reason: words, givenById: z.uuid() }),
  z.object({ way: z.literal('amount'), cents, reason: words, givenById: z.uuid() }),
]);

/** Something taken off a line or the slip: how much, why, and who allowed it. */
export type SlipDiscount = z.output<typeof discount>;

const shared = { id: z.uuid(), discount: discount.nullable().default(null) };

const line = z.discriminatedUnion('kind', [
  z.object({
    ...shared,
    kind: z.literal('piece'),
    skuId: z.uuid(),
    quantity,
    /** Of an edition: which numbers. */
    numbers: z.array(z.number().int().min(1)).default([]),
    /** Holds that end when it is sold. */
    holdIds: z.array(z.uuid()).default([]),
    /** A special order that is handed over: its price and its deposit count. */
    orderId: z.uuid().nullable().default(null),
  }),
  z.object({ ...shared, kind: z.literal('set'), setId: z.uuid(), quantity }),
  z.object({
    ...{ ...shared, kind: z.literal('typed'), words, quantity, cents },
    taxKind: z.enum(['goods', 'design_work']),
  }),
  z.object({ ...shared, kind: z.enum(['shipping', 'installation']), words, cents }),
  z.object({ ...shared, kind: z.literal('voucher'), cents, forWhom: words }),
  z.object({
    ...{ ...shared, kind: z.literal('instalment'), cents, commissionId: z.uuid() },
    instalmentId: z.uuid().nullable().default(null),
  }),
  z.object({ ...shared, kind: z.literal('order_deposit'), cents, orderId: z.uuid() }),
  z.object({ ...shared, kind: z.literal('layaway_payment'), cents, layawayId: z.uuid() }),
]);

/** One line of a slip as it is kept: what it is, never what it comes to. */
export type SlipLine = z.output<typeof line>;

const delivery = z.discriminatedUnion('way', [
  z.object({ way: z.literal('taken') }),
  z.object({ way: z.enum(['sent', 'installed']), to: note, taxPlaceId: z.uuid() }),
]);

/** How the pieces leave: taken along, or brought to where another tax may apply. */
export type SlipDelivery = z.output<typeof delivery>;

/**
 * A slip as it is kept. No price of a piece is in it: prices, rates and stock are looked up each
 * time it is shown or sold, so that nobody can write their own.
 */
export const slipContent = z.object({
  lines: z.array(line).max(slipMost.lines).default([]),
  discount: discount.nullable().default(null),
  /** The trade price of the collector whose name is on it. */
  atTradePrice: z.boolean().default(false),
  /** A designer who brought the buyer and gets a referral fee. */
  referredById: z.uuid().nullable().default(null),
  delivery: delivery.default({ way: 'taken' }),
  /** Sold, and still hanging here until a day. */
  collect: z.object({ untilOn: dayInput, note }).nullable().default(null),
  gift: z.object({ to: words, words: note }).nullable().default(null),
  /** Bought to be sold again, with the certificate on file. */
  forResale: z.boolean().default(false),
});

/** What is on a slip. */
export type SlipContent = z.output<typeof slipContent>;

/** A slip with nothing on it. */
export const emptySlip: SlipContent = slipContent.parse({});

type PieceLine = Extract<SlipLine, { kind: 'piece' }>;
type Instalment = Extract<SlipLine, { kind: 'instalment' }>;
type WithoutId<Line> = Line extends unknown ? Omit<Line, 'id' | 'discount'> : never;

/** A line that is put on a slip; numbers, holds, an order and an instalment may be left out. */
export type LineToPut =
  | WithoutId<Exclude<SlipLine, PieceLine | Instalment>>
  | (Pick<PieceLine, 'kind' | 'skuId' | 'quantity'> &
      Partial<Pick<PieceLine, 'numbers' | 'holdIds' | 'orderId'>>)
  | (Pick<Instalment, 'kind' | 'cents' | 'commissionId'> &
      Partial<Pick<Instalment, 'instalmentId'>>);

/**
 * A slip as its row keeps it: plain JSON, amounts as text.
 *
 * @example slipContent.parse(writeSlip(content)) // the same content again
 */
export function writeSlip(content: SlipContent): z.input<typeof slipContent> {
  const text = JSON.stringify(content, (_key, value: unknown) =>
    typeof value === 'bigint' ? value.toString() : value,
  );
  return JSON.parse(text) as z.input<typeof slipContent>;
}

/** Everything on a slip that somebody wrote by hand: no card's number may be among it. */
export function wordsOn(content: SlipContent): string[] {
  const { lines, discount: whole, delivery: brought, collect, gift } = content;
  const reasons = [whole, ...lines.map((each) => each.discount)].map((each) => each?.reason ?? '');
  const onLines = lines.map((each) => {
    if ('words' in each) return each.words;
    return each.kind === 'voucher' ? each.forWhom : '';
  });
  const to = brought.way === 'taken' ? '' : brought.to;
  return [...onLines, ...reasons, to, collect?.note ?? '', gift?.to ?? '', gift?.words ?? ''];
}
