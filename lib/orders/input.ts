import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { centsInput } from '@/lib/money/input';
import { looksLikeCardNumber } from '@/lib/money/rules/card-number';
import { orderPiecesMost } from './rules';

const emptyIsNull = z
  .string()
  .trim()
  .length(0)
  .transform(() => null);
const idOrNull = z.union([emptyIsNull, z.uuid()]).default(null);

const freeText = (most: number) =>
  z
    .string()
    .trim()
    .max(most, `Keep it to ${most.toLocaleString('en-US')} letters.`)
    .refine((text) => !looksLikeCardNumber(text), {
      message: 'That looks like the number of a card, which is never kept.',
    });

const quantity = z
  .string()
  .trim()
  .regex(/^[1-9]\d{0,2}$/, `Write how many, 1 to ${orderPiecesMost}.`)
  .transform(Number)
  .refine((count) => count <= orderPiecesMost, `Write how many, 1 to ${orderPiecesMost}.`);

const technique = z.enum(['slab_relief', 'slip_cast', 'press_moulded', 'thrown'], {
  error: 'Choose how it is made.',
});

/** What is wanted, from the address of the page that takes an order; what is bent is left out. */
export const orderWishInput = z.object({
  sku: z.string().trim().toUpperCase().max(24).catch('').default(''),
  find: z.string().max(80).catch('').default(''),
  who: z.string().max(80).nullable().catch(null).default(null),
  collector: z.uuid().nullable().catch(null).default(null),
  quantity: quantity.catch(1).default(1),
  colourway: z.uuid().nullable().catch(null).default(null),
  size: z
    .string()
    .regex(/^\d{1,9}x\d{1,9}$/)
    .nullable()
    .catch(null)
    .default(null),
  wantedOn: dayInput.nullable().catch(null).default(null),
  technique: technique.nullable().catch(null).default(null),
});

/** What {@link orderWishInput} reads. */
export type OrderWish = z.output<typeof orderWishInput>;

/** A special order as its form sends it. */
export const takeOrderInput = z.object({
  requestKey: z.uuid(),
  skuId: z.uuid(),
  colourwayId: idOrNull,
  /** Width and height in micrometres; null for the piece's own. */
  size: z.union([emptyIsNull, z.string().regex(/^\d{1,9}x\d{1,9}$/)]).default(null),
  quantity,
  technique,
  collectorId: idOrNull,
  newName: freeText(120).default(''),
  newPhone: freeText(40).default(''),
  newEmail: freeText(160).default(''),
  unitPriceCents: z.union([emptyIsNull, centsInput]).default(null),
  depositCents: z.union([emptyIsNull, centsInput]).default(null),
  wish: freeText(500).default(''),
  goes: z.enum(['collected', 'sent'], { error: 'Say whether it is collected or sent.' }),
  sendTo: freeText(300).default(''),
  readyAboutOn: dayInput,
  /** The collector was told what the page says of mould, glaze and kiln. */
  said: z.literal('yes', { error: 'Say it to them first, then tick it.' }),
});

/** What {@link takeOrderInput} reads. */
export type TakeOrderInput = z.output<typeof takeOrderInput>;

const ofOrder = { requestKey: z.uuid(), orderId: z.uuid() };

/** Pieces of an order that came from the studio. */
export const bringInMadeInput = z.object({ ...ofOrder, pieces: quantity });

/** What {@link bringInMadeInput} reads. */
export type BringInMadeInput = z.output<typeof bringInMadeInput>;

/** That the collector was told, or that money is to be asked for: only which order. */
export const ofOrderInput = z.object(ofOrder);

/** What {@link ofOrderInput} reads. */
export type OfOrderInput = z.output<typeof ofOrderInput>;

/** Another day on which it is about ready. */
export const moveOrderDayInput = z.object({
  ...ofOrder,
  readyAboutOn: dayInput,
  why: freeText(200).default(''),
});

/** What {@link moveOrderDayInput} reads. */
export type MoveOrderDayInput = z.output<typeof moveOrderDayInput>;

/** An order that is called off. */
export const callOffOrderInput = z.object({
  ...ofOrder,
  why: freeText(200).refine((text) => text !== '', 'Say why, in a few words.'),
  keepCents: z.union([emptyIsNull.transform(() => 0n), centsInput]).default(0n),
  how: z.enum(['same_way', 'store_credit'], { error: 'Say how the money goes back.' }),
});

/** What {@link callOffOrderInput} reads. */
export type CallOffOrderInput = z.output<typeof callOffOrderInput>;
