import { z } from 'zod';
import { saidLine } from './atoms';

/** The longest drawing of a signature that is taken in, in letters of its data address. */
export const drawingMost = 400_000;

/** The fields of a signature, for the forms that somebody signs. */
export const signatureFields = {
  signedName: saidLine('Write your name, as you sign.', 120),
  signedCapacity: z.string().trim().max(120, 'Keep it to 120 letters.').prefault(''),
  signedAs: z.enum(['typed', 'drawn', 'on_paper'], { error: 'Say how it is signed.' }),
  /** A PNG as a data address; empty for a typed name or a paper. */
  drawing: z
    .string()
    .max(drawingMost, 'The drawing is too large. Sign once more, a little smaller.')
    .regex(/^(data:image\/png;base64,[A-Za-z0-9+/]+={0,2})?$/, 'Sign once more.')
    .prefault(''),
};

/** What signing takes. */
export type SignatureInput = z.output<z.ZodObject<typeof signatureFields>>;
