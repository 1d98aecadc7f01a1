import { z } from 'zod';
import { parseMonth, type Month } from '@/lib/dates/rules';

/** The address of a month: `month=2026-11`; what is not a month counts as none. */
export const monthAddress = z.object({
  month: z
    .string()
    .optional()
    .catch(undefined)
    .transform((text): Month | null => (text === undefined ? null : parseMonth(text))),
});
