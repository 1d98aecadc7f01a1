import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { listedWords } from './place';

/** Why a scan was not counted. */
export type ScanRefusal =
  | { code: 'unknown_code'; typed: string }
  | { code: 'misread_code'; typed: string }
  | { code: 'number_needed'; title: string; size: number }
  | { code: 'number_beyond'; title: string; number: number; most: number }
  | { code: 'no_number'; title: string }
  | { code: 'seen_already'; title: string; number: number }
  | { code: 'too_many'; title: string; most: number };

/** Why a count was not begun, booked or left. */
export type BookingRefusal =
  | NotAllowed
  | { code: 'key_used_for_something_else' }
  | { code: 'unknown_place' }
  | { code: 'place_closed'; place: string }
  | { code: 'count_is_open'; place: string; number: number }
  | { code: 'unknown_count' }
  | { code: 'count_is_over'; how: 'booked' | 'left' }
  | { code: 'nothing_counted' }
  | { code: 'differences_changed' };

/** Why a difference cannot be booked as it stands. */
export type DifferenceRefusal =
  | { code: 'why_needed'; sku: string; title: string }
  | { code: 'why_does_not_fit'; sku: string; title: string }
  | { code: 'held_pieces'; title: string; held: number; heldFor: readonly string[] }
  | { code: 'number_is_elsewhere'; title: string; number: number; place: string };

/** Why something of a count was not written down. */
export type CountRefusal = ScanRefusal | BookingRefusal | DifferenceRefusal;

/** Says in full sentences why something of a count was not written down. */
export function countRefusalMessage(refusal: CountRefusal): string {
  if (isOfScan(refusal)) return scanMessage(refusal);
  return isOfDifference(refusal) ? differenceMessage(refusal) : bookingMessage(refusal);
}

const scanCodes: readonly string[] = [
  ...['unknown_code', 'misread_code', 'number_needed', 'number_beyond'],
  ...['no_number', 'seen_already', 'too_many'],
];
const differenceCodes: readonly string[] = [
  ...['why_needed', 'why_does_not_fit', 'held_pieces', 'number_is_elsewhere'],
];

function isOfScan(refusal: CountRefusal): refusal is ScanRefusal {
  return scanCodes.includes(refusal.code);
}

function isOfDifference(refusal: CountRefusal): refusal is DifferenceRefusal {
  return differenceCodes.includes(refusal.code);
}

function scanMessage(refusal: ScanRefusal): string {
  switch (refusal.code) {
    case 'unknown_code':
      return `No piece of ours has the number ${refusal.typed}. Put it aside and look at its tag.`;
    case 'misread_code':
      return `${refusal.typed} was misread: its last digit does not fit the others. Scan it again.`;
    case 'number_needed':
      return (
        `${refusal.title} is an edition of ${refusal.size}. ` +
        'Type its number behind the code, such as CODE 7.'
      );
    case 'number_beyond':
      return `${refusal.title} has no number ${refusal.number}; the last is ${refusal.most}.`;
    case 'no_number':
      return `${refusal.title} is not numbered. Type how many there are in the list below.`;
    case 'seen_already':
      return `Number ${refusal.number} of ${refusal.title} was counted already.`;
    case 'too_many':
      return `At most ${refusal.most.toLocaleString('en-US')} of ${refusal.title} can be counted.`;
  }
}

function bookingMessage(refusal: BookingRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This page was sent before with something else in it. Load it again, please.';
    case 'unknown_place':
      return 'Choose the place that is counted.';
    case 'place_closed':
      return `“${refusal.place}” is closed; nothing stands there.`;
    case 'count_is_open':
      return (
        `Count ${refusal.number} of “${refusal.place}” is still open. ` +
        'Go on with that one, or leave it.'
      );
    case 'unknown_count':
      return 'There is no such count. Look for it in the list of counts.';
    case 'count_is_over':
      return refusal.how === 'booked'
        ? 'This count was booked in the meantime, so nothing is added to it.'
        : 'This count was left in the meantime. Begin a new one.';
    case 'nothing_counted':
      return 'Nothing was counted yet. Scan the first piece.';
    case 'differences_changed':
      return (
        'Something was sold, moved or counted in the meantime. ' +
        'Look at the differences again, then book them.'
      );
  }
}

function differenceMessage(refusal: DifferenceRefusal): string {
  switch (refusal.code) {
    case 'why_needed':
      return `Say what became of ${refusal.title} (${refusal.sku}).`;
    case 'why_does_not_fit':
      return `Choose another reason for ${refusal.title} (${refusal.sku}): it does not fit.`;
    case 'held_pieces':
      return (
        `${refusal.held} of ${refusal.title} ${refusal.held === 1 ? 'is' : 'are'} held for ` +
        `${listedWords(refusal.heldFor)}. Tell them and end the hold before it is counted away.`
      );
    case 'number_is_elsewhere':
      return (
        `By our books number ${refusal.number} of ${refusal.title} stands at ` +
        `“${refusal.place}”. Move it here first.`
      );
  }
}
