import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { formatDay, type Day } from '@/lib/dates/rules';
import { moveRefusalMessage, type MoveRefusal } from '@/lib/stock/rules/moves/move';
import { lineRefusalMessage, type LineRefusal } from '../rules';

/** Why another gallery was not written down, or not ended. */
export type ConsigneeRefusal =
  | NotAllowed
  | { code: 'key_used_for_something_else' }
  | { code: 'unknown_gallery' }
  | { code: 'unknown_collector' }
  | { code: 'not_a_business'; name: string }
  | { code: 'has_terms_already'; name: string }
  | { code: 'name_taken'; name: string }
  | { code: 'ended_already'; name: string }
  | { code: 'pieces_still_there'; name: string; pieces: number };

/** Why pieces were not sent or brought back. */
export type SendRefusal =
  MoveRefusal | { code: 'unknown_gallery' } | { code: 'ended'; name: string };

/** Why a line of what another gallery sold was not taken; `place` is the line's, from nought. */
export type ReportLineRefusal = (
  | LineRefusal
  | { code: 'not_with_them'; sku: string; onHand: number }
  | { code: 'held_there'; sku: string }
  | { code: 'number_needed'; sku: string }
  | { code: 'number_not_with_them'; sku: string; number: number }
  | { code: 'number_twice'; sku: string; number: number }
) & { place: number };

/** Why what another gallery sold was not written down. */
export type ReportRefusal =
  | ReportLineRefusal
  | NotAllowed
  | { code: 'key_used_for_something_else' }
  | { code: 'unknown_gallery' }
  | { code: 'nothing_sold' }
  | { code: 'days_turned' }
  | { code: 'not_yet'; today: Day };

/** Says in full sentences why another gallery was not written down, or not ended. */
export function consigneeRefusalMessage(refusal: ConsigneeRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This page was sent before with something else in it. Load it again, please.';
    case 'unknown_gallery':
      return 'There is no such gallery. Look for it in the list.';
    case 'unknown_collector':
      return 'Choose who it is. If they are not in the address book yet, add them as a business.';
    case 'not_a_business':
      return `${refusal.name} is not down as a business. Change that in the address book first.`;
    case 'has_terms_already':
      return `${refusal.name} sells for us already. Open their sheet instead.`;
    case 'name_taken':
      return `There is a place called “${refusal.name}” already. Rename that place first.`;
    case 'ended_already':
      return `It was ended with ${refusal.name} before.`;
    case 'pieces_still_there':
      return `${refusal.pieces} of our pieces are still with ${refusal.name}. Bring them back first.`;
  }
}

/** Says in full sentences why pieces were not sent or brought back. */
export function sendRefusalMessage(refusal: SendRefusal): string {
  if (refusal.code === 'unknown_gallery') return 'There is no such gallery. Look in the list.';
  if (refusal.code === 'ended') return `It was ended with ${refusal.name}; nothing goes there.`;
  return moveRefusalMessage(refusal);
}

/** Says in full sentences why what another gallery sold was not written down. */
export function reportRefusalMessage(refusal: ReportRefusal): string {
  if ('place' in refusal) return reportLineMessage(refusal);
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This page was sent before with something else in it. Load it again, please.';
    case 'unknown_gallery':
      return 'There is no such gallery. Look for it in the list.';
    case 'nothing_sold':
      return 'Nothing is on the list yet. Write the piece numbers that they sold.';
    case 'days_turned':
      return 'The statement ends before it begins. Write its first day, then its last.';
    case 'not_yet':
      return `That day is yet to come; today is ${formatDay(refusal.today, 'short')}.`;
  }
}

/** The sentence for one line, to stand beside it. */
export function reportLineMessage(refusal: ReportLineRefusal): string {
  switch (refusal.code) {
    case 'not_with_them':
      return refusal.onHand === 0
        ? `By our books no ${refusal.sku} is with them. Ask them which piece they mean.`
        : `By our books only ${refusal.onHand} of ${refusal.sku} are with them.`;
    case 'held_there':
      return `${refusal.sku} is held for somebody there. End the hold first.`;
    case 'number_needed':
      return `${refusal.sku} is an edition: ask them which number they sold.`;
    case 'number_not_with_them':
      return `Number ${refusal.number} of ${refusal.sku} is not with them by our books. Ask them.`;
    case 'number_twice':
      return `Number ${refusal.number} of ${refusal.sku} stands on the list twice.`;
    case 'sold_outside':
    case 'discount_above_price':
    case 'discount_needs_bearer':
    case 'discount_above_ours':
      return lineRefusalMessage(refusal);
  }
}
