import { splitCents, sumCents, type Cents } from '@/lib/money/rules';
import { leftOf, type SoldLine, type SoldTax } from './sold';

/** What goes back for some pieces of a line, before any fee. */
export type LineShare = { netCents: Cents; taxCents: Cents };

/**
 * The price and the tax of so many pieces of a line: their part of what is left of it.
 *
 * The price is what was paid after all discounts; the tax is what was charged, never reckoned
 * anew. Whoever brings the last piece gets what is left, so that parts in any order add up to the
 * whole.
 *
 * @param pieces at least one, at most those still out
 * @example three pieces of 10.00 together give 3.34, then 3.33 and 3.33
 */
export function shareOfLine(line: SoldLine, pieces: number): LineShare {
  const weights = [BigInt(pieces), BigInt(leftOf(line) - pieces)];
  const part = (cents: Cents): Cents => splitCents(cents, weights)[0] ?? 0n;
  return {
    netCents: part(line.netCents - line.back.netCents),
    taxCents: part(line.taxCents - line.back.taxCents),
  };
}

/**
 * The tax that goes back, shared among the authorities by what each still holds of the sale.
 *
 * @param taxCents at most what they hold together
 * @returns those that give something, in the order given; together the tax
 */
export function shareOfAuthorities(
  taxes: readonly SoldTax[],
  taxCents: Cents,
): { authority: string; taxCents: Cents }[] {
  if (taxCents === 0n) return [];
  const left = taxes.map((tax) => tax.taxCents - tax.backCents);
  const shares = splitCents(taxCents, left);
  return taxes
    .map(({ authority }, at) => ({ authority, taxCents: shares[at] ?? 0n }))
    .filter((share) => share.taxCents > 0n);
}

/**
 * What of a referral fee is taken back when so much of the goods has come back, in all and now.
 *
 * @param fee what was promised for the whole sale
 * @param goods the sale's pieces, what of them was back before, and what comes back now, in cents
 * @example of 90.00 for goods of 900.00 with 300.00 brought back: 30.00
 */
export function shareOfReferral(
  fee: Cents,
  goods: { soldCents: Cents; beforeCents: Cents; nowCents: Cents },
): Cents {
  const { soldCents, beforeCents, nowCents } = goods;
  if (soldCents === 0n) return 0n;
  const backOf = (cents: Cents): Cents => splitCents(fee, [cents, soldCents - cents])[0] ?? 0n;
  return backOf(beforeCents + nowCents) - backOf(beforeCents);
}

/** What pieces come to: the base of a referral fee. */
export function goodsCents(lines: readonly { kind: string; netCents: Cents }[]): Cents {
  return sumCents(lines.filter((line) => line.kind === 'piece').map((line) => line.netCents));
}
