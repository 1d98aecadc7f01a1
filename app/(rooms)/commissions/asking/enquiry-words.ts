import type { RefusalWords } from '@/app/form-action';
import { commissionRefusalMessage, type CommissionNo } from '@/lib/commissions/rules/refusals';

const fieldOf: Partial<Record<CommissionNo['code'], string>> = {
  brought_unknown: 'broughtLetters',
  brought_several: 'broughtLetters',
  brought_by_themselves: 'broughtLetters',
  unknown_body: 'bodyId',
  body_is_there: 'name',
  picture_not_kept: 'pictures',
};

/** Why an enquiry was not written down, told at the field that it is about. */
export function enquiryWords(refusal: CommissionNo): RefusalWords {
  const message = commissionRefusalMessage(refusal);
  const field = fieldOf[refusal.code];
  return { message, fields: field === undefined ? {} : { [field]: message } };
}
