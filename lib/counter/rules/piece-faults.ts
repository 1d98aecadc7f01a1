import type { PieceForSale } from '@/lib/sales/rules';
import type { SaleRefusal } from '@/lib/sales/rules/refusals';
import type { Fault } from './discounts';
import type { CounterFacts, HoldFact } from './facts';
import type { SlipRefusal } from './refusals';
import type { SlipContent, SlipLine } from './slip';

type PieceFault = Fault<SlipRefusal | SaleRefusal>;
type Wanted = { quantity: number; lineId: string; holdIds: readonly string[] };

/**
 * What stands in the way of the pieces on a slip.
 *
 * @returns in this order: pieces nobody knows, sets nobody keeps, pieces without a price, more than
 *   are here, pieces held for another, numbers to choose or not here, sets that are never split
 */
export function pieceFaults(content: SlipContent, facts: CounterFacts): PieceFault[] {
  const { lines } = content;
  const wanted = wantedOf(content, facts);
  return [
    ...lines.flatMap((line) => unknownFault(line, facts)),
    ...[...wanted].flatMap(([skuId, want]) => priceFault(skuId, want, facts)),
    ...[...wanted].flatMap(([skuId, want]) => shelfFault(skuId, want, facts)),
    ...lines.flatMap((line) => numberFault(line, facts)),
    ...lines.flatMap((line) => splitFault(line, facts)),
  ];
}

/** How many of each SKU the whole slip wants, and from which line. */
function wantedOf(content: SlipContent, facts: CounterFacts): Map<string, Wanted> {
  const wanted = new Map<string, Wanted>();
  const want = (skuId: string, more: Wanted) => {
    const so = wanted.get(skuId);
    wanted.set(skuId, {
      lineId: so?.lineId ?? more.lineId,
      quantity: (so?.quantity ?? 0) + more.quantity,
      holdIds: [...(so?.holdIds ?? []), ...more.holdIds],
    });
  };
  for (const line of content.lines) {
    if (line.kind === 'piece') want(line.skuId, { ...line, lineId: line.id });
    if (line.kind !== 'set') continue;
    const set = facts.sets.find((each) => each.setId === line.setId);
    for (const member of set?.members ?? []) {
      const quantity = member.quantity * line.quantity;
      want(member.skuId, { quantity, lineId: line.id, holdIds: [] });
    }
  }
  return wanted;
}

function unknownFault(line: SlipLine, facts: CounterFacts): PieceFault[] {
  if (line.kind === 'piece' && !facts.pieces.has(line.skuId)) {
    return [{ lineId: line.id, refusal: { code: 'unknown_piece', skuId: line.skuId } }];
  }
  if (line.kind === 'set' && !facts.sets.some((each) => each.setId === line.setId)) {
    return [{ lineId: line.id, refusal: { code: 'unknown_set' } }];
  }
  return [];
}

function priceFault(skuId: string, { lineId }: Wanted, facts: CounterFacts): PieceFault[] {
  const piece = facts.pieces.get(skuId);
  if (piece?.priceCents !== 0n) return [];
  return [{ lineId, refusal: { code: 'no_price', title: piece.title, sku: piece.sku } }];
}

function shelfFault(skuId: string, want: Wanted, facts: CounterFacts): PieceFault[] {
  const piece = facts.pieces.get(skuId);
  if (!piece) return [];
  const { lineId, quantity } = want;
  if (piece.onHand < quantity) {
    return [{ lineId, refusal: shortage(piece, quantity, facts.askedAt) }];
  }
  const others = holdsOf(skuId, want.holdIds, facts).others;
  const kept = others.reduce((sum, hold) => sum + hold.quantity, 0);
  const [first] = others;
  if (!first || piece.onHand - kept >= quantity) return [];
  return [{ lineId, refusal: heldFor(piece.title, first, facts.askedAt) }];
}

function shortage(piece: PieceForSale, wanted: number, askedAt: Date): SaleRefusal {
  const { title, sku, size, onHand, last } = piece;
  return { code: 'not_enough_pieces', title, sku, size, wanted, onHand, askedAt, last };
}

function heldFor(title: string, hold: HoldFact, at: Date): SlipRefusal {
  const { forWhom, untilAt } = hold;
  const hasLapsed = untilAt !== null && untilAt <= at;
  return { code: 'held_for_another', title, forWhom, untilAt, hasLapsed };
}

/**
 * The holds of a SKU: those of the slip itself (it was put on by them, or its collector has them),
 * and those of others. What is put away for a layaway is nobody's to sell, unless by its hold.
 */
export function holdsOf(
  skuId: string,
  holdIds: readonly string[],
  facts: Pick<CounterFacts, 'holds' | 'collectorId'>,
): { own: HoldFact[]; others: HoldFact[] } {
  const holds = facts.holds.filter((hold) => hold.skuId === skuId);
  const isOwn = (hold: HoldFact) =>
    holdIds.includes(hold.id) ||
    (hold.collectorId !== null && hold.collectorId === facts.collectorId && hold.untilAt !== null);
  return { own: holds.filter(isOwn), others: holds.filter((hold) => !isOwn(hold)) };
}

function numberFault(line: SlipLine, facts: CounterFacts): PieceFault[] {
  if (line.kind !== 'piece') return [];
  const numbersHere = facts.numbers.get(line.skuId) ?? [];
  const title = facts.pieces.get(line.skuId)?.title ?? '';
  const lineId = line.id;
  const missing = line.numbers.find((number) => !numbersHere.includes(number));
  if (missing !== undefined) {
    return [{ lineId, refusal: { code: 'number_not_here', title, number: missing } }];
  }
  if (numbersHere.length > 0 && line.numbers.length !== line.quantity) {
    const wanted = line.quantity;
    return [{ lineId, refusal: { code: 'choose_numbers', title, wanted, numbersHere } }];
  }
  const { others } = holdsOf(line.skuId, line.holdIds, facts);
  const kept = others.find(
    (hold) => hold.editionNumber !== null && line.numbers.includes(hold.editionNumber),
  );
  return kept ? [{ lineId, refusal: heldFor(title, kept, facts.askedAt) }] : [];
}

function splitFault(line: SlipLine, facts: CounterFacts): PieceFault[] {
  if (line.kind !== 'piece' || facts.mayGoBeyond.has(facts.askerId)) return [];
  const set = facts.sets.find(
    (each) =>
      each.maySplit === 'never_split' && each.members.some(({ skuId }) => skuId === line.skuId),
  );
  const title = facts.pieces.get(line.skuId)?.title ?? '';
  return set
    ? [{ lineId: line.id, refusal: { code: 'set_is_not_split', title, set: set.title } }]
    : [];
}
