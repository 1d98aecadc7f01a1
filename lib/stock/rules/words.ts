import { kindWords, type PieceKind } from '@/lib/catalogue/rules';

/**
 * Where a piece stands, as one would say it to a visitor.
 *
 * @example standingWords({ onHand: 0, elsewhere: 2 }) // 'None here; 2 elsewhere.'
 */
export function standingWords({ onHand, elsewhere }: { onHand: number; elsewhere: number }) {
  const here = onHand === 0 ? 'None here' : `${onHand} here`;
  if (elsewhere === 0) return onHand === 1 ? 'The last one is here.' : `${here}.`;
  return `${here}; ${elsewhere} elsewhere.`;
}

/** How many pieces there are of what, as the head of a wall: `12 relief tiles`. */
export function countOfKind(count: number, kind: PieceKind | null): string {
  if (kind) return `${count} ${kindWords(kind, count)}`;
  return count === 1 ? '1 piece' : `${count.toLocaleString('en-US')} pieces`;
}
