import type { Cents } from '@/lib/money/rules';
import type { RoundBy, TaxKind, TaxPart } from '@/lib/tax/rules';
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

/** A line of a commission at its hand-over: in cents before tax, and how much of it is taxed. */
export type CommissionSaleLine = {
  kind: 'commission' | 'shipping' | 'installation' | 'design_work';
  words: string;
  cents: Cents;
  taxableCents: Cents;
  taxKind: TaxKind;
};

/** A commission at its hand-over, as the sale needs to know it. */
export type CommissionForSale = {
  title: string;
  what: string;
  lines: readonly CommissionSaleLine[];
  /** What came in before, in cents: a debt to the collector until now. */
  paidCents: Cents;
};

/**
 * Decides the sale that a hand-over is: the deposit is used up as far as it is needed, and the rest
 * is owed. What was paid beyond the whole stays a debt to the collector.
 *
 * @returns its lines; tenders `deposit` and `on_account`, each only when there is something of it
 * @source house rule: revenue is recognised when the piece is handed over
 * @example 10,000.00 at 8 % with 5,400.00 paid: deposit 5,400.00, on account 5,400.00
 */
export function decideCommissionSale(
  commission: CommissionForSale,
  parts: readonly TaxPart[],
  roundBy: RoundBy,
): SaleDecision {
  const { title, what, paidCents } = commission;
  const lines = commission.lines.map(({ kind, words, cents, taxableCents, taxKind }) => ({
    ...{ kind, skuId: null, designId: null, what, taxKind, taxableCents },
    title: kind === 'commission' ? title : words,
    ...{ quantity: 1, unitPriceCents: cents, taxable: taxableCents > 0n, unitCostCents: null },
  }));
  const priced = priceSlip(lines, parts, roundBy);
  const usedCents = paidCents < priced.totalCents ? paidCents : priced.totalCents;
  const owedCents = priced.totalCents - usedCents;
  const owed: Tender[] = [
    { kind: 'deposit', amountCents: usedCents, givenCents: null, reference: '' },
    { kind: 'on_account', amountCents: owedCents, givenCents: null, reference: '' },
  ];
  return { ...priced, tenders: owed.filter((tender) => tender.amountCents > 0n) };
}
