import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';

/** Why a piece or a colourway was not written down. */
export type PieceRefusal =
  | NotAllowed
  | { code: 'key_used_for_something_else' }
  | { code: 'unknown_piece' }
  | { code: 'unknown_colourway' }
  | { code: 'flaw_needed' }
  | { code: 'sku_taken'; sku: string }
  | { code: 'gtin_taken'; sku: string };

/** Says in a full sentence why a piece or a colourway was not written down. */
export function pieceRefusalMessage(refusal: PieceRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This page was sent before with something else in it. Load it again, please.';
    case 'unknown_piece':
      return 'This piece is not in the catalogue. Load the page again, please.';
    case 'unknown_colourway':
      return 'That colourway is not in the catalogue.';
    case 'flaw_needed':
      return 'A second says what is wrong with it, such as pinholes lower left.';
    case 'sku_taken':
      return `${refusal.sku} is in use already, for a piece or a set.`;
    case 'gtin_taken':
      return `This barcode is on ${refusal.sku} already.`;
  }
}
