import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { list } from './words';

/** Why something was not written on a collector's card. */
export type CardRefusal =
  | NotAllowed
  | { code: 'key_used_for_something_else' }
  | { code: 'unknown_collector' }
  | { code: 'not_on_the_card' }
  | { code: 'said_in_the_future' }
  | { code: 'pieces_hang_there'; titles: readonly string[] }
  | { code: 'not_theirs' };

/** Says in a full sentence why something was not written on a collector's card. */
export function cardRefusalMessage(refusal: CardRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This form was sent before with something else in it. Open the page again.';
    case 'unknown_collector':
      return 'They are no longer in the address book. Look them up again.';
    case 'not_on_the_card':
      return 'Somebody took that off the card in the meantime. Open the page again.';
    case 'said_in_the_future':
      return 'That day has not come yet. Write the day on which they said it.';
    case 'pieces_hang_there':
      return `${list(refusal.titles)} ${refusal.titles.length === 1 ? 'hangs' : 'hang'} there. Say first where ${refusal.titles.length === 1 ? 'it hangs' : 'they hang'} now.`;
    case 'not_theirs':
      return 'That piece or that address is not theirs any more. Open the page again.';
  }
}

/**
 * Whether words tell the code of a door, a gate, an alarm or a key box: a name of one of these with
 * three or more figures close behind it. A street number after a gate is taken for one too: better
 * asked once too often.
 *
 * @example tellsACode('alarm code is 4471') // true
 */
export function tellsACode(text: string): boolean {
  return /\b(alarm|gate|door|lock|key ?box|keypad)\b[^.;\n]{0,14}?\b\d{3,8}\b/i.test(text);
}
