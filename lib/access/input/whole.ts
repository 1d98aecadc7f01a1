import { z } from 'zod';

/** A whole number that was typed, within bounds; the sentence says what of. */
export function wholeInput(what: string, { least, most }: { least: number; most: number }) {
  const sentence = `Write a whole number of ${what} from ${least} to ${most}.`;
  return z
    .string()
    .trim()
    .regex(/^\d{1,5}$/, sentence)
    .transform(Number)
    .refine((number) => number >= least && number <= most, sentence);
}
