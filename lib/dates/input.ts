import { z } from 'zod';
import { dayRefusalMessage, parseDay, parseMonth } from './rules';

/**
 * A day from a form: text in, a Day out.
 *
 * @example dayInput.parse('11/25/2026') // '2026-11-25'
 */
export const dayInput = z.string().transform((text, context) => {
  const read = parseDay(text);
  if (read.ok) return read.value;
  context.addIssue({ code: 'custom', message: dayRefusalMessage(read.refusal) });
  return z.NEVER;
});

/** A month from a form or an address, `2026-11`. */
export const monthInput = z.string().transform((text, context) => {
  const month = parseMonth(text);
  if (month) return month;
  context.addIssue({ code: 'custom', message: 'Write a month, such as 2026-11.' });
  return z.NEVER;
});

/** A time of day from a form, `09:30`, kept as that text. */
export const timeInput = z
  .string()
  .trim()
  .regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'Write a time of day, such as 09:30.');
