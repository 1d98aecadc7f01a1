import 'server-only';
import type { Doer } from '@/lib/access/rules';
import type { WithdrawChangeInput } from '@/lib/commissions/input/agreement/agreement';
import {
  carryOut,
  findOpen,
  tellHistory,
  type AnyRefusal,
} from '@/lib/commissions/writes/carry-out';
import { dayFromDate } from '@/lib/dates/rules';
import { ok, refuse, type Result } from '@/lib/platform/result';
import { findChange, type ChangeActed } from './change';

/**
 * Withdraws a change order that was not signed.
 *
 * @returns refuses, in this order: not allowed, a key used for something else, unknown, ended early,
 *   handed over, no such change, withdrawn already, signed already
 */
export async function withdrawChange(
  doer: Doer,
  input: WithdrawChangeInput,
): Promise<Result<ChangeActed, AnyRefusal>> {
  const { requestKey, ...withdrawn } = input;
  const { commissionId, changeOrderId, why } = withdrawn;
  const command = {
    name: 'withdrawChange',
    permission: 'commissions.agree',
    key: requestKey,
    input: withdrawn,
  } as const;
  return carryOut(doer, command, async (tx) => {
    const found = await findOpen(tx, doer, commissionId);
    if (!found.ok) return found;
    const order = await findChange(tx, commissionId, changeOrderId);
    if (!order) return refuse({ code: 'unknown_change' as const });
    if (order.withdrawn) return refuse({ code: 'change_withdrawn' as const });
    if (order.signed) {
      const signedOn = dayFromDate(order.signed.signedOn);
      return refuse({ code: 'change_signed_already' as const, signedOn });
    }
    await tx.changeOrderWithdrawn.create({
      data: { changeOrderId, why, staffId: doer.actor.id, at: doer.at },
      select: { changeOrderId: true },
    });
    const did = `withdrew change order ${order.number}`;
    await tellHistory(tx, doer, { commissionId, did, facts: { why } });
    return ok({ changeOrderId, number: order.number, commissionNumber: found.value.number });
  });
}
