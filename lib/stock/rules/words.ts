import { kindWords, type PieceKind } from '@/lib/catalogue/rules';

/** Why pieces came or went. */
export type MovementReason = 'opening' | 'made' | 'sold' | 'counted' | 'broken' | 'missing';

/** What is told of a movement. `quantity` is below zero for pieces that went. */
export type MovementSaid = { quantity: number; reason: MovementReason };

/**
 * A movement in words, as one would tell it.
 *
 * @example movementWords({ quantity: -1, reason: 'sold' }) // '1 sold'
 */
export function movementWords({ quantity, reason }: MovementSaid): string {
  const pieces = Math.abs(quantity);
  switch (reason) {
    case 'opening':
      return `${pieces} were here when the list began`;
    case 'made':
      return `${pieces} came from the studio`;
    case 'sold':
      return `${pieces} sold`;
    case 'counted':
      return quantity > 0 ? `Counted: ${pieces} more than thought` : `Counted: ${pieces} fewer`;
    case 'broken':
      return `${pieces} broken`;
    case 'missing':
      return quantity > 0 ? `${pieces} found again` : `${pieces} missing`;
  }
}

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
