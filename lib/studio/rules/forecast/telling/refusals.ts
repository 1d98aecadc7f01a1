import type { NotAllowed } from '@/lib/access/rules';
import { notAllowedMessage } from '@/lib/access/rules';
import { forecastRefusalMessage, type ForecastRefusal } from '../model';

/** Why no day is told of what was asked for. */
export type AskRefusal = { code: 'no_such_route' } | ForecastRefusal;

/** Why a day was not kept with a proposal. */
export type KeepAskedRefusal =
  | { code: 'no_such_commission' }
  | { code: 'commission_ended'; commissionNumber: number }
  | { code: 'out_of_sight' }
  | AskRefusal;

/** Says why no day is told, and what to do. */
export function askRefusalMessage(refusal: AskRefusal): string {
  return refusal.code === 'no_such_route'
    ? 'That way is no longer in the list. Choose another.'
    : forecastRefusalMessage(refusal);
}

/** Says why a day was not kept, and what to do. */
export function keepAskedRefusalMessage(
  refusal: NotAllowed | KeepAskedRefusal | { code: 'key_used_for_something_else' },
): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This page was sent before with something else in it. Load it again, please.';
    case 'no_such_commission':
      return 'That commission is not in the book.';
    case 'commission_ended':
      return `Commission ${refusal.commissionNumber} has ended, so no day is kept for it.`;
    case 'out_of_sight':
      return 'No day is within sight. Look at what waits in the studio first.';
    case 'no_such_route':
    case 'never_open':
    case 'too_many_pieces':
    case 'no_such_bench':
    case 'no_kiln_for_cone':
    case 'piece_fits_no_kiln':
      return askRefusalMessage(refusal);
  }
}
