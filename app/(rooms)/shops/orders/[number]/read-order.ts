import { notFound } from 'next/navigation';
import type { Actor } from '@/lib/access/rules';
import { orderNumberInput } from '@/lib/wholesale/input';
import { findShopOrder, type OrderSheet } from '@/lib/wholesale/reads/order';

/** The address of an order's pages. */
export type OrderAddress = Readonly<{ params: Promise<{ number: string }> }>;

/** The order that an address names; shows "not here" when there is none. */
export async function readOrderOfAddress(
  actor: Actor,
  params: OrderAddress['params'],
): Promise<OrderSheet> {
  const number = orderNumberInput.safeParse((await params).number);
  const order = number.success ? await findShopOrder(actor, number.data) : null;
  return order ?? notFound();
}
