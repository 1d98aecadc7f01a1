import { rateRefusalMessage, type RateRefusal } from './dated';
import { treatmentRefusalMessage, type TreatmentRefusal } from './treatment-days';

/** Why something that decides about the tax was not kept. */
export type TaxRefusal =
  | RateRefusal
  | TreatmentRefusal
  | { code: 'place_unknown' }
  | { code: 'place_is_there'; name: string }
  | { code: 'state_unknown'; state: string }
  | { code: 'state_is_home'; state: string };

/** Says in a full sentence why something that decides about the tax was not kept. */
export function taxRefusalMessage(refusal: TaxRefusal): string {
  switch (refusal.code) {
    case 'place_unknown':
      return 'That place is not kept here. Look at the list again.';
    case 'place_is_there':
      return `${refusal.name} is kept already. Give this place another name.`;
    case 'state_unknown':
      return `No place in ${refusal.state} is kept yet. Write down a place there first.`;
    case 'state_is_home':
      return `${refusal.state} is the gallery’s own state, where it is registered.`;
    case 'treatment_follows_already':
      return treatmentRefusalMessage(refusal);
    case 'rate_follows_already':
    case 'rates_above_hundred':
    case 'rate_unknown':
    case 'rate_ends_before_it_begins':
      return rateRefusalMessage(refusal);
  }
}
