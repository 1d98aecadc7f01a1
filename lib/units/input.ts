import { z } from 'zod';
import { lengthRefusalMessage, parseLength, parseWeight, weightRefusalMessage } from './rules';

/** The longest text a measure field takes, in characters. */
const measureLengthMost = 40;

/**
 * A length typed into a form: text in, whole micrometres out. A bare number means inches.
 *
 * @example lengthInput.parse('10 1/2') // 266700
 */
export const lengthInput = lengthInputIn('in');

/** A length typed into a form where a bare number means the unit given. */
export function lengthInputIn(defaultUnit: 'in' | 'mm') {
  return z
    .string()
    .max(measureLengthMost, 'Write a length, such as 10 1/2 in or 267 mm.')
    .transform((text, context) => {
      const read = parseLength(text, defaultUnit);
      if (read.ok) return read.value;
      context.addIssue({ code: 'custom', message: lengthRefusalMessage(read.refusal) });
      return z.NEVER;
    });
}

/**
 * A weight typed into a form: text in, whole grams out. A bare number means pounds.
 *
 * @example weightInput.parse('6 lb 4 oz') // 2835
 */
export const weightInput = weightInputIn('lb');

/** A weight typed into a form where a bare number means the unit given. */
export function weightInputIn(defaultUnit: 'lb' | 'kg') {
  return z
    .string()
    .max(measureLengthMost, 'Write a weight, such as 6 lb 4 oz or 2.8 kg.')
    .transform((text, context) => {
      const read = parseWeight(text, defaultUnit);
      if (read.ok) return read.value;
      context.addIssue({ code: 'custom', message: weightRefusalMessage(read.refusal) });
      return z.NEVER;
    });
}
