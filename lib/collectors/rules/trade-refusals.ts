import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { pictureRefusalMessage, type PictureRefusal } from '@/lib/files/rules';

/** Why a certificate or a designer's terms were not kept. */
export type TradeRefusal =
  | NotAllowed
  | { code: 'key_used_for_something_else' }
  | { code: 'unknown_collector' }
  | { code: 'certificate_is_there'; permitNumber: string; state: string }
  | { code: 'certificate_unknown' }
  | { code: 'picture_not_kept'; picture: PictureRefusal };

/** Says in a full sentence why a certificate or a designer's terms were not kept. */
export function tradeRefusalMessage(refusal: TradeRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This form was sent before with something else in it. Open the page again.';
    case 'unknown_collector':
      return 'Nobody by that name is in the address book. Find them by a few letters, or add them.';
    case 'certificate_is_there':
      return `Certificate ${refusal.permitNumber} for ${refusal.state} is on file for some of these days. Withdraw it first, or choose later days.`;
    case 'certificate_unknown':
      return 'That certificate is not on file, or was withdrawn already. Look at the list again.';
    case 'picture_not_kept':
      return pictureRefusalMessage(refusal.picture);
  }
}
