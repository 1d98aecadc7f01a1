import { notAllowedMessage, type NotAllowed } from '@/lib/access/rules';
import { saleRefusalMessage, type SaleRefusal } from '@/lib/sales/rules/refusals';

type Refusal = SaleRefusal | NotAllowed | { code: 'key_used_for_something_else' };

/** Says at the counter why nothing was sold, and at which field when it is one. */
export function whyNotSold(refusal: Refusal): {
  message: string;
  fields: Record<string, string>;
} {
  if (refusal.code === 'key_used_for_something_else') {
    const message =
      'This slip was sold already, and then changed. Look at today’s receipts before you sell it again.';
    return { message, fields: {} };
  }
  if (refusal.code === 'not_allowed') return { message: notAllowedMessage(refusal), fields: {} };
  const message = saleRefusalMessage(refusal);
  const field = fieldOf(refusal);
  return { message, fields: field ? { [field]: message } : {} };
}

function fieldOf(refusal: SaleRefusal): 'given' | 'reference' | null {
  if (refusal.code === 'not_enough_cash' || refusal.code === 'far_too_much_cash') return 'given';
  return refusal.code === 'card_number_typed' ? 'reference' : null;
}
