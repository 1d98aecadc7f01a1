import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { pictureRefusalMessage, type PictureRefusal } from '@/lib/files/rules';

/** Why a picture was not hung. */
export type HangPictureRefusal =
  NotAllowed | PictureRefusal | { code: 'key_used_for_something_else' } | { code: 'unknown_piece' };

/** Says in a full sentence why a picture was not hung. */
export function hangPictureRefusalMessage(refusal: HangPictureRefusal): string {
  if (refusal.code === 'not_allowed') return notAllowedMessage(refusal);
  if (refusal.code === 'unknown_piece') return 'This piece is not in the catalogue any more.';
  if (refusal.code === 'key_used_for_something_else') {
    return 'This page was sent before with something else in it. Load it again, please.';
  }
  return pictureRefusalMessage(refusal);
}
