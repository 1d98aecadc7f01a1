import { z } from 'zod';
import {
  isPieceKind,
  isValidGtin,
  pieceKinds,
  readSku,
  skuRefusalMessage,
  type PieceKind,
} from './rules';
import { makings, type Making } from './rules/making';

/**
 * A SKU typed or read from a file: text in, capitals out.
 *
 * @example skuInput.parse(' ts-10-ci ') // 'TS-10-CI'
 */
export const skuInput = z.string().transform((text, context) => {
  const read = readSku(text);
  if (read.ok) return read.value;
  context.addIssue({ code: 'custom', message: skuRefusalMessage(read.refusal) });
  return z.NEVER;
});

/** A barcode: spaces and hyphens are passed over, the check digit must be right. */
export const gtinInput = z.string().transform((text, context) => {
  const digits = text.replace(/[\s-]/g, '');
  if (isValidGtin(digits)) return digits;
  context.addIssue({
    code: 'custom',
    message: 'A barcode has 8, 12, 13 or 14 digits, and its last digit checks the others.',
  });
  return z.NEVER;
});

/**
 * A kind of piece as people write it: one or several, any case, with a hyphen or without.
 *
 * @example kindInput.parse('Relief Tiles') // 'relief_tile'
 */
export const kindInput = z.string().transform((text, context): PieceKind => {
  const words = plainWords(text);
  const found = pieceKinds.find((each) => each.word === words || each.several === words);
  if (found && isPieceKind(found.kind)) return found.kind;
  const known = pieceKinds.map((each) => each.word).join(', ');
  context.addIssue({ code: 'custom', message: `The kind is one of these: ${known}.` });
  return z.NEVER;
});

/** How a piece is made: open stock, one-off or edition. */
export const makingInput = z.string().transform((text, context): Making => {
  const found = makings.find((each) => plainWords(each.words) === plainWords(text));
  if (found) return found.making;
  const known = makings.map((each) => each.words).join(', ');
  context.addIssue({ code: 'custom', message: `The making is one of these: ${known}.` });
  return z.NEVER;
});

/** A name of a design or a colourway: what is written, with single spaces. */
export const nameInput = z
  .string()
  .transform((text) => text.replace(/\s+/g, ' ').trim())
  .refine((text) => text.length >= 1 && text.length <= 120, 'A name has 1 to 120 characters.');

function plainWords(text: string): string {
  return text
    .toLowerCase()
    .replace(/[\s_-]+/g, ' ')
    .trim();
}
