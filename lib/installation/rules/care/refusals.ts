import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { commissionRefusalMessage, type CommissionRefusal } from '@/lib/commissions/rules/refusals';
import { formatDay, type Day } from '@/lib/dates/rules';

/** Why a look after a piece was not written down. */
export type CareRefusal =
  | { code: 'unknown_care' }
  | { code: 'looked_after_already'; on: Day }
  | { code: 'before_hand_over'; handedOn: Day }
  | { code: 'unknown_visit' }
  | { code: 'not_handed_over_yet' }
  | { code: 'looks_are_set' };

/** Everything that may be said to it. */
export type AnyCareRefusal =
  CareRefusal | CommissionRefusal | NotAllowed | { code: 'key_used_for_something_else' };

/** Says in full sentences why a look after a piece was not written down. */
export function careRefusalMessage(refusal: AnyCareRefusal): string {
  if (refusal.code === 'not_allowed') return notAllowedMessage(refusal);
  return isOfCare(refusal) ? say(refusal) : commissionRefusalMessage(refusal);
}

const codes: readonly string[] = [
  'unknown_care',
  'looked_after_already',
  'before_hand_over',
  'unknown_visit',
  'not_handed_over_yet',
  'looks_are_set',
] satisfies CareRefusal['code'][];

function isOfCare(refusal: Exclude<AnyCareRefusal, NotAllowed>): refusal is CareRefusal {
  return codes.includes(refusal.code);
}

function say(refusal: CareRefusal): string {
  switch (refusal.code) {
    case 'unknown_care':
      return 'That is not on the list any more. Open the page again.';
    case 'looked_after_already':
      return `It was done already, on ${formatDay(refusal.on, 'short')}.`;
    case 'before_hand_over':
      return `It was handed over on ${formatDay(refusal.handedOn, 'short')}; nobody looked after it before.`;
    case 'unknown_visit':
      return 'That visit is not in the diary any more. Leave it out, or book one.';
    case 'not_handed_over_yet':
      return 'It is not handed over yet; the looks after it are set then.';
    case 'looks_are_set':
      return 'The looks after it are set already.';
  }
}
