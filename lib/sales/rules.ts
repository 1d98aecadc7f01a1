import type { Day } from '@/lib/dates/rules';
import type { Cents } from '@/lib/money/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import type { RoundBy, TaxPart } from '@/lib/tax/rules';
import { priceSlip, type LineToPrice, type PricedSlip } from './rules/pricing';
import type { LastSold, SaleRefusal } from './rules/refusals';
import { settle, type Tender, type TenderOffered } from './rules/tenders';

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

/** Where and when a sale is made, and at what tax. */
export type SaleSetting = {
  soldAt: Date;
  soldOn: Day;
  taxPlace: string;
  /** The rates in force there on that day; none means that nobody has kept any. */
  taxParts: readonly TaxPart[];
  roundTaxBy: RoundBy;
};

/** What the visitor has on the slip and how they pay. */
export type SlipToSell = {
  lines: readonly { skuId: string; quantity: number }[];
  tenders: readonly TenderOffered[];
  /** The total that was shown when the money was taken. */
  expectedTotalCents: Cents;
};

/** A sale that was decided: everything that is written, and nothing else. */
export type SaleDecision = PricedSlip & { tenders: Tender[] };

/**
 * Decides a sale at the counter from what is true at this moment.
 *
 * @returns the sale; refuses, in this order: an empty slip, a piece that is not in the catalogue, one
 *   without a price, more pieces than are here, no tax rate kept, a total other than the one shown,
 *   and then what {@link settle} refuses
 * @example two people with the last piece: the second is refused `not_enough_pieces`
 */
export function decideSale(
  slip: SlipToSell,
  pieces: ReadonlyMap<string, PieceForSale>,
  setting: SaleSetting,
): Result<SaleDecision, SaleRefusal> {
  if (slip.lines.length === 0) return refuse({ code: 'nothing_on_slip' });
  const taken = takePieces(mergeLines(slip.lines), pieces, setting.soldAt);
  if (!taken.ok) return taken;
  if (setting.taxParts.length === 0) {
    return refuse({ code: 'no_tax_rate', place: setting.taxPlace, on: setting.soldOn });
  }

  const priced = priceSlip(taken.value, setting.taxParts, setting.roundTaxBy);
  if (priced.totalCents !== slip.expectedTotalCents) {
    const { expectedTotalCents: shownCents } = slip;
    return refuse({ code: 'price_changed', shownCents, nowCents: priced.totalCents });
  }
  const tenders = settle(priced.totalCents, slip.tenders);
  return tenders.ok ? ok({ ...priced, tenders: tenders.value }) : tenders;
}

function takePieces(
  lines: readonly { skuId: string; quantity: number }[],
  pieces: ReadonlyMap<string, PieceForSale>,
  askedAt: Date,
): Result<LineToPrice[], SaleRefusal> {
  const found: { piece: PieceForSale; quantity: number }[] = [];
  for (const { skuId, quantity } of lines) {
    const piece = pieces.get(skuId);
    if (!piece) return refuse({ code: 'unknown_piece', skuId });
    found.push({ piece, quantity });
  }
  const unpriced = found.find(({ piece }) => piece.priceCents === 0n)?.piece;
  if (unpriced) return refuse({ code: 'no_price', title: unpriced.title, sku: unpriced.sku });

  const short = found.find(({ piece, quantity }) => piece.onHand - piece.held < quantity);
  if (short) {
    const { title, sku, size, onHand, last } = short.piece;
    const wanted = short.quantity;
    return refuse({ code: 'not_enough_pieces', title, sku, size, wanted, onHand, askedAt, last });
  }
  return ok(found.map(({ piece, quantity }) => pieceLine(piece, quantity)));
}

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

/** The same piece twice on a slip is one line of two; the order of first appearance is kept. */
export function mergeLines(
  lines: readonly { skuId: string; quantity: number }[],
): { skuId: string; quantity: number }[] {
  const quantities = new Map<string, number>();
  for (const { skuId, quantity } of lines) {
    quantities.set(skuId, (quantities.get(skuId) ?? 0) + quantity);
  }
  return Array.from(quantities, ([skuId, quantity]) => ({ skuId, quantity }));
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
