import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { centsInput } from '@/lib/money/input';
import { lengthInputIn, weightInputIn } from '@/lib/units/input';
import { gtinInput, nameInput, skuInput } from '../input';
import { pieceKinds } from '../rules';
import { makings } from '../rules/making';

const emptyIsNull = z
  .string()
  .trim()
  .length(0)
  .transform(() => null);
const kind = z.enum(
  pieceKinds.map((each) => each.kind),
  { error: 'Choose what it is.' },
);

/** The labels' facts of a piece. */
export const pieceFactsInput = z.object({
  requestKey: z.uuid(),
  skuId: z.uuid(),
  foodUse: z.enum(['not_proven', 'decorative_only', 'proven'], { error: 'Choose one.' }),
  madeInYear: z.union([
    emptyIsNull,
    z
      .string()
      .trim()
      .regex(/^(19|20)\d\d$/, 'Write a year, such as 2026.')
      .transform(Number),
  ]),
  medium: z.string().trim().max(120, 'Say it in fewer words: it stands on the label.'),
  /** Kept only for a second. */
  flaw: z.string().trim().max(120, 'Say it in fewer words: it stands on the tag.').default(''),
});

/** What {@link pieceFactsInput} reads. */
export type PieceFactsInput = z.output<typeof pieceFactsInput>;

/** A colourway whose glazes are made no longer, or are made again. */
export const endColourwayInput = z.object({
  requestKey: z.uuid(),
  colourwayId: z.uuid(),
  endedOn: z.union([emptyIsNull, dayInput]),
});

/** What {@link endColourwayInput} reads. */
export type EndColourwayInput = z.output<typeof endColourwayInput>;

/**
 * A new piece written down by hand.
 *
 * @param unit what a length without a unit means; weights go with it
 */
export function addPieceInput(unit: 'in' | 'mm') {
  const length = lengthInputIn(unit);
  const weight = weightInputIn(unit === 'in' ? 'lb' : 'kg');
  return z.object({
    requestKey: z.uuid(),
    code: skuInput,
    title: nameInput,
    kind,
    colourway: nameInput,
    widthUm: length,
    heightUm: length,
    depthUm: z.union([emptyIsNull, length]).default(null),
    weightG: z.union([emptyIsNull, weight]).default(null),
    priceCents: centsInput,
    costCents: z.union([emptyIsNull, centsInput]).default(null),
    making: z.enum(
      makings.map((each) => each.making),
      { error: 'Choose how it is made.' },
    ),
    gtin: z.union([emptyIsNull, gtinInput]).default(null),
  });
}

/** What {@link addPieceInput} reads. */
export type AddPieceInput = z.output<ReturnType<typeof addPieceInput>>;
