import { z } from 'zod';
import { centsInput } from '@/lib/money/input';

const emptyIsNull = z.literal('').transform(() => null);

/** What a flaw may be said in, in characters. */
const flawMost = 120;

/** Pieces that turned out to be seconds, as the piece's page sends them. */
export const markAsSecondInput = z.object({
  requestKey: z.uuid(),
  skuId: z.uuid(),
  quantity: z
    .string()
    .trim()
    .regex(/^[1-9]\d{0,4}$/, 'Write how many pieces, such as 1.')
    .transform(Number),
  grade: z.enum(['second', 'irregular'], { error: 'Choose what it is.' }),
  flaw: z
    .string()
    .transform((text) => text.replace(/\s+/g, ' ').trim())
    .refine((text) => text.length > 0, 'Say what is wrong, such as pinholes lower left.')
    .refine((text) => text.length <= flawMost, 'Say it in fewer words: they stand on the tag.'),
  priceCents: z.union([emptyIsNull, centsInput]).default(null),
  editionNumber: z
    .union([
      emptyIsNull,
      z
        .string()
        .regex(/^[1-9]\d{0,3}$/, 'Choose its number.')
        .transform(Number),
    ])
    .default(null),
});

/** What {@link markAsSecondInput} reads. */
export type MarkAsSecondInput = z.output<typeof markAsSecondInput>;
