import { z } from 'zod';
import { readTypedPieces, typedMost, typedPiecesMessage } from '../rules/typed-pieces';

/**
 * A list of pieces from a form, one in each line, see {@link readTypedPieces}.
 *
 * @example typedPiecesInput.parse('TS-10-CI 3') // one piece, three of it
 */
export const typedPiecesInput = z
  .string()
  .max(typedMost.characters, 'That is a very long list. Bring it in two parts, please.')
  .transform((text, context) => {
    const read = readTypedPieces(text);
    if (read.ok) return read.value;
    context.addIssue({ code: 'custom', message: typedPiecesMessage(read.refusal) });
    return z.NEVER;
  });
