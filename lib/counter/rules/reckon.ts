import { exemptWords } from '@/lib/collectors/rules/trade';
import { isMoneyForLater } from '@/lib/ledger/rules/sale-entry';
import { sumCents, type Cents } from '@/lib/money/rules';
import { priceSlip, type LineToPrice, type PricedSlip } from '@/lib/sales/rules/pricing';
import type { SaleRefusal } from '@/lib/sales/rules/refusals';
import type { Tender } from '@/lib/sales/rules/tenders';
import { taxableOf, type Taxable } from '@/lib/tax/rules/treatment';
import { takeOff, type Fault } from './discounts';
import { draftsOf, leftOf, type Draft } from './drafts';
import type { CounterFacts } from './facts';
import { paperFaults } from './paper-faults';
import { holdsOf, pieceFaults } from './piece-faults';
import type { SlipRefusal } from './refusals';
import type { SlipContent, SlipLine } from './slip';

/** A line of the slip with what it came to; a set comes to several priced lines. */
export type ReckonedLine = {
  line: SlipLine;
  /** Places in the priced lines, from 0. */
  at: readonly number[];
};

/** A slip as it would be sold at this moment, and whatever stands in the way of that. */
export type Reckoned = {
  lines: ReckonedLine[];
  priced: PricedSlip;
  /** Deposits of special orders that are used up by it. */
  deposits: Tender[];
  /** What is left to pay after those, in cents. */
  dueCents: Cents;
  /** Why no tax is charged, where none is. */
  exemptWhy: string;
  certificateId: string | null;
  /** What the pieces come to, before tax: a referral fee is a share of it. */
  piecesCents: Cents;
  faults: Fault<SlipRefusal | SaleRefusal>[];
};

/**
 * Reckons a slip: each line, what is taken off it, the tax where it goes, what is left to pay. The
 * counter shows this, and selling writes exactly this.
 *
 * @returns faults in their order: an empty slip, then {@link pieceFaults}, then what is wrong with
 *   discounts, then {@link paperFaults}, then no tax rate kept where tax is due
 * @example a set of two for 250.00 whose pieces are 180.00 and 96.50: its two lines come to 250.00
 */
export function reckon(content: SlipContent, facts: CounterFacts): Reckoned {
  const { drafts, faults } = takeOff(draftsOf(content, facts), content, facts);
  const taxable = taxed(drafts, content, facts);
  const toPrice = drafts.map((draft, at) =>
    lineToPrice(draft, content, facts, taxable.perLine[at]?.taxableCents ?? 0n),
  );
  const priced = priceSlip(toPrice, facts.tax.parts, facts.roundTaxBy);
  const deposits = depositsOf(content, facts, priced.totalCents);
  const pieces = priced.lines.filter((line) => line.kind === 'piece');
  return {
    lines: content.lines.map((line) => ({ line, at: placesOf(drafts, line.id) })),
    priced,
    deposits,
    dueCents: priced.totalCents - sumCents(deposits.map((each) => each.amountCents)),
    exemptWhy: taxable.exemptWhy,
    certificateId: certificateIdOf(content, facts),
    piecesCents: sumCents(pieces.map((line) => line.netCents)),
    faults: [
      ...emptyFault(content),
      ...pieceFaults(content, facts),
      ...faults,
      ...paperFaults(content, facts),
      ...rateFault(drafts, facts),
    ],
  };
}

function taxed(drafts: readonly Draft[], content: SlipContent, facts: CounterFacts): Taxable {
  const { certificate, tax } = facts;
  const exemption =
    content.forResale && certificate.kind === 'good'
      ? { why: exemptWords(certificate.certificate) }
      : null;
  const lines = drafts.map((draft) => ({
    cents: leftOf(draft),
    kind: draft.toPrice.taxKind ?? 'goods',
    weightG: draft.weightG === null ? null : draft.weightG * draft.toPrice.quantity,
    isSeparate: true,
  }));
  return taxableOf(lines, tax, exemption);
}

function lineToPrice(
  draft: Draft,
  content: SlipContent,
  facts: CounterFacts,
  taxableCents: Cents,
): LineToPrice {
  const { toPrice, discounts, lineId } = draft;
  const line = content.lines.find((each) => each.id === lineId);
  const holdIds = line?.kind === 'piece' ? line.holdIds : [];
  const ends = toPrice.skuId === null ? [] : endedBy(toPrice.skuId, holdIds, toPrice, facts);
  return { ...toPrice, discounts, taxableCents, taxable: taxableCents > 0n, endsHoldIds: ends };
}

/** The slip's own holds end with the sale: those it was put on by, then as many as it takes. */
function endedBy(
  skuId: string,
  holdIds: readonly string[],
  { quantity, numbers = [] }: Draft['toPrice'],
  facts: CounterFacts,
): string[] {
  const { own } = holdsOf(skuId, holdIds, facts);
  const named = own.filter((hold) => holdIds.includes(hold.id));
  const others = own.filter(
    ({ id, editionNumber }) =>
      !holdIds.includes(id) && (editionNumber === null || numbers.includes(editionNumber)),
  );
  let covered = named.reduce((sum, hold) => sum + hold.quantity, 0);
  const more = others.filter((hold) => {
    const isWanted = covered < quantity;
    if (isWanted) covered += hold.quantity;
    return isWanted;
  });
  return [...named, ...more].map((hold) => hold.id);
}

function depositsOf(content: SlipContent, facts: CounterFacts, totalCents: Cents): Tender[] {
  const orderIds = content.lines.flatMap((line) =>
    line.kind === 'piece' && line.orderId !== null ? [line.orderId] : [],
  );
  let leftCents = totalCents;
  return [...new Set(orderIds)].flatMap((orderId) => {
    const heldCents = facts.papers.orders.get(orderId)?.heldCents ?? 0n;
    const amountCents = heldCents < leftCents ? heldCents : leftCents;
    if (amountCents <= 0n) return [];
    leftCents -= amountCents;
    return [{ kind: 'deposit', amountCents, givenCents: null, reference: '', orderId }];
  });
}

function placesOf(drafts: readonly Draft[], lineId: string): number[] {
  return drafts.flatMap((draft, at) => (draft.lineId === lineId ? [at] : []));
}

function certificateIdOf(content: SlipContent, { certificate }: CounterFacts): string | null {
  return content.forResale && certificate.kind === 'good' ? certificate.certificate.id : null;
}

function emptyFault(content: SlipContent): Fault<SaleRefusal>[] {
  return content.lines.length === 0 ? [{ lineId: null, refusal: { code: 'nothing_on_slip' } }] : [];
}

function rateFault(drafts: readonly Draft[], facts: CounterFacts): Fault<SaleRefusal>[] {
  const { tax, on } = facts;
  const isTaxed = tax.isRegistered && drafts.some(({ toPrice }) => !isMoneyForLater(toPrice.kind));
  if (!isTaxed || tax.parts.length > 0) return [];
  return [{ lineId: null, refusal: { code: 'no_tax_rate', place: tax.place, on } }];
}
