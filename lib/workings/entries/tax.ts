import { z } from 'zod';
import { formatCents, sumCents } from '@/lib/money/rules';
import { exactTax, workOutTax, type TaxDue } from '@/lib/tax/rules';
import { decimalText, keys, listMost, listOf } from '@/lib/workings/atoms';
import { listed, type Working } from '@/lib/workings/working';

/** The largest price of one line, either way, in cents. */
const lineCentsMost = 999_999_999_999;
const lineMust = `must be a whole number of cents, at most ${lineCentsMost} either way`;

const line = keys({
  cents: z
    .int(lineMust)
    .min(-lineCentsMost, lineMust)
    .max(lineCentsMost, lineMust)
    .transform(BigInt),
  taxable: z.boolean('must be true or false'),
});

const taxInput = keys({
  lines: listOf(line, `lines such as {"cents":1999,"taxable":true}, of ${listMost} at most`),
  ratePercent: decimalText(100),
  roundBy: z.enum(['invoice', 'item'], 'must be "invoice" or "item"'),
});
type TaxInput = z.infer<typeof taxInput>;

/** The sales tax of a sale, rounded once for the whole sale or line by line. */
export const salesTax: Working<TaxInput, { taxCents: number; perLineCents: number[] }> = {
  name: 'sales-tax',
  title: 'Sales tax',
  formula:
    'Taxable price × rate, half a cent and more going up. By invoice the whole is rounded once ' +
    'and shared over the lines by largest remainder; by item each line is rounded, then all are added.',
  source: 'Streamlined Sales and Use Tax Agreement, section 324',
  caution: 'What is taxed, where and at which rate is the state’s to say: ask the bookkeeper.',
  example: {
    lines: [{ cents: 1_999, taxable: true }],
    ratePercent: '8.375',
    roundBy: 'invoice',
  },
  input: taxInput,
  workOut: (input) => {
    const { lines, ratePercent, roundBy } = input;
    const due = workOutTax({ lines, parts: [{ name: 'all', ratePercent }], roundBy });
    return {
      output: { taxCents: Number(due.taxCents), perLineCents: due.perLineCents.map(Number) },
      working: roundBy === 'invoice' ? invoiceSteps(input, due) : itemSteps(input, due),
    };
  },
};

function invoiceSteps({ lines, ratePercent }: TaxInput, due: TaxDue): string[] {
  const taxable = sumCents(lines.filter((each) => each.taxable).map((each) => each.cents));
  const all = sumCents(lines.map((each) => each.cents));
  const steps = [
    `Taxable: ${formatCents(taxable)} of ${formatCents(all)}.`,
    `${formatCents(taxable)} × ${ratePercent}% is ${exactTax(taxable, ratePercent)} exactly.`,
    `Rounded once for the whole sale, half a cent up: ${formatCents(due.taxCents)}.`,
  ];
  if (lines.length === 1) return steps;
  const shares = listed(due.perLineCents.map((cents) => formatCents(cents)));
  return [...steps, `Shared over the lines by largest remainder: ${shares}.`];
}

function itemSteps({ lines, ratePercent }: TaxInput, due: TaxDue): string[] {
  const steps = lines.slice(0, 12).map((each, place) => {
    const number = place + 1;
    if (!each.taxable) return `Line ${number}: ${formatCents(each.cents)} is not taxed.`;
    const exact = exactTax(each.cents, ratePercent);
    const rounded = formatCents(due.perLineCents[place] ?? 0n);
    const product = `${formatCents(each.cents)} × ${ratePercent}%`;
    return `Line ${number}: ${product} is ${exact}, rounded ${rounded}.`;
  });
  if (lines.length > steps.length) steps.push(`And ${lines.length - steps.length} lines more.`);
  return [...steps, `Added up: ${formatCents(due.taxCents)}.`];
}
