import { z } from 'zod';
import { centsInput } from '@/lib/money/input';
import type { Cents } from '@/lib/money/rules';
import { slipMost } from './rules/slip';

/** One line of a slip: which SKU, how many. */
export const slipLineInput = z.strictObject({
  skuId: z.uuid(),
  quantity: z.number().int().min(1).max(slipMost.quantity),
});

const reference = z
  .string()
  .trim()
  .max(40, 'The slip number of the card terminal has at most 40 signs.');

const exactTender = z.strictObject({
  kind: z.enum(['card', 'cheque', 'bank_transfer']),
  amountCents: z.bigint().min(0n),
  reference,
});

const cashTender = z.strictObject({ kind: z.literal('cash'), givenCents: z.bigint().min(0n) });

/** A sale as the counter hands it on: amounts in whole cents. */
export const saleInput = z.strictObject({
  requestKey: z.uuid(),
  collectorId: z.uuid().nullable(),
  lines: z.array(slipLineInput).max(slipMost.lines),
  tenders: z.array(z.discriminatedUnion('kind', [cashTender, exactTender])).max(6),
  expectedTotalCents: z.bigint().min(0n),
});

/** A sale, checked. */
export type SaleInput = z.infer<typeof saleInput>;

const counterForm = z.object({
  requestKey: z.uuid(),
  collectorId: z.union([z.literal(''), z.uuid()]).default(''),
  /** `id of the SKU*how many`, once for each line of the slip. */
  line: z.union([z.string(), z.array(z.string())]).default([]),
  /** The total that was shown, in plain figures. */
  expectedTotal: centsInput,
  paidBy: z.enum(['cash', 'card'], { error: 'Say how it is paid: cash or card.' }),
  given: z.string().default(''),
  /** The visitor laid down exactly the total. */
  justRight: z.literal('yes').optional(),
  reference: reference.default(''),
});

/**
 * The counter's form: text in, a sale out.
 *
 * @example paidBy 'cash' and given '20' give one cash tender of 2000 cents
 */
export const counterInput = counterForm
  .transform((form, context) => {
    const tender = tenderOf(form);
    if (!tender) {
      const message = 'Write what the visitor gave you, or say that it is just right.';
      context.addIssue({ code: 'custom', path: ['given'], message });
      return z.NEVER;
    }
    return {
      requestKey: form.requestKey,
      collectorId: form.collectorId === '' ? null : form.collectorId,
      lines: [form.line].flat().map(readSlipLine),
      tenders: [tender],
      expectedTotalCents: form.expectedTotal,
    };
  })
  .pipe(saleInput);

type CounterForm = z.output<typeof counterForm>;

function tenderOf(form: CounterForm): SaleInput['tenders'][number] | null {
  const { expectedTotal, reference: slipNumber } = form;
  if (form.paidBy === 'card') {
    return { kind: 'card', amountCents: expectedTotal, reference: slipNumber };
  }
  const givenCents = form.justRight ? expectedTotal : readGiven(form.given);
  return givenCents === null ? null : { kind: 'cash', givenCents };
}

function readGiven(text: string): Cents | null {
  const read = centsInput.safeParse(text);
  return read.success ? read.data : null;
}

function readSlipLine(text: string): { skuId: string; quantity: number } {
  const [skuId = '', count = ''] = text.split('*');
  return { skuId, quantity: Number(count) };
}
