import { z } from 'zod';

/** The most pictures that one request or one later addition takes. */
export const picturesMost = 8;
/** The most letters of one line. */
export const lineLengthMost = 160;
const linesMost = 4_000;

/** A line that has to be written. */
export function saidLine(fault: string, most = lineLengthMost) {
  return z.string().trim().min(1, fault).max(most, `Keep it to ${most} letters.`);
}

/** A field that may be left empty: null is "not known yet"; anything else goes to the schema. */
export function known<Schema extends z.ZodType>(schema: Schema) {
  return z
    .string()
    .trim()
    .transform((text, context): z.output<Schema> | null => {
      if (text === '') return null;
      const read = schema.safeParse(text);
      if (read.success) return read.data;
      for (const { message } of read.error.issues) context.addIssue({ code: 'custom', message });
      return z.NEVER;
    })
    .prefault('');
}

/** Several lines of words; nothing at all is allowed. */
export const lines = z.string().trim().max(linesMost, 'Keep it to 4,000 letters.').prefault('');
/** One line that may be left empty. */
export const knownLine = known(
  z.string().max(lineLengthMost, `Keep it to ${lineLengthMost} letters.`),
);

/** Pictures from a form: none, one or several; an empty choice is none. */
export const pictures = z
  .preprocess(listOf, z.array(z.instanceof(Blob, { error: 'Choose a picture.' })))
  .transform((chosen) => chosen.filter((picture) => picture.size > 0))
  .refine((chosen) => chosen.length <= picturesMost, {
    message: `Bring in at most ${picturesMost} pictures at once.`,
  });

/** One picture from a form. */
export const onePicture = z.instanceof(Blob, { error: 'Choose the picture that is shown.' });

function listOf(chosen: unknown): unknown[] {
  if (chosen === undefined) return [];
  return Array.isArray(chosen) ? (chosen as unknown[]) : [chosen];
}
