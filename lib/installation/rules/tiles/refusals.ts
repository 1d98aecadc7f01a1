import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { tileRefusalMessage, type TileRefusal } from '@/lib/walls/rules/tiles/refusals';

/** Why a wall with its tiles was not kept. */
export type TileWallRefusal = TileRefusal | { code: 'unknown_commission' };

/** Says why a wall with its tiles was not kept. */
export function tileWallRefusalMessage(
  refusal: TileWallRefusal | NotAllowed | { code: 'key_used_for_something_else' },
): string {
  if (refusal.code === 'not_allowed') return notAllowedMessage(refusal);
  if (refusal.code === 'unknown_commission') return 'That commission is not in the book.';
  if (refusal.code === 'key_used_for_something_else') {
    return 'This page was sent before with something else in it. Load it again, please.';
  }
  return tileRefusalMessage(refusal);
}
