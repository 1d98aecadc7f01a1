import type { KeptSet } from '@/lib/catalogue/rules/sets';
import type { PostingPapers } from '@/lib/ledger/rules';
import { splitCents, sumCents, type Cents } from '@/lib/money/rules';
import type { PieceForSale } from '@/lib/sales/rules';
import type { LineDiscount, LineToPrice } from '@/lib/sales/rules/pricing';
import type { CounterFacts } from './facts';
import type { SlipContent, SlipLine } from './slip';

/** A line on its way to a price: what it is, and what was taken off so far. */
export type Draft = {
  /** The line of the slip that it comes from; a set gives several. */
  lineId: string;
  toPrice: Omit<LineToPrice, 'taxable' | 'discounts'>;
  discounts: readonly LineDiscount[];
  /** What one weighs, in grams. */
  weightG: number | null;
};

type PieceLine = Extract<SlipLine, { kind: 'piece' }>;

/** What a draft comes to after what was taken off so far, in cents. */
export function leftOf(draft: Draft): Cents {
  const { unitPriceCents, quantity } = draft.toPrice;
  return unitPriceCents * BigInt(quantity) - sumCents(draft.discounts.map((d) => d.amountCents));
}

/** Pieces and what was typed in may be sold for less; money for later and freight never are. */
export function mayBeDiscounted(draft: Draft): boolean {
  return ['piece', 'typed', 'design_work'].includes(draft.toPrice.kind);
}

/**
 * Turns the lines of a slip into lines that can be priced; a set comes apart into its pieces, with
 * what the set's price takes off them. What nobody knows is left out.
 */
export function draftsOf(content: SlipContent, facts: CounterFacts): Draft[] {
  return content.lines.flatMap((line) => draftsOfLine(line, facts));
}

function draftsOfLine(line: SlipLine, facts: CounterFacts): Draft[] {
  if (line.kind === 'piece') {
    const piece = facts.pieces.get(line.skuId);
    return piece ? [pieceDraft(line, piece, facts)] : [];
  }
  if (line.kind === 'set') {
    const set = facts.sets.find((each) => each.setId === line.setId);
    return set ? setDrafts(line.id, set, line.quantity, facts) : [];
  }
  return [draft(line.id, otherLine(line, facts))];
}

function draft(lineId: string, toPrice: Draft['toPrice']): Draft {
  return { lineId, toPrice, discounts: [], weightG: null };
}

function pieceDraft(line: PieceLine, piece: PieceForSale, facts: CounterFacts): Draft {
  const order = line.orderId === null ? undefined : facts.papers.orders.get(line.orderId);
  const toPrice = {
    ...pieceToPrice(piece, line.quantity),
    ...(order ? { unitPriceCents: order.unitPriceCents } : {}),
    ...(line.orderId === null ? {} : { orderId: line.orderId }),
    numbers: line.numbers,
  };
  return { lineId: line.id, toPrice, discounts: [], weightG: piece.weightG };
}

function pieceToPrice(piece: PieceForSale, quantity: number): Draft['toPrice'] {
  const { skuId, designId, title, grade } = piece;
  const what = grade === 'first' ? piece.what : `${piece.what} · ${grade}`;
  return {
    ...{ kind: 'piece' as const, taxKind: 'goods' as const },
    ...{ skuId, designId, title, what, quantity },
    ...{ unitPriceCents: piece.priceCents, unitCostCents: piece.costCents },
  };
}

function setDrafts(lineId: string, set: KeptSet, count: number, facts: CounterFacts): Draft[] {
  const members = set.members.flatMap(({ skuId, quantity }) => {
    const piece = facts.pieces.get(skuId);
    return piece ? [{ piece, toPrice: pieceToPrice(piece, quantity * count) }] : [];
  });
  const gross = members.map(({ toPrice }) => toPrice.unitPriceCents * BigInt(toPrice.quantity));
  const wholeCents = set.priceCents === null ? null : set.priceCents * BigInt(count);
  const offCents = wholeCents === null ? 0n : sumCents(gross) - wholeCents;
  const off = offCents > 0n ? splitCents(offCents, gross) : gross.map(() => 0n);
  return members.map(({ piece, toPrice }, at) => {
    const reason = `The set ${set.title}`;
    const set_ = { kind: 'set' as const, reason, givenById: facts.askerId };
    return {
      ...{ lineId, toPrice, weightG: piece.weightG },
      discounts: taken(set_, off[at] ?? 0n),
    };
  });
}

/** One discount, or none when it comes to nothing. */
export function taken(
  discount: Omit<LineDiscount, 'amountCents'>,
  amountCents: Cents,
): LineDiscount[] {
  return amountCents > 0n ? [{ ...discount, amountCents }] : [];
}

type OtherLine = Exclude<SlipLine, { kind: 'piece' | 'set' }>;
type WorkLine = Extract<OtherLine, { kind: 'typed' | 'shipping' | 'installation' }>;

function otherLine(line: OtherLine, facts: CounterFacts): Draft['toPrice'] {
  const isWork = (each: OtherLine): each is WorkLine => 'words' in each;
  if (isWork(line)) return workLine(line);
  return { ...oneOf(line.cents), taxKind: 'none', ...moneyFor(line, facts) };
}

function oneOf(unitPriceCents: Cents) {
  return { skuId: null, designId: null, unitCostCents: null, quantity: 1, unitPriceCents };
}

function workLine(line: WorkLine): Draft['toPrice'] {
  const one = { ...oneOf(line.cents), title: line.words, what: '' };
  if (line.kind !== 'typed') return { ...one, kind: line.kind, taxKind: line.kind };
  const { taxKind, quantity } = line;
  return { ...one, kind: taxKind === 'goods' ? 'typed' : 'design_work', taxKind, quantity };
}

type ForLater = Pick<Draft['toPrice'], 'kind' | 'title' | 'what' | 'isAfterHandOver'> &
  PostingPapers;

function moneyFor(line: Exclude<OtherLine, WorkLine>, { papers }: CounterFacts): ForLater {
  const { kind } = line;
  switch (kind) {
    case 'voucher': {
      const what = line.forWhom === '' ? '' : `for ${line.forWhom}`;
      return { kind, title: 'Gift voucher', what };
    }
    case 'instalment': {
      const { number, title, isHandedOver } = papers.commissions.get(line.commissionId) ?? unknown;
      const late = isHandedOver ? { isAfterHandOver: true } : {};
      const words = { title: `Payment for commission ${number}`, what: title };
      return { kind, ...words, commissionId: line.commissionId, ...late };
    }
    case 'order_deposit': {
      const { number, title } = papers.orders.get(line.orderId) ?? unknown;
      const words = { title: `Deposit on special order ${number}`, what: title };
      return { kind, ...words, orderId: line.orderId };
    }
    case 'layaway_payment': {
      const { number } = papers.layaways.get(line.layawayId) ?? unknown;
      return { kind, title: `Payment for layaway ${number}`, what: '', layawayId: line.layawayId };
    }
  }
}

/** A paper that nobody knows; the slip is refused for it. */
const unknown = { number: '', title: '', isHandedOver: false };
