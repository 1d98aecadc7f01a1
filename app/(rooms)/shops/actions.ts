'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { answer, formAction, refused, type RefusalWords } from '@/app/form-action';
import { notAllowedMessage } from '@/lib/access/rules';
import { formatCents } from '@/lib/money/rules';
import { settleAccountInput } from '@/lib/sales/input/settling';
import { settlementRefusalMessage, type SettlementRefusal } from '@/lib/sales/rules/settling';
import { settleAccount } from '@/lib/sales/writes/settle-account';
import {
  cancelOrderInput,
  endPromiseInput,
  keepOrderInput,
  promiseTownInput,
  shipOrderInput,
} from '@/lib/wholesale/input';
import { shopRefusalMessage, type ShopRefusal } from '@/lib/wholesale/rules';
import { cancelShopOrder, keepShopOrder, type ShopAnswer } from '@/lib/wholesale/writes';
import { endTownPromise, promiseTown } from '@/lib/wholesale/writes/promises';
import { shipShopOrder } from '@/lib/wholesale/writes/ship';

/** Writes a shop's order down or changes it, and leads to it. */
export const keepOrderAction = formAction('outside.keep', keepOrderInput, async (doer, input) => {
  const kept = await keepShopOrder(doer, input);
  if (!kept.ok) return refused(words(kept.refusal));
  revalidatePath('/shops', 'layout');
  redirect(`/shops/orders/${kept.value.number}`);
});

/** Sends a shop its order, and leads to the invoice. */
export const shipAction = formAction('outside.keep', shipOrderInput, async (doer, input) => {
  const shipped = await shipShopOrder(doer, input);
  if (!shipped.ok) return refused(words(shipped.refusal));
  revalidatePath('/shops', 'layout');
  redirect(`/shops/orders/${shipped.value.number}`);
});

/** Ends an order that will not leave. */
export const cancelAction = formAction('outside.keep', cancelOrderInput, async (doer, input) => {
  const cancelled = await cancelShopOrder(doer, input);
  if (!cancelled.ok) return refused(words(cancelled.refusal));
  revalidatePath('/shops', 'layout');
  redirect(`/shops/orders/${cancelled.value.number}`);
});

/** Takes money for an invoice. */
export const settleAction = formAction('outside.keep', settleAccountInput, async (doer, input) => {
  const settled = await settleAccount(doer, input);
  revalidatePath('/shops', 'layout');
  return answer(settled, settledWords, ({ stillOwed }) => ({
    kind: 'done',
    message:
      stillOwed === '0'
        ? 'Written down: it is paid in full.'
        : `Written down: ${formatCents(BigInt(stillOwed))} is still owed.`,
  }));
});

/** Promises a shop its town. */
export const promiseAction = formAction('outside.keep', promiseTownInput, async (doer, input) => {
  const promised = await promiseTown(doer, input);
  revalidatePath('/shops', 'layout');
  return answer(promised, words, () => ({ kind: 'done', message: `${input.town} is promised.` }));
});

/** Ends the promise of a town. */
export const endPromiseAction = formAction('outside.keep', endPromiseInput, async (doer, input) => {
  const ended = await endTownPromise(doer, input);
  revalidatePath('/shops', 'layout');
  return answer(ended, words, () => ({ kind: 'done', message: 'The promise has ended.' }));
});

const sentBefore = 'This page was sent before with something else in it. Load it again, please.';

type Refusal = Extract<ShopAnswer<unknown>, { ok: false }>['refusal'];

function words(refusal: Refusal): RefusalWords {
  if (refusal.code === 'not_allowed') return notAllowedMessage(refusal);
  if (refusal.code === 'key_used_for_something_else') return sentBefore;
  const message = shopRefusalMessage(refusal);
  const field = fieldOfShop[refusal.code];
  return field === undefined ? message : { message, fields: { [field]: message } };
}

const fieldOfShop: Partial<Record<ShopRefusal['code'], string>> = {
  ...{ unknown_code: 'pieces', no_price: 'pieces', unknown_shop: 'shopId' },
  ...{ town_is_promised: 'town', paid_first: 'paidBy', card_number_typed: 'reference' },
};

const fieldOfMoney: Partial<Record<SettlementRefusal['code'], string>> = {
  ...{ more_than_owed: 'amount', before_the_sale: 'receivedOn', not_yet: 'receivedOn' },
  ...{ card_number_typed: 'reference' },
};

type Unsettled = Extract<Awaited<ReturnType<typeof settleAccount>>, { ok: false }>['refusal'];

function settledWords(refusal: Unsettled): RefusalWords {
  if (refusal.code === 'not_allowed') return notAllowedMessage(refusal);
  if (refusal.code === 'key_used_for_something_else') return sentBefore;
  const message = settlementRefusalMessage(refusal);
  const field = fieldOfMoney[refusal.code];
  return field === undefined ? message : { message, fields: { [field]: message } };
}
