import { z } from 'zod';
import { dayInput } from '@/lib/dates/input';
import { someCentsInput } from '@/lib/money/input';
import { parseDecimal } from '@/lib/money/rules/decimal';
import { treatedKinds } from './rules/treatment-days';
import { thresholdWindows } from './rules/threshold';

/**
 * A rate of tax from a form, kept as the exact decimal text.
 *
 * @example ratePercentInput.parse('8.375') // '8.375'; '8.375001' has too many places
 */
export const ratePercentInput = z
  .string()
  .trim()
  .refine(isRate, 'Write a rate from 0 to 100 with at most five decimals, such as 8.375.');

/** Whether the cents of tax are rounded once for the whole sale or line by line. */
export const roundByInput = z.enum(['invoice', 'item'], {
  error: 'Say whether tax is rounded once for the whole sale or line by line.',
});

function isRate(text: string): boolean {
  const rate = parseDecimal(text);
  if (!rate || rate.units < 0n || rate.scale > 5) return false;
  return rate.units <= 100n * 10n ** BigInt(rate.scale);
}

/**
 * A field that may be left empty: null then; otherwise what the schema reads, in its own words when
 * it cannot.
 *
 * @example orNothing(dayInput).parse('') // null
 */
export function orNothing<Read>(schema: z.ZodType<Read, string>) {
  return z
    .string()
    .prefault('')
    .transform((text, context): Read | null => {
      if (text.trim() === '') return null;
      const read = schema.safeParse(text);
      if (read.success) return read.data;
      const [issue] = read.error.issues;
      context.addIssue({ code: 'custom', message: issue?.message ?? 'Please look at this again.' });
      return z.NEVER;
    });
}

/**
 * A state as the owner writes it; the same spelling is used everywhere.
 *
 * @example stateInput.parse('') // refused: a place lies in a state
 */
export const stateInput = z
  .string()
  .trim()
  .min(1, 'Write the state, such as Oregon or OR.')
  .max(60, 'Keep the state to 60 letters.');

const note = z.string().trim().max(500, 'Keep the note to 500 letters.').prefault('');

/**
 * A place with rates of its own: a new one, or a new name for the one whose id it carries, which
 * may do without a state.
 */
export const taxPlaceInput = z
  .strictObject({
    requestKey: z.uuid(),
    placeId: orNothing(z.uuid()),
    name: z
      .string()
      .trim()
      .min(1, 'Write the name of the place, such as a town or a county.')
      .max(80, 'Keep the name to 80 letters.'),
    state: z.string().trim().max(60, 'Keep the state to 60 letters.').prefault(''),
    registeredFrom: orNothing(dayInput),
  })
  .refine(({ placeId, state }) => placeId !== null || state !== '', {
    path: ['state'],
    message: 'Write the state, such as Oregon or OR.',
  });

/** What {@link taxPlaceInput} gives. */
export type TaxPlaceInput = z.output<typeof taxPlaceInput>;

/** What a state says about one kind of line, from a day on. */
export const treatmentInput = z
  .strictObject({
    requestKey: z.uuid(),
    state: stateInput,
    kind: z.enum(treatedKinds, { error: 'Say what this is about.' }),
    treatment: z.enum(['taxed', 'not_taxed', 'not_taxed_when_separate'], {
      error: 'Say whether it is taxed.',
    }),
    shareBy: orNothing(z.enum(['by_price', 'by_weight', 'all_taxed'])),
    fromOn: dayInput,
  })
  .refine((asked) => asked.kind !== 'goods' || asked.treatment !== 'not_taxed_when_separate', {
    path: ['treatment'],
    message: 'A piece always stands as a line of its own: say taxed or not taxed.',
  })
  .transform((asked) => ({
    ...asked,
    shareBy:
      asked.kind === 'shipping' && asked.treatment !== 'not_taxed'
        ? (asked.shareBy ?? ('by_price' as const))
        : null,
  }));

/** What {@link treatmentInput} gives. */
export type TreatmentInput = z.output<typeof treatmentInput>;

const salesCount = z
  .string()
  .trim()
  .regex(/^[1-9]\d{0,6}$/, 'Write a whole number of sales, such as 200.')
  .transform(Number);

/** A state that pieces are sent to: since when we collect there, and from how much we must. */
export const taxStateInput = z
  .strictObject({
    requestKey: z.uuid(),
    state: stateInput,
    registeredFrom: orNothing(dayInput),
    thresholdCents: orNothing(someCentsInput),
    thresholdSales: orNothing(salesCount),
    needs: z.enum(['either', 'both'], { error: 'Say whether one is enough or both are needed.' }),
    window: z.enum(thresholdWindows, { error: 'Say over what time it is counted.' }),
    lookedUpOn: orNothing(dayInput),
    note,
  })
  .refine(
    ({ needs, thresholdCents, thresholdSales }) =>
      needs === 'either' || (thresholdCents !== null && thresholdSales !== null),
    { path: ['needs'], message: 'Both are needed: then write the amount and the number.' },
  );

/** What {@link taxStateInput} gives. */
export type TaxStateInput = z.output<typeof taxStateInput>;
