import type { PieceAtPlace } from '@/lib/stock/rules/moves/move';
import type { LineTold } from '../rules';
import type { ReportLineRefusal } from './refusals';

/**
 * The first line whose pieces are not with the other gallery by our books; null when all are.
 *
 * Lines of the same SKU count together.
 *
 * @param there by SKU, as it stands at the gallery's place
 * @returns in this order: an edition without its number, a number on the list twice, one that is
 *   held, one that is not with them, more pieces than are with them, pieces that are held there
 */
export function findLineFault(
  lines: readonly Pick<LineTold, 'sku' | 'number' | 'quantity'>[],
  there: ReadonlyMap<string, PieceAtPlace>,
): ReportLineRefusal | null {
  const wanted = new Map<string, number>();
  const seen = new Set<string>();
  for (const [place, line] of lines.entries()) {
    const { sku, number } = line;
    const piece = there.get(sku);
    if (!piece) return { code: 'not_with_them', place, sku, onHand: 0 };
    const numbered = numberFault(line, piece, seen);
    if (numbered) return { ...numbered, place };
    seen.add(`${sku} ${number ?? ''}`);
    const inAll = (wanted.get(sku) ?? 0) + line.quantity;
    wanted.set(sku, inAll);
    if (inAll > piece.onHand) return { code: 'not_with_them', place, sku, onHand: piece.onHand };
    if (inAll > piece.onHand - piece.held) return { code: 'held_there', place, sku };
  }
  return null;
}

function numberFault(
  { sku, number, quantity }: Pick<LineTold, 'sku' | 'number' | 'quantity'>,
  piece: PieceAtPlace,
  seen: ReadonlySet<string>,
) {
  if (number === null) return piece.isNumbered ? { code: 'number_needed' as const, sku } : null;
  if (seen.has(`${sku} ${number}`)) return { code: 'number_twice' as const, sku, number };
  if (piece.heldNumbers.includes(number)) return { code: 'held_there' as const, sku };
  const isThere = piece.numbers.includes(number) && quantity === 1;
  return isThere ? null : { code: 'number_not_with_them' as const, sku, number };
}
