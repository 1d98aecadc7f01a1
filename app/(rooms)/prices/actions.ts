'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { answer, formAction, refused } from '@/app/form-action';
import {
  callOffPriceInput,
  changePriceInput,
  raisePricesInput,
  tickTagsInput,
} from '@/lib/catalogue/input/prices';
import { priceRefusalMessage, type PriceRefusal } from '@/lib/catalogue/rules/prices';
import { callOffPrice, changePrice, raisePrices, tickTags } from '@/lib/catalogue/writes/prices';

function words(refusal: PriceRefusal) {
  const message = priceRefusalMessage(refusal);
  if (refusal.code === 'in_the_past') return { message, fields: { fromOn: message } };
  if (refusal.code === 'same_price') return { message, fields: { priceCents: message } };
  return message;
}

/** Sets the price of one piece from a day on. */
export const setPrice = formAction('catalogue.price', changePriceInput, async (doer, input) => {
  const changed = await changePrice(doer, input);
  if (!changed.ok) return refused(words(changed.refusal));
  revalidatePath('/prices', 'layout');
  revalidatePath('/stock', 'layout');
  redirect('/prices');
});

/** Raises many prices, as they were shown. */
export const raiseMany = formAction('catalogue.price', raisePricesInput, async (doer, input) => {
  const raised = await raisePrices(doer, input);
  if (!raised.ok) return refused(words(raised.refusal));
  revalidatePath('/prices', 'layout');
  revalidatePath('/stock', 'layout');
  redirect('/prices');
});

/** Ticks tags off that were written anew. */
export const tick = formAction('stock.move', tickTagsInput, async (doer, input) => {
  const ticked = await tickTags(doer, input);
  revalidatePath('/prices');
  return answer(ticked, priceRefusalMessage, ({ ticked: tags }) => ({
    kind: 'done',
    message: tags === 1 ? 'One tag is written.' : `${tags} tags are written.`,
  }));
});

/** Calls off a price that is still to come. */
export const callOff = formAction('catalogue.price', callOffPriceInput, async (doer, input) => {
  const off = await callOffPrice(doer, input);
  revalidatePath('/prices');
  return answer(off, priceRefusalMessage, ({ code }) => ({
    kind: 'done',
    message: `${code} keeps its price.`,
  }));
});
