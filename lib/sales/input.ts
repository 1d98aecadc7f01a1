import { z } from 'zod';
import { centsInput } from '@/lib/money/input';

/** The most lines on one slip, and the most of one piece on it. */
export const slipMost = { lines: 60, quantity: 999 } as const;

const quantity = z.number().int().min(1).max(slipMost.quantity);

/** One line of a slip: which SKU, how many. */
export const slipLineInput = z.strictObject({ skuId: z.uuid(), quantity });

const reference = z
  .string()
  .trim()
  .max(40, 'The slip number of the card terminal has at most 40 signs.');

const exactTender = z.strictObject({
  kind: z.enum(['card', 'cheque', 'bank_transfer']),
  amountCents: z.bigint().min(0n),
  reference: reference.default(''),
});

const cashTender = z.strictObject({ kind: z.literal('cash'), givenCents: z.bigint().min(0n) });

/** A sale as the counter hands it on: amounts in whole cents. */
export const saleInput = z.strictObject({
  requestKey: z.uuid(),
  collectorId: z.uuid().nullable().default(null),
  lines: z.array(slipLineInput).max(slipMost.lines),
  tenders: z.array(z.discriminatedUnion('kind', [cashTender, exactTender])).max(6),
  expectedTotalCents: z.bigint().min(0n),
});

/** A sale, checked. */
export type SaleInput = z.infer<typeof saleInput>;

/** What the counter's form says before it is known how it is paid. */
const slipFields = {
  requestKey: z.uuid(),
  collectorId: z
    .union([z.literal(''), z.uuid()])
    .default('')
    .transform((text) => (text === '' ? null : text)),
  /** `SKU-id*quantity`, once for each line. */
  line: z
    .union([z.string(), z.array(z.string())])
    .default([])
    .transform((value) => (typeof value === 'string' ? [value] : value))
    .pipe(z.array(z.string()).max(slipMost.lines, 'That is more than one slip can hold.')),
  expectedTotal: centsInput,
};

/**
 * The counter's form: text in, a sale out.
 *
 * @example paidBy 'cash' and given '20' give one cash tender of 2000 cents
 */
export const counterInput = z
  .discriminatedUnion('paidBy', [
    z.object({ ...slipFields, paidBy: z.literal('cash'), given: centsInput }),
    z.object({ ...slipFields, paidBy: z.literal('card'), reference: reference.default('') }),
  ])
  .transform((form) => {
    const tender =
      form.paidBy === 'cash'
        ? { kind: 'cash' as const, givenCents: form.given }
        : { kind: 'card' as const, amountCents: form.expectedTotal, reference: form.reference };
    return {
      requestKey: form.requestKey,
      collectorId: form.collectorId,
      lines: form.line.map(readSlipLine),
      tenders: [tender],
      expectedTotalCents: form.expectedTotal,
    };
  })
  .pipe(saleInput);

function readSlipLine(text: string): { skuId: string; quantity: number } {
  const [skuId = '', count = ''] = text.split('*');
  return { skuId, quantity: Number(count) };
}
