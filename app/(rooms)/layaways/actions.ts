'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { formAction, refused } from '@/app/form-action';
import { counterRefusalMessage } from '@/lib/counter/rules/refusals';
import { putOnSlip } from '@/lib/counter/writes';
import { dayOf } from '@/lib/dates/rules';
import {
  beginLayawayInput,
  cancelLayawayInput,
  handOverInput,
  payLayawayInput,
} from '@/lib/layaway/input';
import { checkPaymentNow } from '@/lib/layaway/reads';
import { layawayRefusalMessage, type AnyLayawayRefusal } from '@/lib/layaway/rules/refusals';
import { beginLayaway } from '@/lib/layaway/writes';
import { cancelLayaway, handOverLayaway, type CancelRefusal } from '@/lib/layaway/writes/end';
import { formatCents } from '@/lib/money/rules';
import { getGallery } from '@/lib/platform/settings';
import { returnRefusalMessage } from '@/lib/returns/rules/refusals';

/** Puts pieces away for somebody who pays them off in parts, and opens the statement. */
export const begin = formAction('stock.hold', beginLayawayInput, async (doer, input) => {
  const begun = await beginLayaway(doer, input);
  revalidateLayaways();
  if (!begun.ok) return refused(await wordsFor(begun.refusal));
  redirect(`/layaways/${begun.value.number}`);
});

/** Puts a payment on a slip at the counter. */
export const pay = formAction('counter.sell', payLayawayInput, async (doer, input) => {
  const { requestKey, layawayId, amount: amountCents } = input;
  const { timeZone } = await getGallery();
  const on = dayOf(doer.at, timeZone);
  const checked = await checkPaymentNow(doer.actor, { layawayId, amountCents, on });
  if (!checked.ok) return refused(await wordsFor(checked.refusal));
  const line = { kind: 'layaway_payment' as const, cents: amountCents, layawayId };
  const collectorId = checked.value.collector.id;
  const put = await putOnSlip(doer, { requestKey, slipId: null, line, collectorId });
  if (!put.ok) return refused(counterRefusalMessage(put.refusal, timeZone));
  redirect(`/counter?slip=${put.value.slipId}`);
});

/** Hands a layaway over that is paid off, and opens its receipt. */
export const handOver = formAction('stock.hold', handOverInput, async (doer, input) => {
  const handed = await handOverLayaway(doer, input);
  revalidateLayaways();
  if (!handed.ok) return refused(await wordsFor(handed.refusal));
  redirect(`/receipts/${handed.value.receipt}`);
});

/** Cancels a layaway: the pieces are free again, and the money goes back. */
export const cancel = formAction('counter.give_back', cancelLayawayInput, async (doer, input) => {
  const done = await cancelLayaway(doer, input);
  revalidateLayaways();
  if (!done.ok) return refused(await cancelWords(done.refusal));
  const { given, kept, creditCode } = done.value;
  const back = `${formatCents(BigInt(given))} goes back`;
  const keeps = BigInt(kept) > 0n ? `, ${formatCents(BigInt(kept))} stays here` : '';
  const code = creditCode === null ? '' : ` The store credit is ${creditCode}.`;
  return { kind: 'done', message: `Cancelled: ${back}${keeps}.${code}` };
});

function revalidateLayaways(): void {
  revalidatePath('/layaways', 'layout');
  revalidatePath('/holds', 'layout');
  revalidatePath('/stock', 'layout');
  revalidatePath('/');
}

async function wordsFor(refusal: AnyLayawayRefusal) {
  const message = layawayRefusalMessage(refusal, (await getGallery()).timeZone);
  const field = fieldOf[refusal.code];
  return field ? { message, fields: { [field]: message } } : message;
}

async function cancelWords(refusal: CancelRefusal) {
  return isOfReturns(refusal) ? returnRefusalMessage(refusal) : wordsFor(refusal);
}

type ReturnRefusal = Parameters<typeof returnRefusalMessage>[0];
type OfReturns = Exclude<CancelRefusal, AnyLayawayRefusal> & ReturnRefusal;

function isOfReturns(refusal: CancelRefusal): refusal is OfReturns {
  return 'code' in refusal && !layawayCodes.has(refusal.code);
}

const layawayCodes: ReadonlySet<string> = new Set([
  ...['not_allowed', 'key_used_for_something_else', 'unknown_layaway', 'nothing_paid'],
  ...['keeping_is_the_owners', 'not_held', 'layaway_has_ended', 'keeps_more_than_paid'],
]);

const fieldOf: Partial<Record<AnyLayawayRefusal['code'], string>> = {
  discount_without_reason: 'discountReason',
  discount_above_price: 'discount',
  discount_beyond_staff: 'discount',
  last_day_too_soon: 'finalOn',
  last_day_too_far: 'finalOn',
  down_leaves_nothing: 'down',
  more_than_remains: 'amount',
  keeps_more_than_paid: 'keep',
  keeping_is_the_owners: 'keep',
  nothing_paid: 'keep',
};
