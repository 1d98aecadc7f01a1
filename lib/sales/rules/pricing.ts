import type { DiscountKind, LineKind, PostingPapers } from '@/lib/ledger/rules';
import { sumCents, type Cents } from '@/lib/money/rules';
import { workOutTax, type RoundBy, type TaxKind, type TaxPart } from '@/lib/tax/rules';

/** What was taken off a line, why, and who allowed it. */
export type LineDiscount = {
  kind: DiscountKind;
  reason: string;
  amountCents: Cents;
  givenById: string;
};

/** One line of a slip before tax: how many at what price each, in cents. */
export type LineToPrice = {
  kind: LineKind;
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
  taxKind?: TaxKind;
  /** How much of it is taxed when that is only a share; otherwise all of it or nothing. */
  taxableCents?: Cents;
  discounts?: readonly LineDiscount[];
  /** The numbers of an edition that leave, as many as pieces. */
  numbers?: readonly number[];
  /** Holds that end because their pieces are sold by this line. */
  endsHoldIds?: readonly string[];
  /** An instalment that comes after the hand-over. */
  isAfterHandOver?: boolean;
} & Omit<PostingPapers, 'collectorId'>;

/** A line with its price and its tax. */
export type PricedLine = LineToPrice & {
  discountCents: Cents;
  netCents: Cents;
  taxableCents: Cents;
  taxCents: Cents;
};

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
  const reckoned = lines.map((line) => {
    const discountCents = sumCents((line.discounts ?? []).map((each) => each.amountCents));
    const netCents = line.unitPriceCents * BigInt(line.quantity) - discountCents;
    const taxableCents = line.taxableCents ?? (line.taxable ? netCents : 0n);
    return { ...line, discountCents, netCents, taxableCents };
  });
  const taxLines = reckoned.map(({ taxableCents: cents }) => ({ cents, taxable: true }));
  const due = workOutTax({ lines: taxLines, parts, roundBy });
  const netCents = sumCents(reckoned.map((line) => line.netCents));
  return {
    lines: reckoned.map((line, at) => ({ ...line, taxCents: due.perLineCents[at] ?? 0n })),
    taxes: due.parts.map(({ name, ...part }) => ({ authority: name, ...part })),
    netCents,
    taxCents: due.taxCents,
    totalCents: netCents + due.taxCents,
  };
}
