import { rateRefusalMessage, type RateRefusal } from '@/lib/tax/rules/dated';
import { taxRefusalMessage, type TaxRefusal } from '@/lib/tax/rules/refusals';
import { notAllowedMessage, type NotAllowed } from '../rules';
import { passwordRefusalMessage, type PasswordRefusal } from './password';

/** Why the first run was not finished. */
export type FirstRunRefusal = { code: 'already_set_up' } | PasswordRefusal | RateRefusal;

/** Why something about how the gallery works was not changed. */
export type SettingsRefusal = NotAllowed | TaxRefusal | { code: 'key_used_for_something_else' };

/** Says in a full sentence why the first run was not finished. */
export function firstRunRefusalMessage(refusal: FirstRunRefusal): string {
  switch (refusal.code) {
    case 'already_set_up':
      return 'Somebody has set up this gallery already. Sign in instead.';
    case 'password_too_short':
    case 'password_too_long':
    case 'password_too_common':
    case 'password_is_the_name':
      return passwordRefusalMessage(refusal);
    case 'rate_follows_already':
    case 'rates_above_hundred':
    case 'rate_unknown':
    case 'rate_ends_before_it_begins':
      return rateRefusalMessage(refusal);
  }
}

/** The field of the first run that a refusal belongs to; null for none. */
export function firstRunRefusalField(refusal: FirstRunRefusal): string | null {
  return refusal.code.startsWith('password_') ? 'password' : null;
}

/** Says in a full sentence why something about how the gallery works was not changed. */
export function settingsRefusalMessage(refusal: SettingsRefusal): string {
  switch (refusal.code) {
    case 'not_allowed':
      return notAllowedMessage(refusal);
    case 'key_used_for_something_else':
      return 'This form was sent before with something else in it. Load the page again, please.';
    case 'place_unknown':
    case 'place_is_there':
    case 'state_unknown':
    case 'state_is_home':
    case 'treatment_follows_already':
    case 'rate_follows_already':
    case 'rates_above_hundred':
    case 'rate_unknown':
    case 'rate_ends_before_it_begins':
      return taxRefusalMessage(refusal);
  }
}
