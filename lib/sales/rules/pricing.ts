import { sumCents, type Cents } from '@/lib/money/rules';
import { workOutTax, type RoundBy, type TaxPart } from '@/lib/tax/rules';

/** One line of a slip before tax: how many at what price each, in cents. */
export type LineToPrice = {
  kind: 'piece' | 'commission';
  skuId: string | null;
  designId: string | null;
  /** The title of the work, as it was on that day. */
  title: string;
  /** Kind, colour, size and number, as they were on that day. */
  what: string;
  quantity: number;
  unitPriceCents: Cents;
  taxable: boolean;
  /** What making one cost, for the owner's month; null when nobody reckoned it. */
  unitCostCents: Cents | null;
};

/** A line with its price and its tax. */
export type PricedLine = LineToPrice & { netCents: Cents; taxCents: Cents };

/** What one authority is owed of a sale. */
export type SaleTaxDue = {
  authority: string;
  ratePercent: string;
  taxableCents: Cents;
  taxCents: Cents;
};

/** A slip that adds up: lines, tax by authority, and the three sums. */
export type PricedSlip = {
  lines: PricedLine[];
  taxes: SaleTaxDue[];
  netCents: Cents;
  taxCents: Cents;
  totalCents: Cents;
};

/**
 * Adds a slip up: each line, the tax of each authority, the total.
 *
 * @param parts the rates in force on the day, one for each authority
 * @source the tax is {@link workOutTax}'s
 * @example nothing on the slip adds up to nothing
 */
export function priceSlip(
  lines: readonly LineToPrice[],
  parts: readonly TaxPart[],
  roundBy: RoundBy,
): PricedSlip {
  const nets = lines.map((line) => line.unitPriceCents * BigInt(line.quantity));
  const taxLines = lines.map((line, at) => ({ cents: nets[at] ?? 0n, taxable: line.taxable }));
  const due = workOutTax({ lines: taxLines, parts, roundBy });
  const netCents = sumCents(nets);
  return {
    lines: lines.map((line, at) => ({
      ...line,
      netCents: nets[at] ?? 0n,
      taxCents: due.perLineCents[at] ?? 0n,
    })),
    taxes: due.parts.map(({ name, ...part }) => ({ authority: name, ...part })),
    netCents,
    taxCents: due.taxCents,
    totalCents: netCents + due.taxCents,
  };
}
