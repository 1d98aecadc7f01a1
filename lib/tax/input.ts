import { z } from 'zod';
import { parseDecimal } from '@/lib/money/rules/decimal';

/**
 * A rate of tax from a form, kept as the exact decimal text.
 *
 * @example ratePercentInput.parse('8.375') // '8.375'; '8.375001' has too many places
 */
export const ratePercentInput = z
  .string()
  .trim()
  .refine(isRate, 'Write a rate from 0 to 100 with at most five decimals, such as 8.375.');

/** Whether the cents of tax are rounded once for the whole sale or line by line. */
export const roundByInput = z.enum(['invoice', 'item'], {
  error: 'Say whether tax is rounded once for the whole sale or line by line.',
});

function isRate(text: string): boolean {
  const rate = parseDecimal(text);
  if (!rate || rate.units < 0n || rate.scale > 5) return false;
  return rate.units <= 100n * 10n ** BigInt(rate.scale);
}
