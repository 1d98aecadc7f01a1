import type { Cents } from '@/lib/money/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { RoundBy, TaxPart } from '@/lib/tax/rules';
import { priceSlip, type LineToPrice, type PricedSlip } from './rules/pricing';
import type { LastSold } from './rules/refusals';
import type { Tender } from './rules/tenders';

/** A piece as the counter needs to know it, read when it is sold. */
export type PieceForSale = {
  skuId: string;
  sku: string;
  designId: string;
  title: string;
  what: string;
  size: string;
  priceCents: Cents;
  costCents: Cents | null;
  /** How many stand at the place it is sold from, and how many of them are kept back. */
  onHand: number;
  held: number;
  making: 'open_stock' | 'one_off' | 'edition';
  grade: 'first' | 'second' | 'irregular';
  weightG: number | null;
  last: LastSold | null;
};

/** A sale that was decided: everything that is written, and nothing else. */
export type SaleDecision = PricedSlip & { tenders: Tender[] };

/** A piece as a line of the slip; pieces are taxable. */
export function pieceLine(piece: PieceForSale, quantity: number): LineToPrice {
  const { skuId, designId, title, what } = piece;
  return {
    kind: 'piece',
    skuId,
    designId,
    title,
    what,
    quantity,
    unitPriceCents: piece.priceCents,
    taxable: true,
    unitCostCents: piece.costCents,
  };
}

/** A commission at its hand-over, as the sale needs to know it. */
export type CommissionForSale = {
  title: string;
  what: string;
  /** Before tax. */
  priceCents: Cents;
  taxable: boolean;
  /** What came in before, in cents: a debt to the collector until now. */
  paidCents: Cents;
};

/** More was paid before than the piece comes to with its tax; that must be settled first. */
export type CommissionSaleRefusal = {
  code: 'paid_more_than_due';
  paidCents: Cents;
  totalCents: Cents;
};

/**
 * Decides the sale that a hand-over is: the deposit is used up, and the rest is owed.
 *
 * @returns one line; tenders `deposit` and `on_account`, each only when there is something of it
 * @source house rule: revenue is recognised when the piece is handed over
 * @example 10,000.00 at 8 % with 5,400.00 paid: deposit 5,400.00, on account 5,400.00
 */
export function decideCommissionSale(
  commission: CommissionForSale,
  parts: readonly TaxPart[],
  roundBy: RoundBy,
): Result<SaleDecision, CommissionSaleRefusal> {
  const { title, what, taxable, priceCents, paidCents } = commission;
  const kind = 'commission';
  const names = { kind, skuId: null, designId: null, title, what } as const;
  const line = { ...names, quantity: 1, unitPriceCents: priceCents, taxable, unitCostCents: null };
  const priced = priceSlip([line], parts, roundBy);
  const { totalCents } = priced;
  if (paidCents > totalCents) return refuse({ code: 'paid_more_than_due', paidCents, totalCents });

  const owed: Tender[] = [
    { kind: 'deposit', amountCents: paidCents, givenCents: null, reference: '' },
    { kind: 'on_account', amountCents: totalCents - paidCents, givenCents: null, reference: '' },
  ];
  return ok({ ...priced, tenders: owed.filter((tender) => tender.amountCents > 0n) });
}
