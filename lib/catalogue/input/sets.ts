import { z } from 'zod';
import { centsInput } from '@/lib/money/input';
import { nameInput, skuInput } from '../input';
import { typedPiecesInput } from './typed-pieces';

const emptyIsNull = z.literal('').transform(() => null);

/** Pieces that belong together, as the form sends them; without an id it is a new set. */
export const keepSetInput = z.object({
  requestKey: z.uuid(),
  setId: z.union([emptyIsNull, z.uuid()]).default(null),
  code: skuInput,
  title: nameInput,
  priceCents: z.union([emptyIsNull, centsInput]).default(null),
  maySplit: z.enum(['may_be_split', 'never_split', 'split_at_single_price'], {
    error: 'Choose whether it may be split.',
  }),
  note: z.string().trim().max(500, 'Say it in fewer words.').default(''),
  /** One SKU in each line, its count behind it. */
  members: typedPiecesInput,
});

/** What {@link keepSetInput} reads. */
export type KeepSetInput = z.output<typeof keepSetInput>;

/** A set that is no longer offered. */
export const endSetInput = z.object({ requestKey: z.uuid(), setId: z.uuid() });

/** What {@link endSetInput} reads. */
export type EndSetInput = z.output<typeof endSetInput>;
