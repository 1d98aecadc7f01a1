import { z } from 'zod';
import { moneyRefusalMessage, parseCents } from './rules';
import { parseDecimal } from './rules/decimal';

/** The longest text a money field takes, in characters. */
const amountLengthMost = 24;

/**
 * An amount typed into a form: text in, whole cents out. Nought is allowed.
 *
 * @example centsInput.parse('1,299.00') // 129900n
 */
export const centsInput = z
  .string()
  .max(amountLengthMost, 'Write an amount, such as 48 or 1,299.00.')
  .transform((text, context) => {
    const read = parseCents(text);
    if (read.ok) return read.value;
    context.addIssue({ code: 'custom', message: moneyRefusalMessage(read.refusal) });
    return z.NEVER;
  });

/** An amount of at least one cent, typed into a form. */
export const someCentsInput = centsInput.refine((cents) => cents > 0n, {
  message: 'Write an amount of at least one cent.',
});

/**
 * A percentage from 0 to 100 typed into a form, kept as the exact decimal text.
 *
 * @example percentInput.parse(' 12.5 ') // '12.5'
 */
export const percentInput = z
  .string()
  .trim()
  .refine(isPercent, 'Write a percentage from 0 to 100, such as 10 or 12.5.');

function isPercent(text: string): boolean {
  const decimal = parseDecimal(text);
  if (!decimal || decimal.units < 0n) return false;
  return decimal.units <= 100n * 10n ** BigInt(decimal.scale);
}
