import type { KeptSet } from '@/lib/catalogue/rules/sets';
import { ok, refuse, type Result } from '@/lib/platform/result';
import {
  slipMost,
  type LineToPut,
  type SlipContent,
  type SlipDiscount,
  type SlipLine,
} from './slip';

/** A discount as it is asked for; who gives it is added when it is put on. */
export type DiscountAsked =
  | { way: 'percent'; percent: string; reason: string }
  | { way: 'amount'; cents: bigint; reason: string };

/** One thing that is changed on a slip, besides putting something on it. */
export type SlipChange =
  | { does: 'less' | 'more' | 'off'; lineId: string }
  | { does: 'numbers'; lineId: string; numbers: readonly number[] }
  | { does: 'discount'; lineId: string | null; discount: DiscountAsked | null }
  | { does: 'deliver'; delivery: SlipContent['delivery'] }
  | { does: 'collect'; collect: SlipContent['collect'] }
  | { does: 'gift'; gift: SlipContent['gift'] }
  | { does: 'trade'; atTradePrice: boolean }
  | { does: 'resale'; forResale: boolean }
  | { does: 'referred'; collectorId: string | null };

/**
 * Changes a slip; a line that is not on it any more changes nothing.
 *
 * @param askerId who gives a discount that is put on
 * @example one less of a single piece takes its line off
 */
export function changeSlip(content: SlipContent, change: SlipChange, askerId: string): SlipContent {
  switch (change.does) {
    case 'less':
      return countOn(content, change.lineId, -1);
    case 'more':
      return countOn(content, change.lineId, 1);
    case 'off':
      return { ...content, lines: content.lines.filter((line) => line.id !== change.lineId) };
    case 'numbers':
      return onLine(content, change.lineId, (line) => numbered(line, change.numbers));
    case 'discount':
      return discounted(content, change.lineId, givenBy(change.discount, askerId));
    case 'deliver':
      return { ...content, delivery: change.delivery };
    case 'collect':
      return { ...content, collect: change.collect };
    case 'gift':
      return { ...content, gift: change.gift };
    case 'trade':
      return { ...content, atTradePrice: change.atTradePrice };
    case 'resale':
      return { ...content, forResale: change.forResale };
    case 'referred':
      return { ...content, referredById: change.collectorId };
  }
}

/**
 * Puts a line on a slip: under the others, or onto the line of the same piece.
 *
 * @param id the new line's own, for a line that is new
 * @returns refuses `slip_is_full` when there are sixty lines, or 999 of the piece
 * @example the same tile scanned twice is one line of two
 */
export function putOn(
  content: SlipContent,
  toPut: LineToPut,
  id: string,
): Result<SlipContent, { code: 'slip_is_full' }> {
  const line = lineFrom(toPut, id);
  const same = content.lines.find((each) => isSame(each, line));
  if (same && 'quantity' in same && 'quantity' in line) {
    if (same.quantity + line.quantity > slipMost.quantity) return refuse({ code: 'slip_is_full' });
    return ok(onLine(content, same.id, (each) => joined(each, line)));
  }
  if (content.lines.length >= slipMost.lines) return refuse({ code: 'slip_is_full' });
  return ok({ ...content, lines: [...content.lines, line] });
}

function lineFrom(line: LineToPut, id: string): SlipLine {
  const shared = { id, discount: null };
  if (line.kind === 'piece') {
    const { numbers = [], holdIds = [], orderId = null } = line;
    return { ...line, ...shared, numbers, holdIds, orderId };
  }
  if (line.kind === 'instalment') {
    return { ...line, ...shared, instalmentId: line.instalmentId ?? null };
  }
  return { ...line, ...shared };
}

function isSame(kept: SlipLine, line: SlipLine): boolean {
  if (kept.kind === 'piece' && line.kind === 'piece') {
    return kept.skuId === line.skuId && kept.orderId === line.orderId;
  }
  return kept.kind === 'set' && line.kind === 'set' && kept.setId === line.setId;
}

function joined(kept: SlipLine, line: SlipLine): SlipLine {
  if (kept.kind === 'piece' && line.kind === 'piece') {
    const numbers = [...new Set([...kept.numbers, ...line.numbers])].toSorted((a, b) => a - b);
    const quantity = numbers.length > 0 ? numbers.length : kept.quantity + line.quantity;
    return {
      ...kept,
      quantity,
      numbers,
      holdIds: [...new Set([...kept.holdIds, ...line.holdIds])],
    };
  }
  if (kept.kind === 'set' && line.kind === 'set') {
    return { ...kept, quantity: kept.quantity + line.quantity };
  }
  return kept;
}

function countOn(content: SlipContent, lineId: string, by: 1 | -1): SlipContent {
  const lines = content.lines.flatMap((line) => {
    if (line.id !== lineId || !('quantity' in line)) return [line];
    const quantity = Math.min(line.quantity + by, slipMost.quantity);
    if (quantity < 1) return [];
    const fewer = line.kind === 'piece' ? { numbers: line.numbers.slice(0, quantity) } : {};
    return [{ ...line, ...fewer, quantity }];
  });
  return { ...content, lines };
}

function numbered(line: SlipLine, numbers: readonly number[]): SlipLine {
  if (line.kind !== 'piece' || numbers.length === 0) return line;
  const chosen = [...new Set(numbers)].toSorted((a, b) => a - b);
  return { ...line, numbers: chosen, quantity: chosen.length };
}

function discounted(
  content: SlipContent,
  lineId: string | null,
  discount: SlipDiscount | null,
): SlipContent {
  if (lineId === null) return { ...content, discount };
  return onLine(content, lineId, (line) => ({ ...line, discount }));
}

function givenBy(discount: DiscountAsked | null, givenById: string): SlipDiscount | null {
  return discount && { ...discount, givenById };
}

function onLine(
  content: SlipContent,
  lineId: string,
  change: (line: SlipLine) => SlipLine,
): SlipContent {
  return {
    ...content,
    lines: content.lines.map((line) => (line.id === lineId ? change(line) : line)),
  };
}

/** How many of a SKU are on a slip, alone and in sets. */
export function onTheSlip(content: SlipContent, skuId: string, sets: readonly KeptSet[]): number {
  return content.lines.reduce((count, line) => {
    if (line.kind === 'piece') return line.skuId === skuId ? count + line.quantity : count;
    if (line.kind !== 'set') return count;
    const set = sets.find((each) => each.setId === line.setId);
    const member = set?.members.find((each) => each.skuId === skuId);
    return count + (member?.quantity ?? 0) * line.quantity;
  }, 0);
}
