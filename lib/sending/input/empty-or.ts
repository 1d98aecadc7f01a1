import { z } from 'zod';

/**
 * A field that may be left empty: null for nothing, or else what the schema reads, with the schema’s
 * own words where it does not.
 *
 * @example emptyOr(weightInput).parse('') // null; '0' is refused in the words for weights
 */
export function emptyOr<Value>(schema: z.ZodType<Value, string>) {
  return z
    .string()
    .prefault('')
    .transform((text, context): Value | null => {
      if (text.trim() === '') return null;
      const read = schema.safeParse(text);
      if (read.success) return read.data;
      const message = read.error.issues[0]?.message ?? 'This cannot be read.';
      context.addIssue({ code: 'custom', message });
      return z.NEVER;
    });
}
