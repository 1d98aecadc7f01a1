import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { centsInput } from '@/lib/money/input';
import { parseDecimal } from '@/lib/money/rules/decimal';
import { isPieceKind } from '../rules';
import { priceSteps, type PriceStep } from '../rules/prices';

/** The longest reason of a price, in characters. */
const reasonMost = 200;

const reason = z.string().trim().max(reasonMost, 'Say it in fewer words.').default('');
const anyOrNone = z.union([z.literal('').transform(() => null), z.uuid()]).catch(null);

/** The new price of one piece, from a day on. */
export const changePriceInput = z.object({
  requestKey: z.uuid(),
  skuId: z.uuid(),
  priceCents: centsInput,
  fromOn: dayInput,
  reason,
});

/** What {@link changePriceInput} reads. */
export type ChangePriceInput = z.output<typeof changePriceInput>;

/** A percentage up or down, at most tenfold: kept as its exact decimal text. */
export const raiseInput = z
  .string()
  .trim()
  .transform((text) =>
    text
      .replace(/^\+\s*/, '')
      .replace(/^[−–]/, '-')
      .replace(/\s*%$/, ''),
  )
  .refine(isRaise, 'Write a percentage from -90 to 900, such as 4.5, or -10 for less.');

function isRaise(text: string): boolean {
  const decimal = parseDecimal(text);
  if (!decimal || text.length > 10) return false;
  const whole = 10n ** BigInt(decimal.scale);
  return decimal.units >= -90n * whole && decimal.units <= 900n * whole && decimal.units !== 0n;
}

const step = z.enum(priceSteps.map((each) => each.key)).catch('whole' satisfies PriceStep);

/** Which pieces are meant, and by how much: from an address or a form. */
export const raiseWishInput = z.object({
  kind: z
    .string()
    .transform((text) => (isPieceKind(text) ? text : null))
    .catch(null)
    .default(null),
  designId: anyOrNone.default(null),
  /** Width and height in micrometres, `254000x254000`. */
  size: z
    .string()
    .regex(/^\d{1,9}x\d{1,9}$/)
    .nullable()
    .catch(null)
    .default(null),
  percent: raiseInput,
  step: step.default('whole'),
});

/** What {@link raiseWishInput} reads. */
export type RaiseWish = z.output<typeof raiseWishInput>;

/** The yes to new prices that were looked at. */
export const raisePricesInput = raiseWishInput.extend({
  requestKey: z.uuid(),
  fromOn: dayInput,
  reason,
  /** SHA-256 of what was shown. */
  shownSha256: z.string().regex(/^[0-9a-f]{64}$/),
});

/** What {@link raisePricesInput} reads. */
export type RaisePricesInput = z.output<typeof raisePricesInput>;

/** The most tags that are ticked off at once. */
const tagsMost = 500;

const oneOrMore = z.union([z.uuid().transform((id) => [id]), z.array(z.uuid()).max(tagsMost)], {
  error: 'Tick the tags that are written.',
});

/** Tags that were written anew. */
export const tickTagsInput = z.object({ requestKey: z.uuid(), skuIds: oneOrMore });

/** What {@link tickTagsInput} reads. */
export type TickTagsInput = z.output<typeof tickTagsInput>;

/** A price that is to come, and is not to come after all. */
export const callOffPriceInput = z.object({ requestKey: z.uuid(), changeId: z.uuid() });

/** What {@link callOffPriceInput} reads. */
export type CallOffPriceInput = z.output<typeof callOffPriceInput>;
