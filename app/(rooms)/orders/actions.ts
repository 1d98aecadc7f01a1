'use server';

import { revalidatePath } from 'next/cache';
import { redirect } from 'next/navigation';
import { z } from 'zod';
import { answer, formAction, refused } from '@/app/form-action';
import { counterRefusalMessage } from '@/lib/counter/rules/refusals';
import { putOnSlip } from '@/lib/counter/writes';
import type { LineToPut } from '@/lib/counter/rules/slip';
import type { Doer } from '@/lib/access/rules';
import { dayOf } from '@/lib/dates/rules';
import {
  bringInMadeInput,
  callOffOrderInput,
  moveOrderDayInput,
  ofOrderInput,
  takeOrderInput,
} from '@/lib/orders/input';
import { findOrder } from '@/lib/orders/reads';
import {
  orderRefusalField,
  orderRefusalMessage,
  type OrderRefusal,
} from '@/lib/orders/rules/refusals';
import { bringInMade, callOffOrder, moveOrderDay, tellReady } from '@/lib/orders/writes';
import { takeOrder } from '@/lib/orders/writes/take-order';
import { getGallery } from '@/lib/platform/settings';

async function said(refusal: OrderRefusal) {
  const { timeZone } = await getGallery();
  const message = orderRefusalMessage(refusal, timeZone);
  const field = orderRefusalField(refusal);
  return refused(field ? { message, fields: { [field]: message } } : message);
}

async function putAndGo(
  doer: Doer,
  put: { requestKey: string; line: LineToPut; collectorId: string },
) {
  const slip = await putOnSlip(doer, { ...put, slipId: null });
  if (!slip.ok) {
    const { timeZone } = await getGallery();
    return refused(counterRefusalMessage(slip.refusal, timeZone));
  }
  redirect(`/counter?slip=${slip.value.slipId}`);
}

/** Takes a special order, and leads to the slip of its deposit. */
export const take = formAction(
  'orders.take',
  takeOrderInput.extend({ slipKey: z.uuid() }),
  async (doer, { slipKey, ...input }) => {
    const taken = await takeOrder(doer, input);
    if (!taken.ok) return said(taken.refusal);
    revalidatePath('/orders', 'layout');
    const { orderId, number, deposit, collectorId } = taken.value;
    if (deposit === '0') redirect(`/orders/${number}`);
    const line = { kind: 'order_deposit', orderId, cents: BigInt(deposit) } as const;
    return putAndGo(doer, { requestKey: slipKey, line, collectorId });
  },
);

const moneyInput = ofOrderInput.extend({ number: z.coerce.number().int() });

/** Puts what is still to be paid down on a slip. */
export const askDeposit = formAction('orders.take', moneyInput, async (doer, input) => {
  const order = await orderOf(doer, input);
  const cents = order ? order.depositCents - order.paidCents : 0n;
  if (!order || cents <= 0n) return said({ code: order ? 'deposit_paid' : 'unknown_order' });
  const line = { kind: 'order_deposit', orderId: order.id, cents } as const;
  const { requestKey } = input;
  return putAndGo(doer, { requestKey, line, collectorId: order.collector.id });
});

/** Puts the pieces that are here on a slip, where the deposit counts and the rest is paid. */
export const handOver = formAction('orders.take', moneyInput, async (doer, input) => {
  const order = await orderOf(doer, input);
  if (!order) return said({ code: 'unknown_order' });
  if (order.waitingHere === 0) return said({ code: 'not_here_yet' });
  const line = {
    ...{ kind: 'piece', skuId: order.sku.id, quantity: order.waitingHere, orderId: order.id },
    holdIds: order.holds.map((hold) => hold.id),
    numbers: order.holds.flatMap((hold) => hold.editionNumber ?? []),
  } as const satisfies LineToPut;
  const { requestKey } = input;
  return putAndGo(doer, { requestKey, line, collectorId: order.collector.id });
});

async function orderOf(doer: Doer, { orderId, number }: { orderId: string; number: number }) {
  const { timeZone: zone } = await getGallery();
  const order = await findOrder(doer.actor, number, { on: dayOf(doer.at, zone), zone });
  return order?.id === orderId ? order : null;
}

/** Brings in what was made, and keeps it for the order. */
export const bringIn = formAction('orders.take', bringInMadeInput, async (doer, input) => {
  const brought = await bringInMade(doer, input);
  revalidatePath('/orders', 'layout');
  if (!brought.ok) return said(brought.refusal);
  const message = 'They are here, and kept for this order.';
  return answer(
    brought,
    () => '',
    () => ({ kind: 'done', message }),
  );
});

/** Notes that the collector was told. */
export const toldReady = formAction('orders.take', ofOrderInput, async (doer, input) => {
  const told = await tellReady(doer, input);
  revalidatePath('/orders', 'layout');
  if (!told.ok) return said(told.refusal);
  return answer(
    told,
    () => '',
    () => ({ kind: 'done', message: 'Written down: they know.' }),
  );
});

/** Names another day. */
export const moveDay = formAction('orders.take', moveOrderDayInput, async (doer, input) => {
  const moved = await moveOrderDay(doer, input);
  revalidatePath('/orders', 'layout');
  if (!moved.ok) return said(moved.refusal);
  return answer(
    moved,
    () => '',
    () => ({ kind: 'done', message: 'The new day is written down.' }),
  );
});

/** Calls an order off. */
export const callOff = formAction('counter.give_back', callOffOrderInput, async (doer, input) => {
  const off = await callOffOrder(doer, input);
  revalidatePath('/orders', 'layout');
  if (!off.ok) return said(off.refusal);
  redirect(`/orders/${off.value.number}`);
});
