import { z } from 'zod';
import { parseDecimal } from '@/lib/money/rules/decimal';

/** How many lines, weights or percentages one calculation takes. */
export const listMost = 1_000;

/** An object that takes the keys given and no others. */
export function keys<Shape extends z.core.$ZodLooseShape>(shape: Shape) {
  return z.strictObject(shape, {
    error: (issue) =>
      issue.code === 'unrecognized_keys'
        ? 'has keys that are not asked for here'
        : `must be an object with the keys ${Object.keys(shape).join(', ')}`,
  });
}

/** A list of one to a thousand of the same. */
export function listOf<Element extends z.ZodType>(element: Element, what: string) {
  const must = `must be a list of 1 to ${listMost} ${what}`;
  return z.array(element, must).min(1, must).max(listMost, must);
}

/** A whole number of cents that JSON can hold exactly, below zero too. */
export const wholeCents = z
  .int('must be a whole number of cents, at most 9007199254740991 either way')
  .transform(BigInt);

/**
 * A decimal number in a string, at least zero, held exactly as text.
 *
 * @param most the largest it may be
 * @param placesMost how many places after the point
 */
export function decimalText(most: number, placesMost = 6) {
  const must =
    `must be a decimal in quotes from 0 to ${most} with at most ${placesMost} places, ` +
    'such as "8.5"';
  return z.string(must).refine((text) => {
    const decimal = parseDecimal(text);
    if (!decimal || decimal.units < 0n || decimal.scale > placesMost) return false;
    return decimal.units <= BigInt(most) * 10n ** BigInt(decimal.scale);
  }, must);
}

/** The longest side of a piece that is worked out, in millimetres. */
const sideMmMost = 100_000;

/** A length in millimetres, read to the whole micrometre. */
export const lengthMm = z
  .number(`must be a length in millimetres, from 0.001 to ${sideMmMost}`)
  .min(0.001, `must be a length in millimetres, from 0.001 to ${sideMmMost}`)
  .max(sideMmMost, `must be a length in millimetres, from 0.001 to ${sideMmMost}`)
  .transform((mm) => Math.round(mm * 1_000));
