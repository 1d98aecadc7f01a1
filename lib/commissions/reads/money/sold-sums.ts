import { sumCents, type Cents } from '@/lib/money/rules';

/** A hand-over's sale, with what was let off on its receipt; in cents. */
export type SoldWithReturns = {
  netCents: Cents;
  taxCents: Cents;
  returns: readonly { netCents: Cents; taxCents: Cents; feeCents: Cents }[];
};

/**
 * What a hand-over's sale comes to now: its price and tax, less what was let off on its receipt. A fee
 * that was kept of it stays in the price.
 *
 * @example 10,000.00 and 800.00 of tax, 600.00 and 48.00 let off less a fee of 60.00: 9,460.00 and 752.00
 */
export function soldSums({ netCents, taxCents, returns }: SoldWithReturns): {
  priceCents: Cents;
  taxCents: Cents;
} {
  const backCents = sumCents(returns.map((each) => each.netCents - each.feeCents));
  const taxBackCents = sumCents(returns.map((each) => each.taxCents));
  return { priceCents: netCents - backCents, taxCents: taxCents - taxBackCents };
}
