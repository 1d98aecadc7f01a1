import 'server-only';
import { counterRefusalMessage, type AnyCounterRefusal } from '@/lib/counter/rules/refusals';
import { getGallery } from '@/lib/platform/settings';

const fieldsOf: Partial<Record<AnyCounterRefusal['code'], string>> = {
  not_enough_cash: 'given',
  far_too_much_cash: 'given',
  card_number_typed: 'reference',
  discount_above_price: 'much',
  discount_beyond_leave: 'much',
  collect_day_has_passed: 'untilOn',
  unknown_tax_place: 'taxPlaceId',
};

/** Says at the counter why something was not done, and at which field when it is one. */
export async function whyNotSold(
  refusal: AnyCounterRefusal,
  atField?: string,
): Promise<{ message: string; fields: Record<string, string> }> {
  const { timeZone } = await getGallery();
  const message = counterRefusalMessage(refusal, timeZone);
  const field = atField ?? fieldsOf[refusal.code];
  return { message, fields: field ? { [field]: message } : {} };
}
