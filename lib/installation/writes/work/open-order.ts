import 'server-only';
import { loadOrder, type OrderLoaded } from '@/lib/installation/reads/work/load-order';
import type { WorkRefusal } from '@/lib/installation/rules/work/refusals';
import type { Tx } from '@/lib/platform/db/transaction';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { getGallery } from '@/lib/platform/settings';

/**
 * A work order that something may still be written to; joins the caller's transaction.
 *
 * @returns refuses, in this order: no such appointment, called off
 */
export async function openOrder(tx: Tx, id: string): Promise<Result<OrderLoaded, WorkRefusal>> {
  const { lengthUnit } = await getGallery(tx);
  const order = await loadOrder(tx, id, lengthUnit);
  if (!order) return refuse({ code: 'no_such_order' });
  return order.isCalledOff ? refuse({ code: 'order_called_off' }) : ok(order);
}
